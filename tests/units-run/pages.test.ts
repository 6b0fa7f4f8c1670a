import { existsSync, readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { unitsProblemCodes } from "../../src/cell/units-run/index.ts"

describe("problems of units", () => {
  it.each(unitsProblemCodes)("%s has a page with an example, a remedy and what it is not", code => {
    const page = new URL(`../../public/problems/${code}.md`, import.meta.url)
    expect(existsSync(page)).toBe(true)
    const text = readFileSync(page, "utf8")
    for (const part of ["# ", "## Smallest example", "## What to do", "## What it is not"])
      expect(text).toContain(part)
  })
})
