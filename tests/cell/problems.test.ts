import { existsSync, readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { cellProblemCodes } from "../../src/cell/index.ts"

const page = (code: string): string => new URL(`../../public/problems/${code}.md`, import.meta.url).pathname

describe("problems of the cell language", () => {
  it("each has one code and a page with meaning, example, remedy and what it is not", () => {
    expect(new Set(cellProblemCodes).size).toBe(cellProblemCodes.length)
    for (const code of cellProblemCodes) {
      expect(existsSync(page(code)), `public/problems/${code}.md is missing`).toBe(true)
      const text = readFileSync(page(code), "utf8")
      expect(text, code).toMatch(
        /^# .+\n\n[\s\S]+## Smallest example\n\n {4}[\s\S]+## What to do\n\n[\s\S]+## What it is not\n\n/,
      )
    }
  })
})
