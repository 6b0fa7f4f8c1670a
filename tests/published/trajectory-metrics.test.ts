import { describe, expect, it } from "vitest"
import { compareLadders } from "../../src/judge/compare.ts"
import { extentOf } from "../../src/judge/extent.ts"
import type { Ladder } from "../../src/judge/limit.ts"
import { spragueGeers } from "../../src/judge/metrics.ts"
import { makeTrack, sample } from "../../src/judge/track.ts"

/** Case T01. Formula: L. E. Schwer, Engineering with Computers 23 (2007) 295, doi:10.1007/s00366-007-0070-1. */
describe("metric of Sprague and Geers for sine waves over one full period", () => {
  const samples = 4000
  const wave = (scale: number, phase: number): Float64Array =>
    Float64Array.from({ length: samples }, (_, i) => scale * Math.sin((2 * Math.PI * i) / samples - phase))
  const expected = [
    { scale: 1.1, phase: 0, M: 0.1, P: 0, C: 0.1 },
    { scale: 1, phase: 0.2, M: 0, P: 0.063661977, C: 0.063661977 },
    { scale: 1.1, phase: 0.2, M: 0.1, P: 0.063661977, C: 0.118544706 },
    { scale: 0.9, phase: Math.PI / 2, M: -0.1, P: 0.5, C: 0.509901951 },
  ]
  for (const { scale, phase, M, P, C } of expected) {
    it(`scale ${scale}, phase ${phase.toFixed(3)}: M ${M}, P ${P}, C ${C}`, () => {
      const found = spragueGeers(wave(1, 0), wave(scale, phase))
      expect(found.magnitude).toBeCloseTo(M, 9)
      // arccos near 1 turns rounding of 1e-16 into 1e-8, which is what "clamp the argument" leaves
      expect(found.phase).toBeCloseTo(P, P === 0 ? 7 : 9)
      expect(found.combined).toBeCloseTo(C, P === 0 ? 7 : 9)
    })
  }
  it("stays a number for equal shapes, where rounding takes the cosine past 1", () => {
    const a = wave(1, 0)
    expect(
      spragueGeers(
        a,
        a.map(v => v * 1.1),
      ).phase,
    ).not.toBeNaN()
  })
})

describe("allowance of half a step", () => {
  const v = 6
  const fall = (h: number, shift: number) => {
    const n = Math.round(1 / h)
    const times = Float64Array.from({ length: n }, (_, i) => (i + 1) * h)
    return makeTrack(
      times,
      times.map(t => v * t - 4.905 * t * (t + shift * h)),
      1,
    )
  }
  const ladder = (shift: number): Ladder => ({
    factors: [1, 0.5, 0.25],
    tracks: [0.01, 0.005, 0.0025].map(h => fall(h, shift)),
  })

  it("accepts the semi-implicit rule, a shift by half a step, against the true motion", () => {
    const reference = ladder(0)
    const extent = extentOf(reference.tracks[0]!, "key.position.y")
    const found = compareLadders(ladder(1), reference, extent)
    expect(found.outcome).toBe("same limit")
    expect(found.distanceAsGiven).toBeGreaterThan(0.01)
    expect(found.distance).toBeLessThan(1e-9)
  })

  it("bounds the error of straight lines between rows by h² max|a| / 8", () => {
    const h = 0.1
    const a = 9.81
    const times = Float64Array.from({ length: 11 }, (_, i) => i * h)
    const track = makeTrack(
      times,
      times.map(t => 0.5 * a * t * t),
      1,
    )
    track.corners.fill(1)
    const out = new Float64Array(1)
    let worst = 0
    for (let t = 0; t <= 1; t += 0.001) {
      sample(track, t, out)
      worst = Math.max(worst, Math.abs(out[0]! - 0.5 * a * t * t))
    }
    expect(worst).toBeLessThanOrEqual((h * h * a) / 8 + 1e-12)
    expect(worst).toBeGreaterThan(0.99 * ((h * h * a) / 8))
  })
})
