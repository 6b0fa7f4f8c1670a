import { describe, expect, it } from "vitest"
import { onStep, plainNumber, readTyped, sliderStep } from "../../../src/page/bench/parameter.ts"
import { heightParameter as height } from "../bench-fixture/sheets.ts"

describe("a typed value", () => {
  it.each([
    ["1.5", 1.5],
    ["1,5", 1.5],
    [" 2 ", 2],
    ["5e-1", 0.5],
    ["3", 3],
    [".75", 0.75],
  ])("is read as people write numbers: %s", (text, value) => {
    expect(readTyped(text, height)).toEqual({ ok: true, value })
  })

  it("may be negative with a true minus where the range allows it", () => {
    expect(readTyped("−2,5", { ...height, range: [-3, 3] })).toEqual({ ok: true, value: -2.5 })
  })

  it.each([
    ["", "Nothing is typed; drop height goes from 0.5\u00a0m to 3\u00a0m."],
    ["two", "two is not a number; drop height goes from 0.5\u00a0m to 3\u00a0m."],
    ["9", "9 is outside; drop height goes from 0.5\u00a0m to 3\u00a0m."],
    ["0x1", "0x1 is not a number; drop height goes from 0.5\u00a0m to 3\u00a0m."],
    ["Infinity", "Infinity is not a number; drop height goes from 0.5\u00a0m to 3\u00a0m."],
    ["1.2.3", "1.2.3 is not a number; drop height goes from 0.5\u00a0m to 3\u00a0m."],
  ])("is refused in words that name the range: %j", (text, why) => {
    expect(readTyped(text, height)).toEqual({ ok: false, why })
  })

  it("is what is shown again", () => {
    for (const value of [0.5, 1.234, -2e-7, 1 / 3]) {
      const read = readTyped(plainNumber(value), { ...height, range: [-10, 10] })
      expect(read.ok && read.value).toBeCloseTo(value, 8)
    }
  })
})

describe("a slider's step", () => {
  it.each([[[0.5, 3]], [[200, 2000]], [[0, 1]], [[0.3, 0.777]]])(
    "reaches both ends of %j in 100 to 500 steps",
    range => {
      const parameter = { ...height, range: range as [number, number] }
      const count = (parameter.range[1] - parameter.range[0]) / sliderStep(parameter)
      expect(Math.abs(count - Math.round(count))).toBeLessThan(1e-6)
      expect(count).toBeGreaterThan(79)
      expect(count).toBeLessThan(501)
    },
  )
})

it("a slider's value lies on a step and within the range", () => {
  const wanted = [-1, 0.5, 1.234567, 2.99999, 3, 7, Number.POSITIVE_INFINITY]
  expect(wanted.map(v => onStep(height, v))).toEqual([0.5, 0.5, 1.24, 3, 3, 3, 3])
})
