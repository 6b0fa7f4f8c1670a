import { describe, expect, it } from "vitest"
import { resultsCsv, resultsJson } from "../../src/report/index.ts"
import type { Result } from "../../src/report/results.ts"
import type { StudentSheet } from "../../src/worksheet/index.ts"

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

describe("results.csv", () => {
  it("has a heading and one line a file, CRLF ends (RFC 4180)", () => {
    const rows = resultsCsv(sheet, [result({}), result({ file: "b.json" })]).split("\r\n")
    expect(rows[0]).toBe("file,student id,student name,status,points,out of,update,guess,slips,remarks")
    expect(rows[1]).toBe("a.json,s1,Student One,graded,4,5,4,,,")
    expect(rows).toHaveLength(4)
  })
  it("quotes commas, quotes and line ends (RFC 4180)", () => {
    const text = resultsCsv(sheet, [result({ student: { id: "s,1", name: 'The "second"\nstudent' } })])
    expect(text).toContain('"s,1","The ""second""\nstudent"')
  })
  it("does not let a name act as a formula in a spreadsheet", () => {
    expect(resultsCsv(sheet, [result({ student: { id: "-5", name: '=HYPERLINK("x")' } })])).toContain(
      `,-5,"'=HYPERLINK(""x"")",`,
    )
  })
})

describe("results.json", () => {
  it("gives the same bytes for the same results", () => {
    expect(resultsJson(sheet, [result({})])).toBe(resultsJson(sheet, [{ ...result({}) }]))
    expect(JSON.parse(resultsJson(sheet, [])).format).toBe("deltasheet-results/1")
  })
})
