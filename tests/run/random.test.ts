import { describe, expect, it } from "vitest"
import { seededRandom, seedState, xoshiro128 } from "../../src/run/random.ts"

const take = <T>(n: number, next: () => T): T[] => Array.from({ length: n }, next)

describe("random numbers of cells", () => {
  it("follow the reference implementation of xoshiro128** 1.1 bit by bit", () => {
    // D. Blackman and S. Vigna, xoshiro128starstar.c, state {1, 2, 3, 4}; the ten values as the Rust crate
    // rand_xoshiro quotes them from a run of that program.
    const expected = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]
    expect(take(10, xoshiro128([1, 2, 3, 4]))).toEqual(expected)
    expect(take(10, xoshiro128([1, 2, 3, 5]))).not.toEqual(expected)
  })

  it("are the same for the same seed and others for another, far or near, whole or broken, large or negative", () => {
    const seeds = [0, 1, 2, 3, -1, 2 ** 31, 2 ** 32, 2 ** 32 + 1, 2 ** 40, Number.MAX_SAFE_INTEGER]
    for (const seed of seeds) expect(take(5, seededRandom(seed))).toEqual(take(5, seededRandom(seed)))
    expect(new Set(seeds.map(seed => seededRandom(seed)())).size).toBe(seeds.length)
    expect(seededRandom(Number.NaN)()).toBe(seededRandom(0)())
  })

  it("never start from the state of all zeros, which would stay there", () => {
    for (let seed = 0; seed < 2000; seed++) expect(seedState(seed).some(word => word !== 0)).toBe(true)
  })

  it("lie in [0, 1), even, with mean 1/2 and variance 1/12 as a uniform distribution has", () => {
    const n = 100_000
    const values = take(n, seededRandom(42))
    expect(Math.min(...values.slice(0, 1000))).toBeGreaterThanOrEqual(0)
    expect(values.every(v => v >= 0 && v < 1)).toBe(true)
    const mean = values.reduce((sum, v) => sum + v, 0) / n
    const variance = values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / n
    // Five standard errors: 1/sqrt(12 n) for the mean, 1/sqrt(180 n) for the variance.
    expect(Math.abs(mean - 0.5)).toBeLessThan(5 / Math.sqrt(12 * n))
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(5 / Math.sqrt(180 * n))
    const counts = new Array<number>(100).fill(0)
    for (const v of values) counts[Math.floor(v * 100)]!++
    const chiSquared = counts.reduce((sum, c) => sum + (c - n / 100) ** 2 / (n / 100), 0)
    // 99 degrees of freedom: the 0.01 % and 99.99 % points of the chi-squared distribution, from memory, rounded outwards.
    expect(chiSquared).toBeGreaterThan(50)
    expect(chiSquared).toBeLessThan(161)
  })
})
