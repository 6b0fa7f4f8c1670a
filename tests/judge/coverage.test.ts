import { describe, expect, it } from "vitest"
import { lackOf, rowStep, scarcity } from "../../src/judge/coverage.ts"
import type { Ladder } from "../../src/judge/limit.ts"
import { makeTrack, type Track } from "../../src/judge/track.ts"
import type { Recording } from "../../src/run/contract.ts"

const line = (from: number, to: number, rows: number): Track => {
  const times = Float64Array.from({ length: rows }, (_, i) => from + ((to - from) * i) / (rows - 1))
  return makeTrack(times, Float64Array.from(times), 1)
}
const ladder = (...tracks: Track[]): Ladder => ({
  factors: [1, 1 / 2, 1 / 4].slice(0, tracks.length),
  tracks,
})
const reference = ladder(line(0, 10, 401), line(0, 10, 401), line(0, 10, 401))

describe("where a recording does not reach over the reference's time", () => {
  it("is nowhere for one that does, or goes on for longer", () => {
    expect(lackOf(ladder(line(0, 10, 101), line(0, 10, 201)), reference)).toBeNull()
    expect(lackOf(ladder(line(0, 12, 101)), reference)).toBeNull()
  })

  it("is its end or its start, at whichever time step it is", () => {
    expect(lackOf(ladder(line(0, 8, 101)), reference)).toEqual({ kind: "ends early", at: 8, shorter: false })
    expect(lackOf(ladder(line(0, 10, 101), line(0, 9, 201), line(0, 10, 401)), reference)).toEqual({
      kind: "ends early",
      at: 9,
      shorter: true,
    })
    expect(lackOf(ladder(line(0, 10, 101), line(1, 10, 201)), reference)).toEqual({
      kind: "begins late",
      at: 1,
      shorter: true,
    })
  })

  it("is nowhere for a loop that counts steps, which reaches less far the shorter they are", () => {
    expect(lackOf(ladder(line(0, 10, 101), line(0, 5, 101), line(0, 2.5, 101)), reference)).toBeNull()
  })

  it("is not hidden by rows that are far apart, nor by an end that the program moves about", () => {
    expect(lackOf(ladder(line(0, 8, 3), line(0, 8, 3)), reference)?.kind).toBe("ends early")
    expect(lackOf(ladder(line(0, 0.1, 101), line(0, 10, 201)), reference)?.at).toBe(0.1)
  })
})

describe("how far apart rows count as", () => {
  it("is what they are, up to four times the reference's", () => {
    expect(rowStep(line(0, 10, 201), line(0, 10, 401))).toBeCloseTo(0.05, 12)
    expect(rowStep(line(0, 10, 4), line(0, 10, 401))).toBeCloseTo(0.1, 12)
    expect(rowStep(line(0, 10, 1001), line(0, 10, 401))).toBeCloseTo(0.025, 12)
  })
})

describe("next to nothing", () => {
  const recorded = (to: number, rows: number): Recording => ({
    cell: "c",
    series: [{ name: "x", kind: "scalar", column: 1 }],
    rows,
    width: 2,
    data: Float64Array.from({ length: 2 * rows }, (_, i) =>
      i % 2 === 0 ? (to * (i / 2)) / Math.max(1, rows - 1) : 0,
    ),
  })
  const runs = (...recordings: Recording[]) => ({
    factors: [1, 1 / 2, 1 / 4].slice(0, recordings.length),
    runs: recordings.map(one => [one]),
  })
  const whole = runs(recorded(10, 401))

  it("is less than a fifth of the time, or rows further apart than a twentieth of it", () => {
    expect(scarcity(runs(recorded(2.1, 50)), whole, "c")).toBeNull()
    expect(scarcity(runs(recorded(1.9, 50)), whole, "c")).toMatchObject({ lasts: 1.9, sparse: false })
    expect(scarcity(runs(recorded(10, 22)), whole, "c")).toBeNull()
    expect(scarcity(runs(recorded(10, 20)), whole, "c")).toMatchObject({ rows: 20, sparse: true })
  })

  it("is looked for at each time step; a loop that counts steps may cover its part", () => {
    expect(scarcity(runs(recorded(10, 101), recorded(5, 101), recorded(2.5, 101)), whole, "c")).toBeNull()
    expect(scarcity(runs(recorded(10, 101), recorded(0.1, 101)), whole, "c")).toMatchObject({ shorter: true })
  })

  it("is not asked beside a reference whose own rows are as few", () => {
    expect(scarcity(runs(recorded(10, 6)), runs(recorded(10, 6)), "c")).toBeNull()
  })
})
