/*
 * How fast a school is marked: node tests/bench/grade.mjs [rate|memory|kill]   (all of them without a name)
 * lamp-key with 5 hidden draws; every answer has another text, so that nothing is judged from memory. Processor time is
 * printed beside wall time: on a busy machine only that one tells.
 */
import { spawn } from "node:child_process"
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { cpus, tmpdir } from "node:os"
import { join } from "node:path"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-grade-bench-"))
const sheet = join(folder, "lamp-key.md")
writeFileSync(sheet, readFileSync("worksheets/lamp-key.md", "utf8").replaceAll(/^draws: \d+$/gm, "draws: 5"))
const right = [
  "  p = p + Fnet * dt\n  r = r + (p / mass) * dt",
  "  p += Fnet * dt\n  r += p / mass * dt",
  "  const v = (p + Fnet * dt) / mass\n  p = mass * v\n  r = r + v * dt",
  "  p = p.add(Fnet.times(dt))\n  r = r.add(p.times(dt / mass))",
  "  r = r + p / mass * dt\n  p = p + Fnet * dt",
]

/** Answers with the task's digest, as a run of the command says it. */
async function digestOfSheet() {
  const { out } = await run(["grade", sheet, "--answers", sheet, "--out", join(folder, "digest"), "--json"])
  return JSON.parse(out).worksheet
}

function writeAnswers(name, count, texts, worksheet) {
  mkdirSync(join(folder, name))
  for (let n = 0; n < count; n++)
    writeFileSync(
      join(folder, name, `${String(n).padStart(5, "0")}.json`),
      JSON.stringify({
        format: "deltasheet-answers/1",
        worksheet: { id: worksheet.id, version: worksheet.version, digest: worksheet.digest },
        student: { id: `s${n}`, name: `Student ${n}` },
        seed: n,
        answers: {
          update: `  // try ${n % texts}\n${right[(n % texts) % right.length]}`,
          formula: "  yFormula = height - 0.5 * 9.81 * t * t",
        },
        questions: { heavier: "same", halved: "half", speed: 9.81, "own-words": `Answer of student ${n}.` },
        savedAt: "2026-11-25T09:00:00.000Z",
      }),
    )
}

/** Runs the command; with its wall time, its largest resident memory, and its processor time with that of its children. */
function run(args, { killAfter } = {}) {
  const started = performance.now()
  const child = spawn(process.execPath, ["src/command/deltasheet.mjs", ...args], {
    stdio: ["ignore", "pipe", "ignore"],
  })
  let out = ""
  child.stdout.setEncoding("utf8").on("data", chunk => (out += chunk))
  let resident = 0
  const processor = new Map()
  const look = setInterval(() => {
    try {
      resident = Math.max(
        resident,
        Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, "latin1"))[1]) / 1000,
      )
      const children = readFileSync(`/proc/${child.pid}/task/${child.pid}/children`, "latin1")
        .trim()
        .split(" ")
      for (const pid of [child.pid, ...children.filter(Boolean)]) {
        const stat = readFileSync(`/proc/${pid}/stat`, "latin1")
        const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ")
        processor.set(pid, (Number(fields[11]) + Number(fields[12])) / 100)
      }
    } catch {
      // a process ended while it was looked at
    }
  }, 50)
  if (killAfter !== undefined) setTimeout(() => child.kill("SIGKILL"), killAfter)
  return new Promise(done =>
    child.on("close", code => {
      clearInterval(look)
      const cpu = [...processor.values()].reduce((a, b) => a + b, 0)
      done({ code, out, seconds: (performance.now() - started) / 1000, resident, cpu })
    }),
  )
}

const grade = (answers, out, ...more) => [
  "grade",
  sheet,
  "--answers",
  join(folder, answers),
  "--out",
  join(folder, out),
  ...more,
]

async function rate(worksheet) {
  const few = 100
  const marked = 2000
  writeAnswers("few", few, few, worksheet)
  writeAnswers("many", few + marked, few + marked, worksheet)
  for (let repeat = 0; repeat < 3; repeat++) {
    const start = await run(grade("few", `few-${repeat}`, "--results-only"))
    const whole = await run(grade("many", `many-${repeat}`, "--results-only"))
    const [wall, cpu] = [whole.seconds - start.seconds, whole.cpu - start.cpu]
    // one at a time on each core, as a script around the command would do it
    const singles = Array.from({ length: 8 }, (_, i) => i)
    const began = performance.now()
    let single = 0
    const one = async () => {
      for (let i = singles.pop(); i !== undefined; i = singles.pop()) {
        const file = join(folder, "many", `${String(600 + i).padStart(5, "0")}.json`)
        const { cpu: used } = await run([
          "grade",
          sheet,
          "--answers",
          file,
          "--out",
          join(folder, `one-${repeat}-${i}`),
          "--results-only",
        ])
        single += used
      }
    }
    await Promise.all([one(), one()])
    const fresh = 8 / ((performance.now() - began) / 1000)
    console.log(
      `rate, warm, ${marked} answers: ${(marked / wall).toFixed(0)} a second by the clock; ${((1000 * cpu) / marked).toFixed(1)} ms of processor each, so ${((marked / cpu) * 2).toFixed(0)} a second on two free cores`,
    )
    console.log(
      `a fresh process for each, two at a time: ${fresh.toFixed(2)} a second by the clock (${(marked / wall / fresh).toFixed(0)} times slower); ${((1000 * single) / 8).toFixed(0)} ms of processor each (${(single / 8 / (cpu / marked)).toFixed(0)} times as much)`,
    )
  }
}

async function memory(worksheet) {
  writeAnswers("school", 10_000, 400, worksheet)
  const first = await run(grade("school", "school-out"))
  console.log(
    `10 000 answers of 400 texts: ${first.seconds.toFixed(0)} s, at most ${first.resident.toFixed(0)} MB resident in the parent`,
  )
  const again = await run(grade("school", "school-out"))
  console.log(`marked again: ${again.seconds.toFixed(1)} s, at most ${again.resident.toFixed(0)} MB`)
}

async function kill(worksheet) {
  writeAnswers("class", 120, 120, worksheet)
  const whole = await run(grade("class", "whole"))
  const right = readFileSync(join(folder, "whole", "results.json"), "utf8")
  let same = 0
  let early = 0
  for (let i = 0; i < 20; i++) {
    const out = `killed-${i}`
    const { code } = await run(grade("class", out), { killAfter: Math.random() * whole.seconds * 1000 })
    if (code === null && existsSync(join(folder, out, "marking", "verdicts.jsonl"))) early++
    await run(grade("class", out))
    if (readFileSync(join(folder, out, "results.json"), "utf8") === right) same++
  }
  console.log(
    `killed at 20 random moments, ${early} of them while marking, then gone on with: ${same} of 20 equal the undisturbed results`,
  )
}

console.log(`Node ${process.version}, ${cpus().length} cores, ${cpus()[0].model}`)
try {
  const worksheet = await digestOfSheet()
  const wanted = process.argv[2]
  for (const [name, part] of Object.entries({ rate, memory, kill }))
    if (wanted === undefined || wanted === name) await part(worksheet)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
