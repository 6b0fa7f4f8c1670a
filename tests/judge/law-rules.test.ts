import { describe, expect, it } from "vitest"
import { applyRule } from "../../src/judge/rules/index.ts"
import type { Recording } from "../../src/run/contract.ts"
import type { CheckRule } from "../../src/worksheet/contract.ts"
import { checkOf } from "./check-of.ts"
import { fall, halvings, type Method, methods, type Scene, simulate, withDrag } from "./steppers.ts"

const runsOf = (scene: Scene, method: Method = "momentum first", change?: (recording: Recording) => void) => {
  const runs = halvings.map(factor => [simulate(scene, method, factor)])
  if (change) for (const [recording] of runs) change(recording!)
  return { factors: halvings, runs }
}
type Runs = ReturnType<typeof runsOf>
const judge = (rule: CheckRule, student: Runs, reference = student) =>
  applyRule({ check: checkOf(rule), student, reference })

/** A point on a spring to the origin, pushed sideways: a central force, so its angular momentum stays. */
const central: Scene = {
  masses: [0.5],
  r: [1, 0],
  p: [0.1, 0.6],
  force: r => r.map(x => -4 * x),
  until: 2,
  dt: 0.002,
}
/** The same with a steady sideways push. */
const pushed: Scene = { ...central, force: r => [-4 * r[0]! + 0.7, -4 * r[1]!] }

const spin = (over: Partial<Extract<CheckRule, { law: "angular momentum" }>> = {}): CheckRule => ({
  kind: "law",
  law: "angular momentum",
  bodies: ["body0"],
  external: null,
  about: [0, 0, 0],
  tolerance: 1e-6,
  ...over,
})

describe("angular momentum: Δ(r − a) × p = (r − a) × F Δt", () => {
  for (const method of methods)
    it(`is met for ${method} under a central force and under a push, about any point`, () => {
      expect(judge(spin(), runsOf(central, method)).met).toBe(true)
      expect(judge(spin(), runsOf(pushed, method)).met).toBe(true)
      expect(judge(spin({ about: [0.3, -2, 0] }), runsOf(pushed, method)).met).toBe(true)
    })
  it("with momentum first holds to rounding in every step, not only in the limit", () => {
    const one = { factors: [1], runs: [[simulate(pushed, "momentum first")]] }
    expect(judge(spin({ tolerance: 1e-9 }), one).met).toBe(true)
  })
  it("is not met when the recorded force is turned by a degree", () => {
    const turned = runsOf(central, "momentum first", r => {
      const [c, s] = [Math.cos(Math.PI / 180), Math.sin(Math.PI / 180)]
      for (let i = 0; i < r.rows; i++) {
        const [x, y] = [r.data[i * r.width + 7]!, r.data[i * r.width + 8]!]
        r.data[i * r.width + 7] = c * x - s * y
        r.data[i * r.width + 8] = s * x + c * y
      }
    })
    const found = judge(spin(), turned, runsOf(central))
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("kg m²/s")
  })
  it("stays where nothing acts from outside, for each method of the two-body spring", () => {
    const isolated = spin({ bodies: ["body0", "body1"], external: [] })
    for (const method of methods) expect(judge(isolated, runsOf(pair(1), method)).met).toBe(true)
    expect(judge(isolated, runsOf(pair(0.8)), runsOf(pair(1))).met).toBe(false)
  })
})

/** Two points on a spring; the second feels `share` of the reaction. */
const pair = (share: number): Scene => ({
  masses: [0.5, 0.8],
  r: [0, 0, 1.2, 0],
  p: [0, -0.3, 0.1, 0.3],
  force: r => {
    const d = [r[2]! - r[0]!, r[3]! - r[1]!]
    const length = Math.hypot(...d)
    const pull = d.map(x => (6 * (length - 1) * x) / length)
    return [pull[0]!, pull[1]!, -share * pull[0]!, -share * pull[1]!]
  },
  until: 2,
  dt: 0.002,
})

describe("momentum of several bodies", () => {
  const isolated: CheckRule = {
    kind: "law",
    law: "momentum",
    bodies: ["body0", "body1"],
    external: [],
    tolerance: 1e-9,
  }
  it("stays where nothing acts from outside", () => {
    for (const method of methods) expect(judge(isolated, runsOf(pair(1), method)).met).toBe(true)
  })
  it("does not where the third law is forgotten, although each body's own books balance", () => {
    const found = judge(isolated, runsOf(pair(0)), runsOf(pair(1)))
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("although nothing acts from outside")
    expect(judge({ ...isolated, external: null } as CheckRule, runsOf(pair(0)), runsOf(pair(1))).met).toBe(
      true,
    )
  })
})

