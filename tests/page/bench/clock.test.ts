import { describe, expect, it } from "vitest"
import {
  advance,
  type Clock,
  changeSpeed,
  ruler,
  seek,
  speeds,
  speedText,
  stepRows,
  stepTo,
  togglePlay,
} from "../../../src/page/bench/clock.ts"
import { timelineOf } from "../../../src/page/bench/timeline.ts"
import { record } from "../bench-fixture/recordings.ts"

const timeline = timelineOf(
  record(
    "cell",
    ["a.position"],
    Array.from({ length: 5 }, (_, k) => [1 + k * 0.5, k, 0, 0]),
  ),
)
const clock: Clock = { instant: 1, playing: true, speed: 1, loop: false }

describe("the player's clock", () => {
  it("goes with real time, times its speed, from 1/32 to 8", () => {
    expect(advance(clock, timeline, 0.25).instant).toBe(1.25)
    expect(advance({ ...clock, speed: 1 / 32 }, timeline, 0.32).instant).toBeCloseTo(1.01, 12)
    expect([speeds[0], speeds.at(-1)]).toEqual([1 / 32, 8])
    expect(speeds.map(speedText)).toEqual(["1/32", "1/16", "1/8", "1/4", "1/2", "1", "2", "4", "8"])
    for (let k = 1; k < speeds.length; k++) expect(speeds[k]).toBe(2 * (speeds[k - 1] ?? 0))
  })

  it("stops at the end, and begins again from there when asked", () => {
    const end = advance(clock, timeline, 60)
    expect(end).toMatchObject({ instant: 3, playing: false })
    expect(togglePlay(end, timeline)).toMatchObject({ instant: 1, playing: true })
  })

  it("goes round when it loops", () => {
    const next = advance({ ...clock, loop: true, instant: 2.9 }, timeline, 0.3)
    expect(next.playing).toBe(true)
    expect(next.instant).toBeCloseTo(1.2, 12)
  })

  it("steps from recorded row to recorded row, and from between rows to the nearest that way", () => {
    expect(stepRows({ ...clock, instant: 1.5 }, timeline, 1)).toMatchObject({ instant: 2, playing: false })
    expect(stepRows({ ...clock, instant: 1.5 }, timeline, -1).instant).toBe(1)
    expect(stepRows({ ...clock, instant: 1.7 }, timeline, 1).instant).toBe(2)
    expect(stepRows({ ...clock, instant: 1.7 }, timeline, -1).instant).toBe(1.5)
    expect(stepRows({ ...clock, instant: 3 }, timeline, 1).instant).toBe(3)
  })

  it("steps from mark to mark and stays beyond the last", () => {
    expect(stepTo(clock, [0.5, 1, 1.4, 2], 1).instant).toBe(1.4)
    expect(stepTo({ ...clock, instant: 1.4 }, [0.5, 1, 1.4, 2], -1).instant).toBe(1)
    expect(stepTo({ ...clock, instant: 2.5 }, [2], 1).instant).toBe(2.5)
  })

  it("keeps within the recording and within its speeds", () => {
    expect(seek(clock, timeline, -4).instant).toBe(1)
    expect(seek(clock, timeline, 40).instant).toBe(3)
    expect(changeSpeed({ ...clock, speed: 8 }, 1).speed).toBe(8)
    expect(changeSpeed(clock, -1).speed).toBe(0.5)
  })

  it("is graduated in round parts, numbered ones a multiple of the fine ones", () => {
    for (const width of [320, 600, 1000]) {
      const { major, minor, step } = ruler(timeline, width)
      expect(((timeline.end - timeline.start) / step) * 58).toBeLessThanOrEqual(width)
      for (const t of major) expect(minor).toContain(t)
    }
  })
})
