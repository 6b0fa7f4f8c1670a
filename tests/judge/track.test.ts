import { describe, expect, it } from "vitest"
import { makeTrack, sample, trackOf } from "../../src/judge/track.ts"

const curve = (h: number, f: (t: number) => number) => {
  const times = Float64Array.from({ length: Math.round(2 / h) + 1 }, (_, i) => i * h)
  return makeTrack(times, times.map(f), 1)
}

/** Largest error away from the ends, where slopes are one-sided. */
function worst(h: number, f: (t: number) => number): number {
  const track = curve(h, f)
  const out = new Float64Array(1)
  let most = 0
  for (let t = 0.5; t < 1.5; t += 0.0037) {
    sample(track, t, out)
    most = Math.max(most, Math.abs(out[0]! - f(t)))
  }
  return most
}

describe("interpolation between rows", () => {
  it("is of order 3 for a smooth curve with even rows", () => {
    const slope = Math.log2(worst(0.1, Math.sin) / worst(0.05, Math.sin))
    expect(slope).toBeGreaterThan(2.5)
    expect(slope).toBeLessThan(3.5)
  })

  it("does not overshoot beside a corner", () => {
    const corner = (t: number): number => Math.max(0, t - 0.98)
    const track = curve(0.02, corner)
    const out = new Float64Array(1)
    for (let t = 0.9; t < 1.1; t += 0.001) {
      sample(track, t, out)
      expect(out[0]).toBeGreaterThanOrEqual(-1e-12)
    }
  })

  it("goes straight between rows that were thinned out unevenly", () => {
    const track = makeTrack(Float64Array.of(0, 0.9, 1, 1.01), Float64Array.of(0, 0, 1, 1.3), 1)
    const out = new Float64Array(1)
    sample(track, 0.5, out)
    expect(out[0]).toBe(0)
  })

  it("takes the last of several rows at one instant", () => {
    const recording = {
      cell: "c",
      series: [{ name: "x", kind: "scalar" as const, column: 1 }],
      rows: 4,
      width: 2,
      data: Float64Array.of(0, 1, 1, 2, 1, 3, 2, 4),
    }
    const track = trackOf(recording, "x")!
    expect([...track.times]).toEqual([0, 1, 2])
    expect([...track.values]).toEqual([1, 3, 4])
  })

  it("reads a component of a vector by its path", () => {
    const recording = {
      cell: "c",
      series: [{ name: "key.position", kind: "vector" as const, column: 1 }],
      rows: 1,
      width: 4,
      data: Float64Array.of(0, 1, 2, 3),
    }
    expect(trackOf(recording, "key.position.y")!.values[0]).toBe(2)
    expect(trackOf(recording, "key.position")!.dim).toBe(3)
    expect(trackOf(recording, "key.momentum")).toBeNull()
  })
})
