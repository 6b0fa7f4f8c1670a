import { mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { join } from "node:path"
import { parseWorksheet, type Worksheet, writeAnswerFile } from "../../src/worksheet/index.ts"

export function shipped(id: string): Worksheet {
  const file = join("worksheets", `${id}.md`)
  const result = parseWorksheet(readFileSync(file, "utf8"), file)
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.worksheet
}

/** An answer file as the page writes it; students and their names are invented. */
export function answerFile(
  worksheet: Worksheet,
  number: number,
  answers: Readonly<Record<string, string>>,
  questions: Readonly<Record<string, string | number | null>> = rightQuestions(worksheet),
): string {
  const { id, version, digest } = worksheet.sheet
  return writeAnswerFile({
    format: "deltasheet-answers/1",
    worksheet: { id, version, digest },
    student: { id: `s${String(number).padStart(3, "0")}`, name: `Student ${number}` },
    seed: number,
    answers,
    questions,
    savedAt: "2026-11-25T09:00:00.000Z",
  })
}

export function rightQuestions(worksheet: Worksheet): Record<string, string | number | null> {
  return Object.fromEntries(worksheet.keys.map(key => [key.name, key.answer ?? "The gap is small."]))
}

/** What becomes of a file: refused, could not run, full points, or fewer. */
export type Fate = "refused" | "could not run" | "full" | "less"

/** Right answers to lamp-key as different students would write them. */
const right = [
  "  p = p + Fnet * dt\n  r = r + (p / mass) * dt",
  "  p += Fnet * dt\n  r += p / mass * dt",
  "  const v = (p + Fnet * dt) / mass\n  p = mass * v\n  r = r + v * dt",
  "  p = p.add(Fnet.times(dt))\n  r = r.add(p.times(dt / mass))",
  "  const old = p\n  p = p + dt * Fnet\n  r = r + dt * (old + p) / (2 * mass)",
  "  r = r + p / mass * dt\n  p = p + Fnet * dt",
]

/** Wrong ones that run. */
const wrong = [
  "  p = p - Fnet * dt\n  r = r + (p / mass) * dt",
  "  p = p + Fnet\n  r = r + (p / mass) * dt",
  "  p = Fnet * dt\n  r = r + (p / mass) * dt",
  "  p = p + Fnet * dt\n  r = r + p * dt",
  "",
]

const formula = "  yFormula = height - 0.5 * 9.81 * t * t"

/** Twenty files that are broken in different ways. */
function broken(worksheet: Worksheet, number: number): [text: string | Uint8Array, fate: Fate][] {
  const file = (update: string) => answerFile(worksheet, number, { update, formula })
  const good = JSON.parse(file(right[0]!)) as Record<string, unknown> & { worksheet: Record<string, unknown> }
  const changed = (over: Record<string, unknown>): string => JSON.stringify({ ...good, ...over })
  return [
    [file("  while (true) {}"), "could not run"],
    [file("  for (;;) { r = r + p * dt }"), "could not run"],
    [file("  const hoard = []\n  while (true) hoard.push(new Array(1e6).fill(r))"), "could not run"],
    [file("  let text = 'x'\n  while (true) text += text"), "could not run"],
    [file("  p = p + Fnet * dt)\n  r = r"), "could not run"],
    [file("  p = p + Fnet * dt }"), "could not run"],
    [file("  throw new Error('no')"), "could not run"],
    [file("  p = p * Fnet"), "could not run"],
    [file("  pp = 1"), "could not run"],
    [file("  const f = () => f()\n  f()"), "could not run"],
    [file("  break"), "less"],
    [changed({ worksheet: { ...good.worksheet, digest: `sha256:${"0".repeat(64)}` } }), "refused"],
    [changed({ worksheet: { ...good.worksheet, id: "fender" } }), "refused"],
    [changed({ worksheet: { ...good.worksheet, version: 99 } }), "refused"],
    [changed({ format: "deltasheet-answers/9" }), "refused"],
    [changed({ seed: "seven" }), "refused"],
    ["", "refused"],
    ["dear teacher, the file did not save", "refused"],
    [file(right[0]!).slice(0, 200), "refused"],
    [new Uint8Array([0xff, 0xfe, 0x00, 0x41, 0xd8]), "refused"],
  ]
}

/**
 * Writes a class of 200 answer files to lamp-key, 20 of them broken, and says what should become of each, by file
 * name. The class is invented.
 */
export function writeClass(folder: string, worksheet: Worksheet): Map<string, Fate> {
  mkdirSync(folder, { recursive: true })
  const fates = new Map<string, Fate>()
  const put = (number: number, content: string | Uint8Array, fate: Fate): void => {
    const name = `${String(number).padStart(3, "0")}.json`
    writeFileSync(join(folder, name), content)
    fates.set(name, fate)
  }
  for (let number = 0; number < 180; number++) {
    const isRight = number % 3 !== 0
    const list = isRight ? right : wrong
    put(
      number,
      answerFile(worksheet, number, { update: list[Math.floor(number / 3) % list.length]!, formula }),
      isRight ? "full" : "less",
    )
  }
  // each of another student: of several files of one student only the newest would count
  for (let i = 0; i < broken(worksheet, 0).length; i++) put(180 + i, ...broken(worksheet, 500 + i)[i]!)
  return fates
}
