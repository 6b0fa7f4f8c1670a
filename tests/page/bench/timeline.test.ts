import { describe, expect, it } from "vitest"
import { between, momentAt, timelineOf } from "../../../src/page/bench/timeline.ts"
import { record } from "../bench-fixture/recordings.ts"

const at = (...times: number[]) =>
  record(
    "cell",
    ["a.position"],
    times.map((t, k) => [t, k * 10, -k, 0]),
  )

describe("the axis of play", () => {
  it("finds the last row at or before an instant, at both ends and between", () => {
    const timeline = timelineOf(at(0.5, 1, 1.5, 4))
    expect([0, 0.5, 0.9, 1, 3.9, 4, 9].map(timeline.rowAt)).toEqual([0, 0, 0, 1, 2, 3, 3])
  })

  it("finds the same row as a search from the start, at unequal steps", () => {
    const recording = record(
      "cell",
      ["energy!"],
      Array.from({ length: 2000 }, (_, k) => [k * k * 0.01, 0]),
    )
    const timeline = timelineOf(recording)
    for (let t = 0; t < timeline.end; t += 97.3) {
      let row = 0
      while (row + 1 < recording.rows && timeline.at(row + 1) <= t) row++
      expect(timeline.rowAt(t)).toBe(row)
    }
  })

  it("puts a body between two rows on the straight line", () => {
    const recording = at(0, 1, 3)
    const moment = momentAt(timelineOf(recording), 2.5)
    expect(moment).toEqual({ row: 1, part: 0.75 })
    expect(between(recording, 1, moment)).toBe(17.5)
    expect(between(recording, 2, moment)).toBe(-1.75)
  })

  it("shows the rows themselves at recorded instants", () => {
    const recording = at(0, 0.1, 0.2, 0.30000000000000004)
    const timeline = timelineOf(recording)
    for (let row = 0; row < 4; row++)
      expect(between(recording, 1, momentAt(timeline, timeline.at(row)))).toBe(row * 10)
  })

  it.each([
    ["goes back", [0, 1, 0.5], "time goes back at row 3"],
    ["stands still", [0, 0, 0], "time stands still"],
    ["is not a number", [0, Number.NaN, 2], "the time of row 2 is not a number"],
  ])("counts rows and says so when time %s", (_, times, fault) => {
    const timeline = timelineOf(at(...times))
    expect(timeline.fault).toBe(fault)
    expect([timeline.start, timeline.end, timeline.unit]).toEqual([0, 2, "row"])
    expect(timeline.rowAt(1.4)).toBe(1)
  })

  it("takes equal times in a row, as two events at one instant may have", () => {
    const timeline = timelineOf(at(0, 1, 1, 2))
    expect(timeline.fault).toBeNull()
    expect(timeline.rowAt(1)).toBe(2)
  })
})
