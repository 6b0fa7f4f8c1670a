/*
 * Random edits of real cells, for as long as asked: node tests/bench/start.mjs tests/cell/fuzz.ts MINUTES [SEED]
 * Each text must end in a message with a place inside it, or in a program; a program must mean the same split, rewritten blindly and
 * traced. What fails is printed with its text; such finds become tests in hostile-text.test.ts.
 */
import { readdirSync, readFileSync } from "node:fs"
import { lower } from "../../src/cell/compile.ts"
import { parseText } from "../../src/cell/syntax.ts"
import { program, run, strip } from "./run.ts"

const minutes = Number(process.argv[3] ?? 10)
let state = Number(process.argv[4] ?? 1)
/** mulberry32, for its smallness: the same seed gives the same texts */
function random(): number {
  state = (state + 0x6d2b79f5) | 0
  let t = Math.imul(state ^ (state >>> 15), 1 | state)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296
}
const below = (n: number): number => Math.floor(random() * n)
const pick = <T>(list: readonly T[]): T => list[below(list.length)]!

const cells = readdirSync("worksheets")
  .filter(name => name.endsWith(".md"))
  .flatMap(name =>
    [...readFileSync(`worksheets/${name}`, "utf8").matchAll(/^```ts cell .*\n([\s\S]*?)^```/gm)].map(
      m => m[1]!,
    ),
  )
  .map(text => text.replace(/^\s*\/\/ starter\n(\s*\/\/.*\n)*/gm, ""))

const pieces = [
  "(",
  ")",
  "[",
  "]",
  "{",
  "}",
  "`",
  "${",
  "'",
  '"',
  "/*",
  "*/",
  "//",
  "\n",
  ";",
  ",",
  ".",
  "?.",
  "=>",
  "=",
  "+=",
  "-=",
  "/=",
  "**",
  "++",
  "--",
  "+",
  "-",
  "*",
  "/",
  "<!--",
  "-->",
  "&&",
  "??",
  "...",
  "function ",
  "async ",
  "await ",
  "yield ",
  "class A {",
  "return ",
  "new ",
  "typeof ",
  "const ",
  "let ",
  "var ",
  "if (",
  "else ",
  "for (",
  "while (",
  "do {",
  "switch (r) {",
  "case 1:",
  "try {",
  "catch {",
  "throw ",
  "break ",
  "label: ",
  "vec3(1, 2, 3)",
  "p",
  "r",
  "dt",
  "r.x",
  "p.y = ",
  "0",
  "1e9",
  "0x",
  "1n",
  "\u0000",
  "\u2028",
  "\uFEFF",
  "\uD800",
  "é",
  "日",
  "\r\n",
  "\t",
  "\\",
  "\\u0061",
  "#x",
  "@",
  "import(",
  "eval(",
  "arguments",
  "this",
  "super",
  "undefined",
  "NaN",
  "<T>",
  ": number",
  " as any",
  "!",
  "enum E { A }",
  "interface I {}",
  "ds$turns",
  "host",
  "unit(r)",
  "dot(p, r)",
  "cross(r, p)",
]

function edited(text: string): string {
  let out = text
  for (let n = 1 + below(4); n > 0; n--) {
    const at = below(out.length + 1)
    const end = Math.min(out.length, at + below(random() < 0.8 ? 8 : 200))
    switch (below(6)) {
      case 0:
        out = out.slice(0, at) + out.slice(end)
        break
      case 1:
        out = out.slice(0, at) + pick(pieces) + out.slice(at)
        break
      case 2:
        out = out.slice(0, at) + pick(pieces) + out.slice(end)
        break
      case 3:
        out = out.slice(0, at) + out.slice(at, end) + out.slice(at)
        break
      case 4: {
        const other = pick(cells)
        const from = below(other.length)
        out = out.slice(0, at) + other.slice(from, from + below(120)) + out.slice(at)
        break
      }
      default:
        out = out.slice(0, at) + out.slice(end) + out.slice(at, end)
    }
  }
  return out
}

const parameters = ["mass", "speed", "mu", "slope", "height", "stiffness", "damping", "k", "c"]
const given = Object.fromEntries(parameters.map(name => [name, 0.7]))

async function check(text: string): Promise<"message" | "program"> {
  const p = program(text, parameters)
  const fast = lower(p, { trace: false })
  if (!fast.ok) {
    for (const problem of fast.problems) {
      const { line = 0, column = 0 } = problem.where ?? {}
      const lines = p.text.split("\n")
      if (!(line >= 1 && line <= lines.length && column >= 1 && column <= lines[line - 1]!.length + 1)) {
        throw new Error(`A place outside the text: ${JSON.stringify(problem)}`)
      }
      if (problem.text === "" || problem.todo === "") throw new Error("A problem without words")
    }
    return "message"
  }
  const outcomes: string[] = []
  for (const options of [{ trace: false }, { trace: false, blind: true }, { trace: true }]) {
    const lowered = lower(p, options)
    if (!lowered.ok) throw new Error("Lowered once, but not twice")
    const parsed = parseText(lowered.lowered.text)
    if (!parsed.ok) throw new Error(`No program: ${parsed.fault.message}\n${lowered.lowered.text}`)
    let js: string
    try {
      js = await strip(lowered.lowered.text)
    } catch (cause) {
      outcomes.push(`strip: ${(cause as { errors?: { text: string }[] }).errors?.[0]?.text ?? String(cause)}`)
      continue
    }
    if (lowered.lowered.plain) {
      // the stripper refuses a few forms of types that go without it, such as a comma before >
      const kept = lower(p, { ...options, keepTypes: true })
      const stripped = kept.ok ? await strip(kept.lowered.text).catch(() => js) : ""
      if (stripped !== js) throw new Error(`Types taken away otherwise:\n${lowered.lowered.text}`)
      new Function(lowered.lowered.text)
    }
    new Function(js)
    const { error, printed, recorded } = run(
      { js, traceJs: "", sites: [], program: p },
      { maxTurns: 300, parameters: given },
    )
    // engines name what they could not call by the text they ran: only our own words are compared
    const own = error as { code?: string; text?: string; problem?: { code: string } } | undefined
    const words =
      own?.problem?.code ??
      (own?.code ? `${own.code} ${own.text}` : error instanceof Error ? error.name : String(error))
    outcomes.push(
      JSON.stringify([words, printed.map(String), recorded.length, JSON.stringify(recorded)?.length]),
    )
  }
  // the stripper's own refusals are worded by the text it got
  if (outcomes.every(o => o.startsWith("strip:"))) return "message"
  if (new Set(outcomes).size > 1)
    throw new Error(`Meant differently:\n${outcomes.map(o => o.slice(0, 400)).join("\n")}`)
  return "program"
}

const counts = { message: 0, program: 0, failed: 0 }
let slowest = 0
const end = Date.now() + minutes * 60_000
while (Date.now() < end) {
  const text = edited(pick(cells))
  const started = performance.now()
  try {
    counts[await check(text)]++
  } catch (cause) {
    counts.failed++
    console.log(`--- seed ${state}\n${String(cause)}\n--- text\n${text}\n---`)
    if (counts.failed > 20) break
  }
  slowest = Math.max(slowest, performance.now() - started)
}
console.log(counts, `slowest ${slowest.toFixed(0)} ms`)
process.exit(counts.failed > 0 ? 1 : 0)
