import { existsSync, readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { runProblemCodes } from "../../src/run/index.ts"

const page = (code: string): URL => new URL(`../../public/problems/${code}.md`, import.meta.url)

describe("problems of a run", () => {
  it.each(runProblemCodes)(
    "%s has a page with meaning, smallest example, remedy and what it is not",
    code => {
      expect(existsSync(page(code)), `public/problems/${code}.md is missing`).toBe(true)
      const text = readFileSync(page(code), "utf8")
      expect(text).toMatch(/^# \S/)
      for (const heading of ["## Smallest example", "## What to do", "## What it is not"])
        expect(text).toContain(heading)
    },
  )

  it("have each code once", () => {
    expect(new Set(runProblemCodes).size).toBe(runProblemCodes.length)
  })
})
