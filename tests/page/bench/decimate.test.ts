import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { decimate } from "../../../src/page/bench/decimate.ts"

const row = (n: number) => n

describe("long series drawn with few points", () => {
  it("keep a peak of one sample among a million", () => {
    const peak = 654_321
    const y = (n: number) => (n === peak ? 9 : n === 17 ? -4 : Math.sin(n / 1e5))
    const { x, y: values } = decimate(1_000_000, row, y, 300)
    expect(x.length).toBeLessThanOrEqual(1200)
    expect(Math.max(...values)).toBe(9)
    expect(Math.min(...values)).toBe(-4)
    expect(x[values.indexOf(9)]).toBe(peak)
  })

  it("keep first, last, greatest and least, in order, for any series", () => {
    const series = fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), {
      minLength: 1,
      maxLength: 3000,
    })
    fc.assert(
      fc.property(series, fc.integer({ min: 1, max: 40 }), (values, buckets) => {
        const out = decimate(values.length, row, n => values[n] ?? 0, buckets)
        expect(out.x[0]).toBe(0)
        expect(out.x.at(-1)).toBe(values.length - 1)
        expect(Math.max(...out.y)).toBe(Math.max(...values))
        expect(Math.min(...out.y)).toBe(Math.min(...values))
        for (let k = 1; k < out.x.length; k++) expect(out.x[k]).toBeGreaterThan(out.x[k - 1] ?? Infinity)
        expect([...out.y]).toEqual([...out.x].map(n => values[n]))
      }),
      { seed: 5 },
    )
  })

  it("leave short series whole, and keep the break where a value is not a number", () => {
    expect([...decimate(3, row, n => n * 2, 10).y]).toEqual([0, 2, 4])
    const broken = decimate(10_000, row, n => (n === 5000 ? Number.NaN : 1), 10)
    expect([...broken.y].some(Number.isNaN)).toBe(true)
  })
})
