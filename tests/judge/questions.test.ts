import { describe, expect, it } from "vitest"
import { readNumberAnswer } from "../../src/judge/number-answer.ts"
import { markQuestions } from "../../src/judge/questions.ts"
import { fileOf } from "../judging/measure.ts"
import { shipped } from "../support/class.ts"

describe("a number as people write it", () => {
  const cases: [string | number, string, number][] = [
    ["0.9101", "m", 0.9101],
    ["0,9101 m", "m", 0.9101],
    ["91.01 cm", "m", 0.9101],
    ["910.1mm", "m", 0.9101],
    ["9.101e-1", "m", 0.9101],
    ["9,101·10^-1 m", "m", 0.9101],
    ["9.101 × 10⁻¹ m", "m", 0.9101],
    ["\u22122.5", "1", -2.5],
    ["+2.5", "1", 2.5],
    ["20 000", "N", 20000],
    [".5", "1", 0.5],
    ["36 km/h", "m/s", 10],
    ["1 N s", "kg m/s", 1],
    ["80 %", "1", 0.8],
    [9.81, "m/s", 9.81],
  ]
  for (const [given, unit, value] of cases) {
    it(`“${given}” for ${unit}`, () => {
      const read = readNumberAnswer(given, unit)
      expect(read.ok && read.value).toBeCloseTo(value, 12)
    })
  }
  const refused: [string | null, string, string][] = [
    [null, "m", "empty"],
    ["  ", "m", "empty"],
    ["about one", "m", "no number"],
    ["1 kg", "m", "wrong quantity"],
    ["1 furlong", "m", "unit"],
  ]
  for (const [given, unit, why] of refused) {
    it(`“${given}” for ${unit} is refused: ${why}`, () => {
      expect(readNumberAnswer(given, unit)).toEqual({ ok: false, why })
    })
  }
})

describe("questions", () => {
  const worksheet = shipped("slipway")
  const mark = (questions: Record<string, string | number | null>) =>
    markQuestions(worksheet, { ...fileOf(worksheet, {}, 1), questions })
  const one = (name: string, value: string | number | null) =>
    mark({ [name]: value }).find(r => r.name === name)!

  it("are met by the key and by any number within the relative tolerance", () => {
    expect(
      mark(Object.fromEntries(worksheet.keys.map(k => [k.name, k.answer]))).every(r => r.verdict === "met"),
    ).toBe(true)
    expect(one("distance", "0.92 m").verdict).toBe("not met")
    expect(one("distance", "0.915 m").verdict).toBe("met")
  })
  it("say what kind of miss it is, never the answer", () => {
    expect(one("distance", "-0.9101").message).toContain("sign")
    expect(one("distance", "910").message).toContain("power of ten")
    expect(one("distance", "0.91 kg").message).toContain("another quantity")
    expect(one("distance", "").message).toContain("not answered")
    for (const given of ["1", "0.5", "-3", "x"]) expect(one("distance", given).message).not.toContain("0.91")
  })
  it("leave short text to the teacher: no line, no points", () => {
    expect(mark({}).some(r => r.name === "tremble")).toBe(false)
  })
})
