import { spawn } from "node:child_process"
import { mkdtempSync, rmSync, writeFileSync } from "node:fs"
import { createServer } from "node:http"
import type { AddressInfo } from "node:net"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, beforeAll, expect, it } from "vitest"
import { launch, launcher } from "../../../src/run/node/launch.ts"
import { openRunnerPage } from "../page/open.ts"
import { allClosed, createProbe } from "../support/probe.ts"

const probe = createProbe()
let opened: Awaited<ReturnType<typeof openRunnerPage>>
beforeAll(async () => {
  opened = await openRunnerPage()
})
afterAll(() => opened.close())

const network = [
  "fetch",
  "XMLHttpRequest",
  "WebSocket",
  "EventSource",
  "WebTransport",
  "navigator",
  "importScripts",
]

it("claim: a program finds no name that reaches the network", async () => {
  expect(await probe.ask(...network)).toEqual(allClosed(network))
})

it("claim: the frame around a page's programs lets nothing out, whatever program its worker runs", async () => {
  const answer = await opened.page.evaluate(() =>
    window.askFromCage(`
      const tries = {
        fetch: () => fetch("http://runner.test/"),
        request: () => new Promise((yes, no) => {
          const r = new XMLHttpRequest(); r.onload = yes; r.onerror = no; r.open("GET", "http://runner.test/"); r.send()
        }),
        socket: () => new Promise((yes, no) => {
          const s = new WebSocket("ws://runner.test/"); s.onopen = yes; s.onerror = no
        }),
        script: () => importScripts("http://runner.test/entry.js"),
        store: () => new Promise((yes, no) => { const r = indexedDB.open("a"); r.onsuccess = yes; r.onerror = no }),
        worker: () => new Promise((yes, no) => {
          const w = new Worker("http://runner.test/entry.js"); w.onmessage = yes; w.onerror = no
        }),
        sum: () => 1 + 1,
      }
      addEventListener("message", async ({ ports: [port], data }) => {
        const found = {}
        for (const [name, attempt] of Object.entries(tries))
          found[name] = await Promise.resolve().then(attempt).then(() => "open", () => "closed")
        ;(port ?? data.port).postMessage({ ...found, origin: self.origin })
      })`),
  )
  expect(answer).toEqual({
    fetch: "closed",
    request: "closed",
    socket: "closed",
    script: "closed",
    store: "closed",
    worker: "closed",
    sum: "open",
    origin: "null",
  })
})

it.runIf(launcher().some(word => word.endsWith("/unshare")))(
  "claim: where the system allows it, the child process has a network of its own with nothing in it",
  async () => {
    const server = createServer((_, response) => response.end("here"))
    await new Promise<void>(resolve => server.listen(0, "127.0.0.1", resolve))
    const { port } = server.address() as AddressInfo
    const folder = mkdtempSync(join(tmpdir(), "deltasheet-claim-"))
    const file = join(folder, "ask.mjs")
    writeFileSync(
      file,
      `fetch("http://127.0.0.1:${port}/").then(r => r.text()).then(t => process.send(t), () => process.send("closed"))`,
    )
    const answerOf = (child: ReturnType<typeof spawn>) =>
      new Promise(resolve => {
        child.on("message", message => {
          child.kill("SIGKILL")
          resolve(message)
        })
      })
    expect(await answerOf(launch([], file, folder))).toBe("closed")
    // The same question without the launcher is answered, so the first answer means something.
    const plain = spawn(process.execPath, [file], { stdio: ["ignore", "ignore", "ignore", "ipc"] })
    expect(await answerOf(plain)).toBe("here")
    server.close()
    rmSync(folder, { recursive: true })
  },
)
