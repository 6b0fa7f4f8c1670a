import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import type { Result, Results } from "../../src/report/index.ts"
import { type Fate, shipped, writeClass } from "../support/class.ts"
import { deltasheet } from "../support/deltasheet.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-grade-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const fateOf = (result: Result): Fate => {
  if (result.status === "refused") return "refused"
  if (result.checks.some(check => check.verdict === "could not run")) return "could not run"
  return result.points === result.outOf ? "full" : "less"
}

describe("a class of 200 answer files, 20 of them broken in different ways", () => {
  const worksheet = shipped("lamp-key")
  const fates = writeClass(join(folder, "class"), worksheet)
  let first: string
  let results: Results
  beforeAll(async () => {
    const run = await deltasheet(
      "grade",
      "worksheets/lamp-key.md",
      "--answers",
      join(folder, "class"),
      "--out",
      join(folder, "out"),
    )
    expect(run.err).toBe("")
    expect(run.code).toBe(1)
    first = readFileSync(join(folder, "out", "results.json"), "utf8")
    results = JSON.parse(first) as Results
  }, 240_000)
  it("gives 200 results in the order of the file names", () => {
    expect(results.format).toBe("deltasheet-results/1")
    expect(results.results.map(result => result.file)).toEqual([...fates.keys()])
  })
  it("gives each the right verdict", () => {
    const found = new Map(results.results.map(result => [result.file, fateOf(result)]))
    const off = [...fates]
      .filter(([file, fate]) => found.get(file) !== fate)
      .map(([file, fate]) => `${file}: ${found.get(file)}, should be ${fate}`)
    expect(off).toEqual([])
  })
  it("says in words why a file was refused or could not run", () => {
    for (const result of results.results) {
      if (["refused", "could not run"].includes(fateOf(result))) {
        expect(result.problems.length, result.file).toBeGreaterThan(0)
        for (const problem of result.problems) {
          expect(problem.text, result.file).toMatch(/\w/)
          expect(problem.todo, result.file).toMatch(/\w/)
          expect(problem.text, result.file).not.toMatch(/\bat .*:\d+:\d+|undefined|\[object/)
        }
      }
    }
  })
  it("leaves a report of the class, a page for each file, and files for other systems", () => {
    const read = (name: string): string => readFileSync(join(folder, "out", name), "utf8")
    const report = read("report.html")
    expect(report).toMatch(/The time step was left out/)
    expect(report.match(/<article class="student"/g)).toHaveLength(200)
    expect(report).toMatch(/<polyline class="reference"/)
    expect(readdirSync(join(folder, "out", "students"))).toHaveLength(200)
    expect(JSON.parse(read("statements.json"))).toBeInstanceOf(Array)
    for (const name of ["manifest", "categories", "lineItems", "results"])
      expect(read(join("oneroster", `${name}.csv`))).toMatch(/^\w+,.*\r\n/)
  })
  it("names the slip of those who left out the time step", () => {
    const slips = results.results.flatMap(result => result.checks.map(check => check.slip))
    expect(slips).toContain("time-step-missing")
    expect(slips).toContain("sign-turned")
  })
  it("writes a line of CSV for each", () => {
    const csv = readFileSync(join(folder, "out", "results.csv"), "utf8")
    expect(csv.split("\r\n").filter(line => /^\d+,[^,]*,.*,\d{3}\.json,/.test(line))).toHaveLength(200)
  })
  it("is left as it is when nothing to mark is named", async () => {
    const empty = join(folder, "empty")
    mkdirSync(empty, { recursive: true })
    writeFileSync(join(empty, "essay.docx"), "")
    const pages = readdirSync(join(folder, "out", "students"))
    const again = (answers: string) =>
      deltasheet("grade", "worksheets/lamp-key.md", "--answers", answers, "--out", join(folder, "out"))
    const mistyped = await again(join(folder, "clas"))
    expect([mistyped.code, mistyped.err]).toEqual([2, expect.stringMatching(/clas” is not there/)])
    const none = await again(empty)
    expect([none.code, none.err]).toEqual([
      2,
      expect.stringMatching(/No answer file.*found in.*empty.*essay\.docx/),
    ])
    expect(readFileSync(join(folder, "out", "results.json"), "utf8")).toBe(first)
    expect(readdirSync(join(folder, "out", "students"))).toEqual(pages)
  }, 60_000)
  it("gives the same bytes when it is done again", async () => {
    await deltasheet(
      "grade",
      "worksheets/lamp-key.md",
      "--answers",
      join(folder, "class"),
      "--out",
      join(folder, "again"),
    )
    expect(readFileSync(join(folder, "again", "results.json"), "utf8")).toBe(first)
  }, 240_000)
})