const energy = (over: Partial<Extract<CheckRule, { law: "energy" }>> = {}): CheckRule => ({
  kind: "law",
  law: "energy",
  bodies: ["body0"],
  energy: null,
  work: null,
  tolerance: 0.01,
  ...over,
})

/** Adds a scalar series `energy` worked out from each row of the first body. */
function withEnergy(scene: Scene, method: Method, of: (r: number[], p: number[]) => number): Runs {
  const runs = halvings.map(factor => {
    const old = simulate(scene, method, factor)
    const width = old.width + 1
    const data = new Float64Array(old.rows * width)
    for (let i = 0; i < old.rows; i++) {
      data.set(old.data.subarray(i * old.width, (i + 1) * old.width), i * width)
      const row = [...old.data.subarray(i * old.width, (i + 1) * old.width)]
      data[i * width + old.width] = of(row.slice(1, 3), row.slice(4, 6))
    }
    const series = [...old.series, { name: "energy", kind: "scalar" as const, column: old.width }]
    return [{ ...old, series, width, data }]
  })
  return { factors: halvings, runs }
}

describe("energy: E changes by the work of forces", () => {
  const drag = withDrag(20)
  it("kinetic energy: p²/2m changes by ∑ F·Δr for each method, with drag and without", () => {
    for (const method of methods) {
      expect(judge(energy(), runsOf(fall, method)).met).toBe(true)
      expect(judge(energy(), runsOf(drag, method)).met).toBe(true)
    }
  })
  it("is not met when the drag that acts is not recorded", () => {
    const hidden = runsOf(drag, "momentum first", r => {
      for (let i = 0; i < r.rows; i++) {
        r.data[i * r.width + 7] = 0
        r.data[i * r.width + 8] = -0.25 * 9.81
      }
    })
    const found = judge(energy(), hidden, runsOf(drag))
    expect(found.met).toBe(false)
    expect(found.wrong).toMatch(/less than the work .* makes it/)
  })
  const recorded = (r: number[], p: number[]): number => (p[0]! ** 2 + p[1]! ** 2) / 0.5 + 0.25 * 9.81 * r[1]!
  const kept = energy({ energy: "energy", work: [] })
  it("a recorded energy stays in free fall for each method, and does not where drag takes some", () => {
    for (const method of methods) expect(judge(kept, withEnergy(fall, method, recorded)).met).toBe(true)
    const found = judge(kept, withEnergy(drag, "momentum first", recorded))
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("less than at the start")
  })
  it("with drag it changes by the work of the drag alone", () => {
    const alone = (method: Method): Runs => {
      const runs = withEnergy(drag, method, recorded)
      for (const [one] of runs.runs)
        for (let i = 0; i < one!.rows; i++) one!.data[i * one!.width + 8]! += 0.25 * 9.81
      return runs
    }
    const rule = energy({ energy: "energy", work: ["body0.forces.net"] })
    for (const method of methods) expect(judge(rule, alone(method)).met).toBe(true)
    expect(judge(rule, withEnergy(drag, "momentum first", recorded)).met).toBe(false)
  })
  it("explicit Euler on a spring gains energy at its step and not in the limit: let through; a wrong spring energy is not", () => {
    const spring = (r: number[], p: number[], k = 4): number =>
      p[0]! ** 2 + p[1]! ** 2 + (k / 2) * (r[0]! ** 2 + r[1]! ** 2)
    const long: Scene = { ...central, until: 4, dt: 0.004 }
    const atStep = energy({ energy: "energy", work: [], tolerance: 0.002 })
    const euler = withEnergy(long, "explicit Euler", spring)
    expect(judge(atStep, { factors: [1], runs: euler.runs.slice(0, 1) }).met).toBe(false)
    expect(judge(atStep, euler).met).toBe(true)
    expect(
      judge(
        atStep,
        withEnergy(long, "explicit Euler", (r, p) => spring(r, p, 4.5)),
      ).met,
    ).toBe(false)
  })
  it("is not met by a body on which nothing ever acts", () => {
    const idle = { ...fall, p: [0, 0], force: () => [0, 0] }
    expect(judge(energy(), runsOf(idle), runsOf(fall)).met).toBe(false)
  })
})
