import { describe, expect, it } from "vitest"
import type { Edition } from "../../src/judge/edition.ts"
import { referenceDue, untouched } from "../../src/page/tried.ts"
import { parseWorksheet } from "../../src/worksheet/index.ts"

const text = (shown: string) => `---
title: Two drops
id: two-drops
version: 1
${shown}---
\`\`\`ts cell first
let r = vec3(0, 2, 0)
const a = /* blank rate: change */ 1 /* end blank */
// blank step: Step it.
r = r + vec3(0, -a, 0)
// starter
// r = ...
// end blank
record(0, { stone: { position: r } })
\`\`\`

\`\`\`ts cell second
record(1, { stone: { position: r } })
\`\`\`
`

function editionOf(shown: string): Edition {
  const read = parseWorksheet(text(shown), "two-drops.md")
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return { sheet: read.worksheet.sheet } as unknown as Edition
}

const all = { rate: "2", step: "r = r - vec3(0, a, 0)" }

describe("the author's motion is seen when the worksheet says so", () => {
  it("always, if it says nothing", () => expect(referenceDue(editionOf(""), "first", {})).toBe(true))

  it("never", () => expect(referenceDue(editionOf("reference: hidden\n"), "first", all)).toBe(false))

  it("once each blank of the cell has been tried", () => {
    const edition = editionOf("reference: tried\n")
    expect(referenceDue(edition, "first", {})).toBe(false)
    expect(referenceDue(edition, "first", { rate: "2" })).toBe(false)
    expect(referenceDue(edition, "first", { ...all, step: "// r = ..." })).toBe(false)
    expect(referenceDue(edition, "first", { ...all, rate: "  " })).toBe(false)
    expect(referenceDue(edition, "first", all)).toBe(true)
  })

  it("at once for a cell that has no blank", () =>
    expect(referenceDue(editionOf("reference: tried\n"), "second", {})).toBe(true))

  it("is refused in words when it is none of the three", () => {
    const read = parseWorksheet(text("reference: later\n"), "two-drops.md")
    expect(read.ok).toBe(false)
    expect(read.problems[0]?.code).toBe("wrong-value")
    expect(read.problems[0]?.todo).toContain("tried")
  })
})

describe("a blank is untouched while it holds what was found there, or nothing", () => {
  it.each([
    [{}, ["rate", "step"]],
    [{ rate: "1" }, ["step"]],
    [{ rate: " " }, ["rate", "step"]],
    [all, []],
  ] as const)("%j", (typed, open) => expect([...untouched(editionOf(""), typed)]).toEqual(open))
})
