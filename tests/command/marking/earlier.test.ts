import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import type { Result, Results } from "../../../src/report/index.ts"
import { parseWorksheet, type Worksheet } from "../../../src/worksheet/index.ts"
import { answerFile } from "../../support/class.ts"
import { deltasheet } from "../../support/deltasheet.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-earlier-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const text = readFileSync("worksheets/lamp-key.md", "utf8")
/** The lamp key, and the same a term later: dropped from another height, and so another task. */
function written(name: string, change: (text: string) => string): { file: string; worksheet: Worksheet } {
  const file = join(folder, name)
  writeFileSync(file, change(text))
  const read = parseWorksheet(change(text), file)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return { file, worksheet: read.worksheet }
}
const first = written("first.md", all => all)
const second = written("second.md", all =>
  all.replace("version: 1", "version: 2").replace("value: 8,", "value: 9,"),
)
const answers = {
  update: "  p = p + Fnet * dt\n  r = r + (p / mass) * dt",
  formula: "  yFormula = height - 0.5 * 9.81 * t * t",
}

async function marked(out: string, ...more: string[]): Promise<Record<string, Result>> {
  const run = await deltasheet(
    "grade",
    second.file,
    "--answers",
    join(folder, "class"),
    "--out",
    join(folder, out),
    "--results-only",
    ...more,
  )
  expect(run.err).toBe("")
  const { results } = JSON.parse(readFileSync(join(folder, out, "results.json"), "utf8")) as Results
  return Object.fromEntries(results.map(result => [result.file, result]))
}

beforeAll(() => {
  mkdirSync(join(folder, "class"))
  writeFileSync(join(folder, "class", "now.json"), answerFile(second.worksheet, 1, answers))
  writeFileSync(join(folder, "class", "then.json"), answerFile(first.worksheet, 2, answers))
})

describe("answers that were written on an earlier version of the worksheet", () => {
  it("are marked against that version where it is at hand, and it is said", async () => {
    const results = await marked("with", "--earlier", first.file)
    expect(results["now.json"]!.points).toBe(results["now.json"]!.outOf)
    expect(results["now.json"]!.problems).toEqual([])
    expect(results["then.json"]!.points).toBe(results["then.json"]!.outOf)
    const [said] = results["then.json"]!.problems
    expect(said!.code).toBe("answer-earlier-version")
    expect(said!.text).toContain("version 1")
  }, 60_000)
  it("are refused in words where it is not, while the rest is marked", async () => {
    const results = await marked("without")
    expect(results["now.json"]!.points).toBe(results["now.json"]!.outOf)
    expect(results["then.json"]!.status).toBe("refused")
    expect(results["then.json"]!.problems[0]!.text).toMatch(/version 1\b/)
  }, 60_000)
  it("are not looked for in another worksheet", async () => {
    const run = await deltasheet(
      "grade",
      second.file,
      "--answers",
      join(folder, "class"),
      "--out",
      join(folder, "other"),
      "--earlier",
      "worksheets/buoy.md",
    )
    expect(run.code).toBe(2)
    expect(run.err).toContain("earlier versions must be of “lamp-key”")
  }, 60_000)
})
