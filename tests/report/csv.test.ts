import { describe, expect, it } from "vitest"
import { csvHead, csvLine, type Marked, resultsJson } from "../../src/report/index.ts"
import type { Result } from "../../src/report/results.ts"
import type { StudentSheet } from "../../src/worksheet/index.ts"
import { readCsv } from "../support/csv.ts"

const sheet = {
  id: "lamp-key",
  version: 1,
  digest: "sha256:0",
  title: "The dropped lamp key",
  checks: [{ name: "update", points: 4 }],
  questions: [
    { name: "guess", points: 1, kind: "choice" },
    { name: "why", points: 0, kind: "text" },
  ],
} as unknown as StudentSheet

const result = (over: Partial<Result>): Result => ({
  file: "a.json",
  student: { id: "s1", name: "Student One" },
  status: "graded",
  points: 4,
  outOf: 5,
  checks: [{ name: "update", verdict: "met", points: 4, outOf: 4, departsAt: null, slip: null, message: "" }],
  toRead: {},
  problems: [],
  ...over,
})

const marked = (over: Partial<Result>, savedAt = "2026-11-25T10:30:00+01:00"): Marked => ({
  result: result(over),
  work: over.status === "refused" ? null : { blanks: {}, questions: {}, savedAt, motions: [] },
})
const lineOf = (over: Partial<Result>): string => csvLine(sheet, marked(over), 1, false)
const cellsOf = (over: Partial<Result>): string[] => readCsv(lineOf(over))[0]!

describe("results.csv", () => {
  it("has a heading and one line a file, CRLF ends (RFC 4180), name and points in front", () => {
    expect(csvHead(sheet)).toBe(
      "\ufeffnumber,student name,points,out of,status,student id,file,saved (UTC),update,guess,slips,remarks,page\r\n",
    )
    expect(csvLine(sheet, marked({}), 7, false)).toBe(
      "7,Student One,4,5,graded,s1,a.json,2026-11-25 09:30,4,,,,\r\n",
    )
  })
  it("begins with the mark by which spreadsheets know UTF-8", () => {
    expect(csvHead(sheet).startsWith("\ufeff")).toBe(true)
  })
  it("names the student's page, where pages are written", () => {
    expect(csvLine(sheet, marked({}), 1, true)).toMatch(/,students\/student-one-[0-9a-f]{16}\.html\r\n$/)
  })
  it("gives no points to what was not marked, and tells what was left aside from what was refused", () => {
    const because = (code: string): Partial<Result> => ({
      status: "refused",
      points: 0,
      checks: [],
      problems: [{ code, text: "Why.", todo: "What." }],
    })
    expect(cellsOf(because("answer-file-empty")).slice(2, 5)).toEqual(["", "", "refused"])
    expect(cellsOf(because("answer-superseded")).slice(2, 5)).toEqual(["", "", "left aside"])
    expect(cellsOf({ points: 0 }).slice(2, 5)).toEqual(["0", "5", "graded"])
  })
  it("quotes commas, quotes and line ends (RFC 4180)", () => {
    const text = lineOf({ student: { id: "s,1", name: 'The "second"\nstudent' } })
    expect(text).toContain('"The ""second""\nstudent"')
    expect(text).toContain('"s,1"')
  })
  it("does not let a name act as a formula in a spreadsheet", () => {
    const [, name, , , , id] = cellsOf({ student: { id: "-5", name: '=HYPERLINK("x")' } })
    expect([name, id]).toEqual([`'=HYPERLINK("x")`, "-5"])
  })
  it("nor behind a sign with which some countries separate their cells", () => {
    for (const sign of [";", "\t", "\n", "; ", ";\t"])
      for (const begin of ["=", "+", "-", "@"]) {
        const [, name] = cellsOf({ student: { id: "s1", name: `x${sign}${begin}cmd|'/C calc'!A0${sign}y` } })
        expect(name).toMatch(/^x;?[;\t\n]' ?[=+\-@]cmd/)
      }
    expect(cellsOf({ student: { id: "s1", name: "Anna-Lena; Bo" } })[1]).toBe("Anna-Lena; Bo")
  })
  it("shows what cannot be seen, or turns the order of letters, by its code point", () => {
    expect(cellsOf({ student: { id: "s1", name: "a\u202eb\u0000\r" } })[1]).toBe("a⟨U+202E⟩b⟨U+0000⟩⟨U+000D⟩")
  })
})

describe("results.json", () => {
  it("gives the same bytes for the same results", () => {
    expect(resultsJson(sheet, [result({})])).toBe(resultsJson(sheet, [{ ...result({}) }]))
    expect(JSON.parse(resultsJson(sheet, [])).format).toBe("deltasheet-results/1")
  })
})
