import { describe, expect, it } from "vitest"
import { strobeOf, trailOf } from "../../../src/page/bench/strobe.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import { timelineOf } from "../../../src/page/bench/timeline.ts"
import type { Recording } from "../../../src/run/contract.ts"
import { bounce, projectile, record, slide } from "../bench-fixture/recordings.ts"

const events = (recording: Recording) => studyOf(recording).events

describe("events found in a recording", () => {
  it("a thrown weight turns once, at v sin(angle)/g less the half step that the stepper is known to lose", () => {
    const dt = 0.001
    const turns = events(projectile("cell", 9, dt)).filter(e => e.kind === "turns")
    expect(turns).toHaveLength(1)
    expect(turns[0]).toMatchObject({ axis: "y", extreme: "greatest", body: "weight" })
    // closed form: t = v sin(angle) / g with v = 9 m/s, sin = 0.8, g = 9.81 N/kg
    expect(turns[0]?.instant).toBeGreaterThan((9 * 0.8) / 9.81 - 2 * dt)
    expect(turns[0]?.instant).toBeLessThan((9 * 0.8) / 9.81 + 2 * dt)
  })

  it("a contact begins where the recorded force leaves zero and ends where it is zero again", () => {
    const recording = bounce("cell")
    const found = events(recording).filter(e => e.kind === "begins" || e.kind === "ends")
    expect(found.map(e => e.kind)).toEqual(["begins", "ends", "begins", "ends", "begins", "ends"])
    const column = 11
    for (const event of found) {
      const now = recording.data[event.row * recording.width + column]
      const before = recording.data[(event.row - 1) * recording.width + column]
      expect(event.kind === "begins").toBe(now !== 0 && before === 0)
    }
  })

  it("the lowest point lies within its contact", () => {
    const found = events(bounce("cell"))
    const [begins] = found.filter(e => e.kind === "begins")
    const [ends] = found.filter(e => e.kind === "ends")
    const [lowest] = found.filter(e => e.kind === "turns" && e.extreme === "least")
    expect(lowest?.instant).toBeGreaterThan(begins?.instant ?? Number.NaN)
    expect(lowest?.instant).toBeLessThan(ends?.instant ?? Number.NaN)
  })

  it("a sliding crate rests from v/(mu g) on, to one step", () => {
    const rest = events(slide("cell", 3, 0.002)).find(e => e.kind === "rests")
    expect(Math.abs((rest?.instant ?? 0) - 3 / (0.35 * 9.81))).toBeLessThan(0.003)
  })

  it("a body that never moves does not come to rest, and noise is no turning point", () => {
    const still = record(
      "cell",
      ["a.position"],
      Array.from({ length: 50 }, (_, k) => [k, 1, 1, 0]),
    )
    expect(events(still)).toEqual([])
    const noisy = record(
      "cell",
      ["a.position"],
      Array.from({ length: 500 }, (_, k) => [k, k + Math.sin(k * 2), 0, 0]),
    )
    expect(events(noisy)).toEqual([])
  })

  it("a force that is only rounding beside the others neither begins nor ends", () => {
    const pulled = (stick: number) =>
      record(
        "cell",
        ["a.position", "a.forces.weight", "a.forces.stick"],
        Array.from({ length: 20 }, (_, k) => [k, k, 0, 0, 0, -8, 0, 0, k > 4 && k < 9 ? stick : 0, 0]),
      )
    expect(events(pulled(2.5e-12))).toEqual([])
    expect(events(pulled(1e-6)).map(e => `${e.kind} ${e.row}`)).toEqual(["begins 5", "ends 9"])
  })

  it("are found again elsewhere when the recording is changed", () => {
    const recording = projectile("cell")
    const data = recording.data.slice()
    for (let row = 60; row < recording.rows; row++) data[row * recording.width + 2] = 0.1
    const [before] = events(recording).filter(e => e.kind === "turns")
    const [after] = events({ ...recording, data }).filter(e => e.kind === "turns")
    expect(before?.row).toBeGreaterThan(60)
    expect(after?.row).toBe(59)
  })
})

describe("strobe images", () => {
  it("stand at equal round intervals from the start, at most so many", () => {
    for (const rows of [2, 17, 400, 5003]) {
      const recording = record(
        "cell",
        ["a.position"],
        Array.from({ length: rows }, (_, k) => [0.2 + k * 0.003, k, 0, 0]),
      )
      const timeline = timelineOf(recording)
      const { instants, interval } = strobeOf(timeline, 14)
      expect(instants.length).toBeLessThanOrEqual(14)
      expect(instants.length).toBeGreaterThan(1)
      expect(instants[0]).toBe(0.2)
      for (let k = 1; k < instants.length; k++)
        expect((instants[k] ?? 0) - (instants[k - 1] ?? 0)).toBeCloseTo(interval, 9)
      expect(instants.at(-1)).toBeLessThanOrEqual(timeline.end + 1e-9)
    }
  })

  it("have a whole number of trail dots between them", () => {
    const timeline = timelineOf(projectile("cell"))
    const strobe = strobeOf(timeline)
    const dots = trailOf(strobe, 5, timeline)
    for (const [k, t] of strobe.instants.entries()) expect(dots[k * 5]).toBeCloseTo(t, 9)
  })
})
