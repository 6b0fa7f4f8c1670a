import { describe, expect, it } from "vitest"
import { sizeAt } from "../../src/judge/rules/size-at.ts"

describe("the size of a vector in a row of them", () => {
  it("is the root of the sum of squares", () => {
    expect(sizeAt([1, 2, 2, 0, -3, 4], 0)).toBe(3)
    expect(sizeAt([1, 2, 2, 0, -3, 4], 1)).toBe(5)
  })
  it.each([
    [[0, 0, 0], 0],
    [[3e-200, 4e-200, 0], 5e-200],
    [[5e-324, 0, 0], 5e-324],
    [[3e200, 0, -4e200], 5e200],
  ])("of %j neither vanishes nor overflows", (values, size) => {
    expect(sizeAt(values, 0) - size).toBeLessThanOrEqual(1e-15 * size)
    expect(size - sizeAt(values, 0)).toBeLessThanOrEqual(1e-15 * size)
  })
})
