import { spawn } from "node:child_process"
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs"
import { createServer, Server } from "node:net"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest"
import type { Problem } from "../../src/cell/problem.ts"
import { listen } from "../../src/command/listen.ts"
import type { Edition, Shelf } from "../../src/judge/edition.ts"
import { deltasheet } from "../support/deltasheet.ts"
import { until } from "./marking/class.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-serve-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const shippedText = readFileSync("worksheets/lamp-key.md", "utf8")
/** The lamp-key sheet in a folder of its own, with another picture. */
function sheetIn(name: string, picture = "figures/key.svg"): string {
  mkdirSync(join(folder, name, "figures"), { recursive: true })
  writeFileSync(join(folder, name, "figures", "key.svg"), "<svg/>")
  const file = join(folder, name, "lamp-key.md")
  writeFileSync(file, shippedText.replace(/\(figures\/[^)]*\)/, `(${picture})`))
  return file
}

interface Serving {
  readonly address: string
  readonly err: () => string
  get(path: string): Promise<Response>
  shelf(): Promise<string[]>
  stop(): Promise<number | null>
}

const running: Serving[] = []
async function serve(...args: string[]): Promise<Serving> {
  const child = spawn(process.execPath, ["src/command/deltasheet.mjs", "serve", ...args, "--json"], {
    stdio: ["ignore", "pipe", "pipe"],
  })
  let out = ""
  let err = ""
  child.stdout.setEncoding("utf8").on("data", chunk => (out += chunk))
  child.stderr.setEncoding("utf8").on("data", chunk => (err += chunk))
  const closed = new Promise<number | null>(done => child.on("close", done))
  await until(() => out.includes("\n") || child.exitCode !== null)
  const { address } = JSON.parse(out) as { address: string }
  const serving: Serving = {
    address,
    err: () => err,
    get: path => fetch(new URL(path, address)),
    shelf: async () =>
      ((await (await serving.get("/data/shelf.json")).json()) as Shelf).cards.map(card => card.id),
    stop: () => {
      child.kill("SIGINT")
      return closed
    },
  }
  running.push(serving)
  return serving
}
afterAll(async () => {
  await Promise.all(running.map(serving => serving.stop()))
})

/** Holds a port for as long as a test lasts; 0 is any that is free. */
const held: Server[] = []
function hold(port: number): Promise<number> {
  const server = createServer()
  held.push(server)
  return new Promise(done => {
    // somebody else holds it: that is as good
    server.once("error", () => done(port))
    server.listen(port, "127.0.0.1", () => done((server.address() as { port: number }).port))
  })
}
afterEach(() => {
  for (const server of held.splice(0)) server.close()
})

describe("the port", () => {
  it("that is printed is the one that answers, also when the first is taken", async () => {
    await hold(4600)
    const serving = await serve(sheetIn("port"))
    expect(serving.address).not.toBe("http://localhost:4600/")
    expect(await serving.shelf()).toEqual(["lamp-key"])
    expect(await serving.stop()).toBe(0)
  }, 60_000)
  it("that was asked for and is taken is named", async () => {
    const port = await hold(0)
    const run = await deltasheet("serve", sheetIn("port"), "--port", String(port), "--json")
    expect(run.code).toBe(2)
    expect(run.err).toBe("")
    expect(JSON.parse(run.out)).toMatchObject({
      problems: [{ code: "port-taken", text: `Port ${port} is in use.` }],
    })
  }, 60_000)
  it.each([
    ["EACCES", /Port 80 may not be opened/],
    ["EADDRNOTAVAIL", /Port 80 could not be opened \(EADDRNOTAVAIL\)/],
  ])("that the system refuses with %s is not said to be in use", async (code, text) => {
    const server = new Server()
    vi.spyOn(server, "listen").mockImplementation(() => {
      server.emit("error", Object.assign(new Error(), { code }))
      return server
    })
    expect(await listen(server, 80, true)).toMatchObject({
      code: "port-refused",
      text: expect.stringMatching(text),
    })
  })
  it("is looked for among the next ones as often as was said, and no more", async () => {
    const server = new Server()
    const asked = vi.spyOn(server, "listen").mockImplementation(() => {
      queueMicrotask(() => server.emit("error", Object.assign(new Error(), { code: "EADDRINUSE" })))
      return server
    })
    expect(await listen(server, 4600, true)).toMatchObject({
      code: "port-taken",
      text: "Each port from 4600 to 4620 is in use.",
    })
    expect(asked).toHaveBeenCalledTimes(21)
  })
})

