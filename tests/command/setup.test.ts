import { spawn } from "node:child_process"
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { pathToFileURL } from "node:url"
import { afterAll, beforeEach, describe, expect, it } from "vitest"
import { putInPlace } from "../../src/command/setup.mjs"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-setup-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const place = join(folder, "dist")
function built(name: string, stamp: string): string {
  mkdirSync(join(folder, name, "page"), { recursive: true })
  writeFileSync(join(folder, name, "page", "index.html"), stamp)
  writeFileSync(join(folder, name, "stamp"), stamp)
  return join(folder, name)
}
const stampOf = (): string => readFileSync(join(place, "stamp"), "utf8")

describe("a new build", () => {
  beforeEach(() => {
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true })
  })
  it("comes where none stood", () => {
    putInPlace(built("next", "new"), place)
    expect(stampOf()).toBe("new")
    expect(readdirSync(folder)).toEqual(["dist"])
  })
  it("takes the place of the earlier one and leaves nothing beside it", () => {
    built("dist", "old")
    putInPlace(built("next", "new"), place)
    expect(stampOf()).toBe("new")
    expect(readdirSync(folder)).toEqual(["dist"])
  })
  it("that cannot come leaves the earlier one where it was", () => {
    built("dist", "old")
    expect(() => putInPlace(join(folder, "nowhere"), place)).toThrow("ENOENT")
    expect(stampOf()).toBe("old")
    expect(readdirSync(folder)).toEqual(["dist"])
  })
  it("is there and whole when several starts put theirs there at once", async () => {
    const setup = pathToFileURL("src/command/setup.mjs").href
    const script = `
      import { mkdirSync, writeFileSync } from "node:fs"
      import { join } from "node:path"
      import { putInPlace } from ${JSON.stringify(setup)}
      const [folder, name] = process.argv.slice(-2)
      for (let i = 0; i < 40; i++) {
        const next = join(folder, name)
        mkdirSync(join(next, "page"), { recursive: true })
        writeFileSync(join(next, "page", "index.html"), name + i)
        writeFileSync(join(next, "stamp"), name + i)
        putInPlace(next, join(folder, "dist"))
      }`
    const starts = ["a", "b", "c"].map(
      name =>
        new Promise<{ code: number | null; err: string }>(done => {
          const child = spawn(process.execPath, ["--input-type=module", "-e", script, "--", folder, name])
          let err = ""
          child.stderr.setEncoding("utf8").on("data", chunk => (err += chunk))
          child.on("close", code => done({ code, err }))
        }),
    )
    for (const { code, err } of await Promise.all(starts)) expect({ code, err }).toEqual({ code: 0, err: "" })
    expect(stampOf()).toMatch(/^[abc]39$/)
    expect(readFileSync(join(place, "page", "index.html"), "utf8")).toBe(stampOf())
    expect(existsSync(join(folder, "a.before"))).toBe(false)
    expect(readdirSync(folder)).toEqual(["dist"])
  })
})
