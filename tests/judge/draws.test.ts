import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { drawParameters, drawPool, drawSeeds, ownParameters } from "../../src/judge/draws.ts"
import { shipped } from "../support/class.ts"

const { sheet } = shipped("slipway")

describe("hidden draws", () => {
  it("lie within the range, in round numbers, and keep what does not vary", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), seed => {
        const drawn = drawParameters(sheet, seed)
        for (const { name, range, vary, value } of sheet.parameters) {
          if (!vary) expect(drawn[name]).toBe(value)
          expect(drawn[name]).toBeGreaterThanOrEqual(range[0])
          expect(drawn[name]).toBeLessThanOrEqual(range[1])
          expect(String(drawn[name]).length).toBeLessThanOrEqual(6)
        }
      }),
      { seed: 7 },
    )
  })
  it("are the same for the same seed and differ between seeds", () => {
    expect(drawParameters(sheet, 3)).toEqual(drawParameters(sheet, 3))
    const all = new Set(Array.from({ length: drawPool }, (_, i) => JSON.stringify(drawParameters(sheet, i))))
    expect(all.size).toBe(drawPool)
  })
  it("stay away from the sheet's own values, where they would tell nothing", () => {
    const own = ownParameters(sheet)
    for (let seed = 0; seed < drawPool; seed++) {
      const drawn = drawParameters(sheet, seed)
      for (const { name, vary } of sheet.parameters) if (vary) expect(drawn[name]).not.toBe(own[name])
    }
  })
  it("are chosen from one pool by the student's seed: different ones for different students", () => {
    expect(drawSeeds(sheet, 1, 5)).toEqual(drawSeeds(sheet, 1, 5))
    expect(new Set(drawSeeds(sheet, 1, 5)).size).toBe(5)
    const choices = new Set(Array.from({ length: 20 }, (_, s) => drawSeeds(sheet, s, 3).join()))
    expect(choices.size).toBeGreaterThan(10)
  })
})
