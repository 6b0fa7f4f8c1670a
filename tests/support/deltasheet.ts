import { spawn } from "node:child_process"

/** Runs the built command as a person would; never throws. */
export function deltasheet(...args: string[]): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise(done => {
    const child = spawn(process.execPath, ["src/command/deltasheet.mjs", ...args], {
      stdio: ["ignore", "pipe", "pipe"],
    })
    let out = ""
    let err = ""
    child.stdout.setEncoding("utf8").on("data", chunk => (out += chunk))
    child.stderr.setEncoding("utf8").on("data", chunk => (err += chunk))
    child.on("close", code => done({ code, out, err }))
  })
}
