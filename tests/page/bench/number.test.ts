import { describe, expect, it } from "vitest"
import {
  axisPower,
  decimalsFor,
  fixed,
  multiples,
  niceStep,
  poweredUnit,
  quantity,
  significant,
  trueMinus,
  unitText,
} from "../../../src/page/bench/number.ts"

describe("numbers as they are set on the bench", () => {
  it("keep the digits that were asked for, trailing zeros included", () => {
    expect(significant(1.5)).toBe("1.50")
    expect(significant(0.041)).toBe("0.0410")
    expect(significant(999.96)).toBe("1000")
    expect(significant(12345, 4)).toBe("12\u202f350")
  })

  it("have a true minus, and none before a zero", () => {
    expect(significant(-2)).toBe(`${trueMinus}2.00`)
    expect(fixed(-0.0001, 2)).toBe("0.00")
    expect(fixed(-0.006, 2)).toBe(`${trueMinus}0.01`)
    expect(significant(-0)).toBe("0")
  })

  it("turn to powers of ten where digits would not be read", () => {
    expect(significant(0.000123)).toBe("1.23\u00a0×\u00a010⁻⁴")
    expect(significant(-6.02e23)).toBe(`${trueMinus}6.02\u00a0×\u00a010²³`)
  })

  it("say in words what is no number", () => {
    expect(significant(Number.NaN)).toBe("not a number")
    expect(fixed(Number.POSITIVE_INFINITY, 1)).toBe("beyond all bounds")
  })

  it("stand before their unit with a space that does not break; a pure number stands alone", () => {
    expect(quantity(1.2, "kg m/s")).toBe("1.20\u00a0kg\u00a0m/s")
    expect(quantity(0.35, "1")).toBe("0.350")
    expect(unitText("m s^-2")).toBe("m\u00a0s⁻²")
  })
})

describe("round steps", () => {
  it("are 1, 2 or 5 times a power of ten and give at most the parts asked for", () => {
    for (const span of [0.0037, 0.5, 1, 3, 8.8, 120, 4e6])
      for (const count of [1, 3, 10]) {
        const step = niceStep(span, count)
        const lead = Number((step / 10 ** Math.floor(Math.log10(step) + 1e-9)).toPrecision(6))
        expect([1, 2, 5]).toContain(lead)
        expect(span / step).toBeLessThanOrEqual(count + 1e-9)
      }
  })

  it("have multiples without rounding dust", () => {
    expect(multiples(0, 0.31, 0.1)).toEqual([0, 0.1, 0.2, 0.3])
    expect(multiples(0, 0.05, 0.0125)).toEqual([0, 0.0125, 0.025, 0.0375, 0.05])
    expect(multiples(-0.2, 0.1, 0.1)).toEqual([-0.2, -0.1, 0, 0.1].map(v => v + 0))
  })

  it("have as many decimals as tell them apart", () => {
    expect([1, 0.5, 0.02, 0.001, 20].map(decimalsFor)).toEqual([0, 1, 2, 3, 0])
  })
})

describe("an axis of very large or small numbers", () => {
  it("draws a power of a thousand out into its unit", () => {
    expect([2e9, 384_400_000, 99_999, 3, 0.002, 4e-7, 0].map(axisPower)).toEqual([9, 6, 0, 0, 0, -9, 0])
    expect(poweredUnit(9, "m")).toBe("10⁹\u00a0m")
    expect(poweredUnit(0, "m")).toBe("m")
  })
})
