import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { drawParameters, drawPlaces, drawPool, ownParameters } from "../../src/judge/draws.ts"
import { shipped } from "../support/class.ts"

const worksheet = shipped("slipway")
const { sheet } = worksheet

describe("hidden draws", () => {
  it("lie within the range, in round numbers, and keep what does not vary", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: drawPool - 1 }), place => {
        const drawn = drawParameters(worksheet, place)
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
  it("are the same for the same place and differ between places", () => {
    expect(drawParameters(worksheet, 3)).toEqual(drawParameters(worksheet, 3))
    const all = new Set(
      Array.from({ length: drawPool }, (_, i) => JSON.stringify(drawParameters(worksheet, i))),
    )
    expect(all.size).toBe(drawPool)
  })
  it("take every part of a range, so that no case of it is left out", () => {
    const pool = Array.from({ length: drawPool }, (_, place) => drawParameters(worksheet, place))
    for (const { name, range, vary, value } of sheet.parameters) {
      if (!vary) continue
      const [low, high] = range
      const parts = pool.map(drawn => Math.min(7, Math.floor((8 * (drawn[name]! - low)) / (high - low))))
      // the part with the sheet's own value is avoided
      const own = Math.min(7, Math.floor((8 * (value - low)) / (high - low)))
      for (let part = 0; part < 8; part++)
        if (part !== own) expect([name, parts]).toEqual([name, expect.arrayContaining([part])])
    }
  })
  it("of one student leave out no large part of a range", () => {
    for (const {
      name,
      range: [low, high],
    } of sheet.parameters.filter(({ vary }) => vary))
      for (let s = 0; s < 200; s++) {
        const places = drawPlaces(worksheet, { id: `s${s}`, name: "" }, 8)
        const values = places.map(place => drawParameters(worksheet, place)[name]!)
        for (let from = low; from <= high - 0.4 * (high - low); from += (high - low) / 50)
          expect(values.some(value => value >= from && value <= from + 0.4 * (high - low))).toBe(true)
      }
  })
  it("stay away from the sheet's own values, where they would tell nothing", () => {
    const own = ownParameters(sheet)
    for (let place = 0; place < drawPool; place++) {
      const drawn = drawParameters(worksheet, place)
      for (const { name, vary } of sheet.parameters) if (vary) expect(drawn[name]).not.toBe(own[name])
    }
  })
  it("are chosen from one pool for each student, by number or, without one, by name", () => {
    const student = (id: string, name = "") => ({ id, name })
    expect(drawPlaces(worksheet, student("s1"), 5)).toEqual(drawPlaces(worksheet, student(" s1", "Ana"), 5))
    expect(drawPlaces(worksheet, student("", "Ana"), 5)).not.toEqual(
      drawPlaces(worksheet, student("", "Ben"), 5),
    )
    expect(new Set(drawPlaces(worksheet, student("s1"), 5)).size).toBe(5)
    const choices = new Set(
      Array.from({ length: 20 }, (_, s) => drawPlaces(worksheet, student(`s${s}`), 3).join()),
    )
    expect(choices.size).toBeGreaterThan(10)
  })
  it("leave no place of the pool unused", () => {
    const counts = new Array<number>(drawPool).fill(0)
    for (let s = 0; s < 1600; s++)
      for (const place of drawPlaces(worksheet, { id: `s${s}`, name: "" }, 5)) counts[place]!++
    // 500 each on average; those near an end of a range leave out less, and are taken more often
    for (const count of counts) expect(count).toBeGreaterThan(150)
  })
  it("hang on the author's answers, which no student has, and not on the seed in the student's file", () => {
    const other = {
      ...worksheet,
      answers: { ...worksheet.answers, friction: "Ffriction = -mu * N * unit(p)" },
    }
    expect(drawParameters(other, 0)).not.toEqual(drawParameters(worksheet, 0))
    const ids = Array.from({ length: 10 }, (_, s) => ({ id: `s${s}`, name: "" }))
    const choices = (of: typeof worksheet) => ids.map(student => drawPlaces(of, student, 3))
    expect(choices(other)).not.toEqual(choices(worksheet))
  })
})
