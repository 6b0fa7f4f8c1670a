import { type ChildProcess, spawn } from "node:child_process"
import { mkdirSync, writeFileSync } from "node:fs"
import { join } from "node:path"
import { answerFile, shipped } from "../../support/class.ts"

const right = [
  "  p = p + Fnet * dt\n  r = r + (p / mass) * dt",
  "  p += Fnet * dt\n  r += p / mass * dt",
  "  r = r + p / mass * dt\n  p = p + Fnet * dt",
]
const wrong = [
  "  p = p - Fnet * dt\n  r = r + (p / mass) * dt",
  "  p = Fnet * dt\n  r = r + (p / mass) * dt",
  "",
]

/** Writes answers to lamp-key, two right to one wrong, no two with the same text. Students are invented. */
export function writeAnswers(folder: string, count: number, from = 0): void {
  mkdirSync(folder, { recursive: true })
  const worksheet = shipped("lamp-key")
  for (let n = from; n < from + count; n++) {
    const list = n % 3 === 0 ? wrong : right
    const update = `  // try ${n}\n${list[n % list.length]}`
    const formula = "  yFormula = height - 0.5 * 9.81 * t * t"
    writeFileSync(
      join(folder, `${String(n).padStart(4, "0")}.json`),
      answerFile(worksheet, n, { update, formula }),
    )
  }
}

/** Begins the built command, so that it can be ended in the middle. */
export function begin(args: readonly string[]): {
  readonly child: ChildProcess
  readonly ended: Promise<{ code: number | null; signal: string | null; out: string; err: string }>
} {
  const child = spawn(process.execPath, ["src/command/deltasheet.mjs", ...args], {
    stdio: ["ignore", "pipe", "pipe"],
  })
  let out = ""
  let err = ""
  child.stdout!.setEncoding("utf8").on("data", chunk => (out += chunk))
  child.stderr!.setEncoding("utf8").on("data", chunk => (err += chunk))
  return {
    child,
    ended: new Promise(done => child.on("close", (code, signal) => done({ code, signal, out, err }))),
  }
}

/** Waits until `ready`, for half a minute at most. */
export async function until(ready: () => boolean): Promise<void> {
  for (let i = 0; i < 3000 && !ready(); i++) await new Promise(go => setTimeout(go, 10))
  if (!ready()) throw new Error("what was waited for did not come")
}
