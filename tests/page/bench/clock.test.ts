import { describe, expect, it } from "vitest"
import {
  advance,
  type Clock,
  changeSpeed,
  firstSpeed,
  paceOf,
  pageBy,
  ruler,
  seek,
  seekRow,
  shownInstant,
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

  it("stands on a recorded row whenever it does not play: after a press on the ruler, a page, a pause", () => {
    expect(seekRow(clock, timeline, 1.7)).toMatchObject({ instant: 1.5, playing: false })
    expect(seekRow(clock, timeline, 99).instant).toBe(3)
    expect(togglePlay({ ...clock, instant: 1.8 }, timeline)).toMatchObject({ instant: 2, playing: false })
    // a page that is shorter than a row goes on by one
    expect(pageBy({ ...clock, instant: 1.5 }, timeline, 0.1).instant).toBe(2)
    expect(pageBy({ ...clock, instant: 1.5 }, timeline, -0.1).instant).toBe(1)
  })

  it("shows the time of the row that it is at, also between rows", () => {
    expect(shownInstant({ ...clock, instant: 1.99 }, timeline)).toBe(1.5)
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

describe("the pace of play", () => {
  const lasting = (span: number) =>
    timelineOf(
      record(
        "cell",
        ["a.position"],
        [
          [0, 0, 0, 0],
          [span, 1, 0, 0],
        ],
      ),
    )

  it("is real time for what lasts from a fifth of a second to two minutes", () => {
    for (const span of [0.2, 1, 30, 120]) expect(paceOf(lasting(span))).toBe(1)
  })

  it("is a power of ten that brings a month of the Moon or a click of a latch to 3 to 30 seconds", () => {
    for (const span of [2.36e6, 4000, 0.01, 3e-6]) {
      const pace = paceOf(lasting(span))
      expect(Math.log10(pace) % 1).toBeCloseTo(0, 9)
      expect(span / pace).toBeGreaterThanOrEqual(3 - 1e-9)
      expect(span / pace).toBeLessThan(30)
    }
    expect(paceOf(lasting(2.36e6))).toBe(100_000)
  })

  it("begins at a speed at which the whole can be followed", () => {
    for (const span of [0.25, 0.9, 3, 20, 45, 119]) {
      const seconds = span / firstSpeed(lasting(span))
      expect(seconds).toBeGreaterThanOrEqual(2)
      expect(seconds).toBeLessThanOrEqual(20)
    }
    expect(firstSpeed(lasting(3))).toBe(1)
  })
})
