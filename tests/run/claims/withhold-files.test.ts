import { mkdtempSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { expect, it } from "vitest"
import { launch } from "../../../src/run/node/launch.ts"
import { childFlags } from "../../../src/run/node/process.ts"
import { allClosed, createProbe } from "../support/probe.ts"

const probe = createProbe()
const ways = ["require", "module", "process", "Deno", "Bun", "__dirname", "globalThis", "Buffer"]

it("claim: a program finds no name that reaches files, programs or the process", async () => {
  expect(await probe.ask(...ways)).toEqual(allClosed(ways))
})

const hasPermissions = ["--permission", "--experimental-permission"].some(f =>
  process.allowedNodeEnvironmentFlags.has(f),
)

it.runIf(hasPermissions)(
  "claim: Node itself denies the child process files, programs, threads and add-ons",
  async () => {
    const folder = mkdtempSync(join(tmpdir(), "deltasheet-claim-"))
    const file = join(folder, "ask.mjs")
    writeFileSync(join(folder, "secret.txt"), "secret")
    writeFileSync(
      file,
      `import fs from "node:fs"; import { spawnSync } from "node:child_process"; import { Worker } from "node:worker_threads"
    const attempt = f => { try { f(); return "open" } catch (e) { return e.code } }
    process.send({
      read: attempt(() => fs.readFileSync(${JSON.stringify(join(folder, "secret.txt"))})),
      write: attempt(() => fs.writeFileSync(${JSON.stringify(join(folder, "new.txt"))}, "x")),
      program: attempt(() => spawnSync("true")),
      thread: attempt(() => new Worker("1", { eval: true })),
      environment: Object.keys(process.env).filter(name => name !== "_"),
    })`,
    )
    const child = launch(childFlags(file), file, folder)
    const answer = await new Promise(resolve => child.on("message", resolve))
    child.kill("SIGKILL")
    rmSync(folder, { recursive: true })
    const denied = "ERR_ACCESS_DENIED"
    expect(answer).toEqual({ read: denied, write: denied, program: denied, thread: denied, environment: [] })
  },
)