describe("what is asked wrongly", () => {
  it.each([
    ["a file that is not there", ["nowhere.md"], "file"],
    ["a port that is none", ["worksheets/lamp-key.md", "--port", "99999"], "asked-wrongly"],
  ])("%s comes back as JSON where that is asked for", async (_, args, code) => {
    const run = await deltasheet("serve", ...args, "--json")
    expect(run.code).toBe(2)
    expect(run.err).toBe("")
    expect(JSON.parse(run.out)).toMatchObject({ problems: [{ code }] })
  })
})

describe("a shelf that is served", () => {
  let serving: Serving
  beforeAll(async () => {
    serving = await serve(sheetIn("shelf"))
  })
  it("has the page, the shelf, the edition and its picture", async () => {
    expect(await (await serving.get("/")).text()).toMatch(/^<!doctype html>/i)
    expect(await serving.shelf()).toEqual(["lamp-key"])
    const edition = (await (await serving.get("/data/lamp-key.json")).json()) as Edition
    expect(edition.sheet.id).toBe("lamp-key")
    const picture = await serving.get("/figures/key.svg")
    expect(picture.headers.get("content-type")).toBe("image/svg+xml")
    expect(await picture.text()).toBe("<svg/>")
  })
  it.each([
    "/nothing",
    "/data/nothing.json",
    "/%FF",
    "/figures",
    "/lamp-key.md",
    "/..%2f..%2fpackage.json",
    "/%00",
  ])("has nothing at %s and says so", async path => {
    const answer = await serving.get(path)
    expect(answer.status).toBe(404)
    expect(await answer.text()).toMatch(/There is nothing at this address/)
  })
})

describe("a picture", () => {
  it.each([
    ["that is a folder", "figures", /“figures” is a folder/, "/figures"],
    ["whose address cannot be read", "figures/%FF.svg", /“%” in it begins no character/, "/figures/x.svg"],
  ])("%s is told, and costs neither the sheet nor the server", async (name, picture, words, path) => {
    const serving = await serve(sheetIn(name.replaceAll(" ", "-"), picture))
    await until(() => words.test(serving.err()))
    expect(serving.err()).toContain("(picture)")
    expect((await serving.get(path)).status).toBe(404)
    expect(await serving.shelf()).toEqual(["lamp-key"])
    expect((await serving.get("/data/lamp-key.json")).status).toBe(200)
  })
  // a file of Linux that is there and cannot be read from its beginning
  it.runIf(process.platform === "linux")(
    "that cannot be read is told at the terminal, in words",
    async () => {
      const file = sheetIn("unreadable", "figures/memory.svg")
      symlinkSync("/proc/self/mem", join(folder, "unreadable", "figures", "memory.svg"))
      const serving = await serve(file)
      const answer = await serving.get("/figures/memory.svg")
      expect(answer.status).toBe(500)
      expect(await answer.text()).toMatch(/Look at the terminal/)
      await until(() => serving.err().includes("“/figures/memory.svg” could not be answered"))
      expect(serving.err()).not.toMatch(/\n\s+at /)
      expect(await serving.shelf()).toEqual(["lamp-key"])
    },
  )
})

describe("a fault that is saved while the sheet is served", () => {
  it("is told once, at the terminal and to the page, until it is mended", async () => {
    const file = sheetIn("saved")
    const serving = await serve(file)
    const sound = readFileSync(file, "utf8")
    expect(await serving.shelf()).toEqual(["lamp-key"])
    writeFileSync(file, sound.replace("compare: key.position", "comapre: key.position"))
    expect(await serving.shelf()).toEqual([])
    expect(await serving.shelf()).toEqual([])
    const answer = await serving.get("/data/lamp-key.json")
    expect(answer.status).toBe(422)
    const { problems } = (await answer.json()) as { problems: Problem[] }
    expect(problems).toContainEqual(expect.objectContaining({ code: "unknown-key" }))
    writeFileSync(file, sound.replace("p = p + Fnet * dt", "p = p * Fnet * dt"))
    expect(await serving.shelf()).toEqual([])
    expect((await serving.get("/data/lamp-key.json")).status).toBe(422)
    writeFileSync(file, sound)
    expect(await serving.shelf()).toEqual(["lamp-key"])
    expect((await serving.get("/data/lamp-key.json")).status).toBe(200)
    expect(await serving.stop()).toBe(0)
    expect(serving.err().match(/\(unknown-key\)/g)).toHaveLength(1)
    expect(serving.err().match(/\(vector-times-vector\)/g)).toHaveLength(1)
  }, 60_000)
})
