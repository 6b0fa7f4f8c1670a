import { describe, expect, it } from "vitest"
import { longLines } from "../../src/worksheet/long-lines.ts"
import { type ParseResult, parseWorksheet } from "../../src/worksheet/parse.ts"

const sheet = (given: string, answer: string): ParseResult =>
  parseWorksheet(
    `---
title: A sinker
id: sinker
version: 1
---

\`\`\`ts cell drop
const dt = 0.001
// blank update: Update.
${answer}
// end blank
${given}
\`\`\`
`,
    "sinker.md",
  )
const advice = (given: string, answer = "let a = 1") => {
  const result = sheet(given, answer)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return longLines(result.worksheet)
}

describe("given lines that wrap on a phone", () => {
  const line = (signs: number): string => `// ${"x".repeat(signs - 3)}`
  it("are those of more than 54 signs", () => {
    expect(advice(line(54))).toEqual([])
    expect(advice(line(55))).toMatchObject([
      {
        code: "long-line",
        text: expect.stringContaining("55"),
        where: { cell: "drop", line: 3, column: 55 },
      },
    ])
  })
  it("are counted once a cell, with the longest", () => {
    expect(advice([line(60), line(10), line(70)].join("\n"))[0]!.text).toMatch(
      /^2 given lines .*longest has 70/,
    )
  })
  it("are not those that a student writes", () => expect(advice("let b = 2", line(80))).toEqual([]))
  it("are told at their line as the student sees it, after an answer of two lines", () => {
    expect(advice(line(60), "let a = 1\nlet c = 2")[0]!.where!.line).toBe(4)
  })
})
