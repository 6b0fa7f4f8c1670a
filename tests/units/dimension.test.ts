import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  dimensionOf,
  exponentsOf,
  isKnown,
  nameOfDimension,
  per,
  raised,
  sameDimension,
  times,
  unknownDimension,
} from "../../src/physics/units/index.ts"

const sixths = (most: number) => fc.integer({ min: -most * 6, max: most * 6 }).map(n => n / 6)
const exponents = fc.record({
  m: sixths(20),
  kg: sixths(20),
  s: sixths(20),
  A: sixths(2),
  K: sixths(2),
  mol: sixths(2),
  cd: sixths(2),
})
const base = ["m", "kg", "s", "A", "K", "mol", "cd"] as const

describe("dimensions packed into one number", () => {
  it("keep their exponents", () => {
    fc.assert(
      fc.property(exponents, e => {
        const back = exponentsOf(dimensionOf(e))
        for (const b of base) expect(back[b]).toBeCloseTo(e[b], 12)
      }),
      { numRuns: 500, seed: 4 },
    )
  })
  it("add exponents in products, subtract them in quotients, multiply them in powers", () => {
    fc.assert(
      fc.property(exponents, exponents, (a, b) => {
        const product = exponentsOf(times(dimensionOf(a), dimensionOf(b)))
        const quotient = exponentsOf(per(dimensionOf(a), dimensionOf(b)))
        const square = exponentsOf(raised(dimensionOf(a), 2))
        for (const one of base) {
          expect(product[one]).toBeCloseTo(a[one] + b[one], 12)
          expect(quotient[one]).toBeCloseTo(a[one] - b[one], 12)
          expect(square[one]).toBeCloseTo(2 * a[one], 12)
        }
      }),
      { numRuns: 300, seed: 4 },
    )
  })
  it("become unknown rather than wrong when exponents grow beyond what is kept", () => {
    let d = dimensionOf({ m: 1, kg: -1 })
    for (let i = 0; i < 10; i++) d = times(d, d)
    expect(isKnown(d)).toBe(false)
    expect(isKnown(times(dimensionOf({ cd: 5 }), dimensionOf({ cd: 5 })))).toBe(false)
    expect(isKnown(per(dimensionOf({ m: 30 }), dimensionOf({ m: -30 })))).toBe(false)
    expect(isKnown(raised(dimensionOf({ m: 1 }), 0.37))).toBe(false)
    expect(exponentsOf(raised(dimensionOf({ m: 2 }), 0.5)).m).toBe(1)
  })
  it("stay unknown once unknown, and an unknown one is like no other", () => {
    const metre = dimensionOf({ m: 1 })
    for (const d of [
      times(metre, unknownDimension),
      per(unknownDimension, metre),
      raised(unknownDimension, 2),
    ])
      expect(isKnown(d)).toBe(false)
    expect(sameDimension(unknownDimension, unknownDimension)).toBe(false)
  })
  it("have their names from ISO 80000-3 and -4", () => {
    expect(nameOfDimension(dimensionOf({ kg: 1, m: 1, s: -1 }))).toBe("momentum")
    expect(nameOfDimension(dimensionOf({ m: 1, s: -1 }))).toBe("speed")
    expect(nameOfDimension(dimensionOf({ m: 1, s: -1 }), "vector")).toBe("velocity")
    expect(nameOfDimension(dimensionOf({ kg: 1, m: 2, s: -2 }))).toBe("energy or torque")
    expect(nameOfDimension(dimensionOf({ m: 7 }))).toBe(null)
  })
})
