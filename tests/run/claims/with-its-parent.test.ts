import { spawn } from "node:child_process"
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { expect, it } from "vitest"
import { launcher } from "../../../src/run/node/launch.ts"

const alive = (pid: number): boolean => {
  try {
    return !/^State:\s+[ZX]/m.test(readFileSync(`/proc/${pid}/status`, "utf8"))
  } catch {
    return false
  }
}

it.runIf(launcher().some(word => word.endsWith("/setpriv")) && existsSync("/proc/self/status"))(
  "claim: where the system allows it, a child in an endless loop ends with its parent, even if that is killed",
  async () => {
    const folder = mkdtempSync(join(tmpdir(), "deltasheet-claim-"))
    writeFileSync(join(folder, "endless.mjs"), "process.send(process.pid); for (;;) ;")
    writeFileSync(
      join(folder, "parent.mjs"),
      `import { spawn } from "node:child_process"
      const [program, ...rest] = ${JSON.stringify(launcher())}
      const child = spawn(program, [...rest, process.execPath, ${JSON.stringify(join(folder, "endless.mjs"))}], { stdio: ["ignore", "ignore", "ignore", "ipc"] })
      child.on("message", pid => process.send(pid))`,
    )
    const parent = spawn(process.execPath, [join(folder, "parent.mjs")], {
      stdio: ["ignore", "ignore", "ignore", "ipc"],
    })
    const pid = await new Promise<number>(resolve =>
      parent.on("message", message => resolve(message as number)),
    )
    expect(alive(pid)).toBe(true)
    parent.kill("SIGKILL")
    for (let i = 0; i < 100 && alive(pid); i++) await new Promise(resolve => setTimeout(resolve, 50))
    expect(alive(pid)).toBe(false)
    rmSync(folder, { recursive: true })
  },
)
