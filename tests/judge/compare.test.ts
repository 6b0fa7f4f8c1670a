import { describe, expect, it } from "vitest"
import { compareLadders } from "../../src/judge/compare.ts"
import { leastTolerance } from "../../src/judge/distances.ts"
import { extentOf } from "../../src/judge/extent.ts"
import type { Ladder } from "../../src/judge/limit.ts"
import { makeTrack, trackOf } from "../../src/judge/track.ts"
import { fall, halvings, ladder, type Scene, simulate } from "./steppers.ts"

const path = "body0.position"
const extentFor = (reference: Ladder) => extentOf(reference.tracks[0]!, path)
const compare = (student: Ladder, reference: Ladder, tolerance: number | null = null) =>
  compareLadders(student, reference, extentFor(reference), tolerance)

describe("a motion that ends at another time", () => {
  const reference = ladder(fall, "momentum first")

  it("is refused when it stops early, and the end is named", () => {
    const found = compare(ladder({ ...fall, until: 0.6 }, "momentum first"), reference)
    expect(found.outcome).toBe("does not reach")
    expect(found.departsAt).toBeCloseTo(0.6, 3)
  })

  it("is accepted when it goes on for longer", () => {
    expect(compare(ladder({ ...fall, until: 2 }, "momentum first"), reference).outcome).toBe("same limit")
  })

  it("is accepted when it ends some steps sooner, as another stepper may", () => {
    expect(compare(ladder({ ...fall, until: 1.19 }, "explicit Euler"), reference).outcome).toBe("same limit")
  })
})

describe("a loop that counts steps covers less time when the step is shortened", () => {
  const counted = (scene: Scene): Ladder => ({
    factors: halvings,
    tracks: halvings.map(factor => trackOf(simulate(scene, "momentum first", factor, 1200), path)!),
  })

  it("is compared over the common time, and the result says so", () => {
    const found = compare(counted(fall), ladder(fall, "momentum first"))
    expect(found.outcome).toBe("same limit")
    expect(found.countsSteps).toBe(true)
  })

  it("is refused for a fault that only shows later", () => {
    const late: Scene = { ...fall, force: (_, __, t) => [t > 0.8 ? 0.5 : 0, -0.25 * 9.81] }
    const found = compare(counted(late), counted(fall))
    expect(found.outcome).toBe("apart")
    expect(found.departsAt).toBeGreaterThan(0.8)
  })
})

describe("the first instant of departure", () => {
  it("is where the student's limit leaves the band", () => {
    const bent: Scene = { ...fall, force: (_, __, t) => [t > 0.5 ? 2 : 0, -0.25 * 9.81] }
    const found = compare(ladder(bent, "momentum first"), ladder(fall, "momentum first"))
    // 2 N on 0.25 kg: 4 τ² m after τ seconds; the x component is measured against its own 2.4 m.
    const expected = 0.5 + Math.sqrt((leastTolerance * 2.4) / 4)
    expect(found.departsAt).toBeCloseTo(expected, 1)
    expect(found.departsAt).toBeGreaterThan(0.5)
  })

  it("counts a small component against its own size, not the long flight beside it", () => {
    const flat: Scene = { ...fall, r: [0, 0.1], p: [25, 0], until: 0.14 }
    const heavy: Scene = { ...flat, force: () => [0, -0.25 * 10.3] }
    expect(compare(ladder(heavy, "momentum first"), ladder(flat, "momentum first")).outcome).toBe("apart")
  })
})

describe("a step written as a number", () => {
  it("matches at the given step and is told so when it does not at shorter ones", () => {
    const literal: Ladder = {
      factors: halvings,
      tracks: halvings.map(factor => {
        // the momentum takes 1 ms of force in each step, however long the step is
        const scene: Scene = { ...fall, force: () => [0, (-0.25 * 9.81) / factor] }
        return trackOf(simulate(scene, "momentum first", factor), path)!
      }),
    }
    const found = compare(literal, ladder(fall, "momentum first"))
    expect(found.outcome).toBe("apart")
    expect(found.onlyAsGiven).toBe(true)
  })
})

describe("tolerances", () => {
  const wrong: Scene = { ...fall, force: () => [0, -0.25 * 9.81 * 1.02] }
  const reference = ladder(fall, "momentum first")

  it("come from the reference's own refinement, and are never below the least", () => {
    expect(compare(ladder(wrong, "momentum first"), reference).outcome).toBe("apart")
    expect(compare(reference, reference).tolerance).toBe(leastTolerance)
  })

  it("are the author's where the check sets them, wider or narrower", () => {
    expect(compare(ladder(wrong, "momentum first"), reference, 0.05).outcome).toBe("same limit")
    const slightly: Scene = { ...fall, force: () => [0, -0.25 * 9.81 * 1.001] }
    expect(compare(ladder(slightly, "momentum first"), reference).outcome).toBe("same limit")
    expect(compare(ladder(slightly, "momentum first"), reference, 0.0005).outcome).toBe("apart")
  })

  it("are for closeness where there is no time step to shorten", () => {
    const once: Ladder = { factors: [1], tracks: reference.tracks.slice(0, 1) }
    const found = compare({ factors: [1], tracks: ladder(fall, "explicit Euler").tracks.slice(0, 1) }, once)
    expect(found.basis).toBe("closeness")
    expect(found.outcome).toBe("same limit")
    expect(
      compare({ factors: [1], tracks: ladder(wrong, "momentum first").tracks.slice(0, 1) }, once).outcome,
    ).toBe("apart")
  })
})

describe("extents", () => {
  const still = makeTrack(Float64Array.of(0, 1, 2), Float64Array.of(5, 0, 0, 5, 0, 0, 5 + 1e-15, 0, 0), 3)

  it("of a body at rest are taken from what moves beside it", () => {
    expect(extentOf(still, "lamp.position", 2).size).toBeCloseTo(2e-3, 12)
    expect(extentOf(still, "lamp.position").size).toBeGreaterThan(0)
  })

  it("of a position do not depend on where the origin is; of a momentum they count from zero", () => {
    const track = (shift: number) => makeTrack(Float64Array.of(0, 1), Float64Array.of(shift, shift + 2), 1)
    expect(extentOf(track(1000), "key.position.x").size).toBe(2)
    expect(extentOf(track(1000), "key.momentum.x").size).toBe(1002)
  })
})

describe("a motion too sensitive to be followed", () => {
  /** A pencil on its tip: e^(25 t) of whatever the step leaves out. */
  const tip: Scene = {
    masses: [1],
    r: [1e-3, 0],
    p: [0, 0],
    force: r => [625 * Math.sin(r[0]! * 3), 0],
    until: 3,
    dt: 0.02,
  }

  it("is judged up to the horizon of the reference, and no further", () => {
    const found = compare(ladder(tip, "velocity Verlet"), ladder(tip, "momentum first"))
    expect(found.horizon).not.toBeNull()
    expect(found.until).toBeLessThan(3)
  })
})
