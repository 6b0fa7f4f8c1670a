import { describe, expect, it } from "vitest"
import { applyRule } from "../../src/judge/rules/index.ts"
import type { CheckRule, Happening } from "../../src/worksheet/contract.ts"
import { checkOf } from "./check-of.ts"
import { bounce, fall, halvings, type Method, methods, type Scene, simulate, withDrag } from "./steppers.ts"

const runsOf = (scene: Scene, method: Method = "momentum first") => ({
  factors: halvings,
  runs: halvings.map(factor => [simulate(scene, method, factor)]),
})
type Runs = ReturnType<typeof runsOf>
const judge = (rule: CheckRule, student: Runs, reference = student) =>
  applyRule({ check: checkOf(rule), student, reference })

const happens = (
  event: Happening,
  of: string,
  at: number | null,
  within: number | null = null,
  count = 1,
): CheckRule => ({ kind: "happens", event, of, at, within, count })

/** The spring floor alone, so that its force is zero in the air. */
const floorOnly = (scene: Scene): Runs => {
  const runs = runsOf(scene)
  for (const [one] of runs.runs)
    for (let i = 0; i < one!.rows; i++) {
      const at = i * one!.width + 8
      one!.data[at]! += 0.2 * 9.80665
      if (Math.abs(one!.data[at]!) < 1e-12) one!.data[at] = 0
    }
  return runs
}
const force = "body0.forces.net"
/** A fall from 0.5 m takes √(2h/g); on the spring it stays for (π + 2 arctan(v₀ω/g)⁻¹…): worked out below. */
const arrival = Math.sqrt((2 * 0.5) / 9.80665)
/** Undamped contact: from y = 0 with speed v to y = 0 again, ω = √(k/m): t = (2/ω)(π − arctan(v ω / g)). */
const stay = (stiffness: number): number => {
  const omega = Math.sqrt(stiffness / 0.2)
  const v = Math.sqrt(2 * 9.80665 * 0.5)
  return (2 / omega) * (Math.PI - Math.atan((v * omega) / 9.80665))
}

describe("happens: a contact begins and ends", () => {
  it("at √(2h/g), and for half an oscillation about the squeezed length", () => {
    const runs = floorOnly(bounce())
    expect(judge(happens("contact begins", force, arrival, 0.0002), runs).met).toBe(true)
    expect(judge(happens("contact ends", force, arrival + stay(2000), 0.0005), runs).met).toBe(true)
    expect(judge(happens("contact begins", force, arrival * 1.02, 0.002), runs).met).toBe(false)
  })
  it("of a floor of half the stiffness it ends too late, and it is said by how much", () => {
    const found = judge(
      happens("contact ends", force, null, 0.002),
      floorOnly(bounce(1000)),
      floorOnly(bounce()),
    )
    expect(found.met).toBe(false)
    expect(found.wrong).toMatch(/too late/)
  })
  it("the second one is another", () => {
    const again = arrival + stay(2000) + 2 * arrival
    expect(judge(happens("contact begins", force, again, 0.002, 2), floorOnly(bounce())).met).toBe(true)
    expect(judge(happens("contact begins", force, arrival, 0.002, 2), floorOnly(bounce())).met).toBe(false)
  })
  it("is not met by a motion that meets nothing", () => {
    const through: Scene = { ...bounce(), force: () => [0, -0.2 * 9.80665] }
    const found = judge(happens("contact begins", force, null), floorOnly(through), floorOnly(bounce()))
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("never begins")
  })
})

describe("happens: a component turns round", () => {
  const thrown: Scene = { ...fall, p: [2, 1.5] }
  const top = 1.5 / 0.25 / 9.81
  it("at v/g at the top of a throw, for each method", () => {
    for (const method of methods)
      expect(judge(happens("turning", "body0.position.y", top, 0.0005), runsOf(thrown, method)).met).toBe(
        true,
      )
  })
  it("not there with drag", () => {
    const dragged: Scene = { ...withDrag(20), p: [2, 1.5] }
    const found = judge(happens("turning", "body0.position.y", top, 0.005), runsOf(dragged), runsOf(thrown))
    expect(found.met).toBe(false)
    expect(found.wrong).toMatch(/too early/)
  })
  it("never, where it only falls", () => {
    expect(judge(happens("turning", "body0.position.y", top), runsOf(fall), runsOf(thrown)).wrong).toContain(
      "never turns",
    )
  })
})

describe("happens: a body comes to rest", () => {
  const sliding = (push: number): Scene => ({
    masses: [1],
    r: [0, 0],
    p: [2, 0],
    force: (_, p) => [-Math.sign(p[0]!) * Math.min(push, Math.abs(p[0]!) / 0.001), 0],
    until: 1,
    dt: 0.001,
  })
  const atOneStep = (scene: Scene) => ({ factors: [1], runs: [[simulate(scene, "momentum first")]] })
  it("after p/F", () => {
    const rule = happens("rest", "body0", 2 / 3, 0.003)
    expect(judge(rule, atOneStep(sliding(3))).met).toBe(true)
    expect(judge(rule, atOneStep(sliding(2.8)), atOneStep(sliding(3))).met).toBe(false)
  })
  it("never, where it goes on", () => {
    const found = judge(happens("rest", "body0", 2 / 3, 0.003), atOneStep(sliding(1)), atOneStep(sliding(3)))
    expect(found.wrong).toContain("never comes to rest")
  })
})

describe("converges: the error goes away with a power of the time step", () => {
  const spring: Scene = {
    masses: [0.5],
    r: [1, 0],
    p: [0, 0.6],
    force: r => r.map(x => -4 * x),
    until: 1,
    dt: 0.01,
  }
  const order = (n: number): CheckRule => ({ kind: "converges", series: "body0.position", order: n })
  it("first order for momentum first and explicit Euler, which second order refuses", () => {
    for (const method of ["momentum first", "explicit Euler"] as const) {
      expect(judge(order(1), runsOf(spring, method), runsOf(spring)).met).toBe(true)
      const found = judge(order(2), runsOf(spring, method), runsOf(spring))
      expect(found.met).toBe(false)
      expect(found.wrong).toContain("of order 2 leaves 0.25")
    }
  })
  it("second order for velocity Verlet and the midpoint", () => {
    for (const method of ["velocity Verlet", "midpoint"] as const)
      expect(judge(order(2), runsOf(spring, method), runsOf(spring)).met).toBe(true)
  })
  it("is not met by another law of motion, at whatever order it goes to its own limit", () => {
    const stiffer: Scene = { ...spring, force: r => r.map(x => -4.4 * x) }
    expect(judge(order(1), runsOf(stiffer, "midpoint"), runsOf(spring)).met).toBe(false)
  })
  it("asks for a third time step where there are two", () => {
    const { factors, runs } = runsOf(spring)
    const two = { factors: factors.slice(0, 2), runs: runs.slice(0, 2) }
    expect(judge(order(1), two, runsOf(spring)).undecided).toBe(true)
  })
})

describe("stepper: which momentum moves the position", () => {
  const first: CheckRule = { kind: "stepper", order: "momentum first", body: "body0" }
  const old: CheckRule = { ...first, order: "position first" }
  const scenes = [fall, bounce(), withDrag(5)]
  it("momentum first is met by it alone", () => {
    for (const scene of scenes) {
      expect(judge(first, runsOf(scene)).met).toBe(true)
      for (const method of ["explicit Euler", "velocity Verlet", "midpoint"] as const)
        expect(judge(first, runsOf(scene, method), runsOf(scene)).met).toBe(false)
    }
  })
  it("position first is met by explicit Euler alone, and it is said which momentum was taken", () => {
    for (const scene of scenes) expect(judge(old, runsOf(scene, "explicit Euler")).met).toBe(true)
    expect(judge(old, runsOf(fall)).wrong).toContain("with the momentum after the step")
    expect(judge(first, runsOf(fall, "explicit Euler")).wrong).toContain("momentum from before the step")
  })
  it("is not met by a body whose momentum never changes", () => {
    expect(judge(first, runsOf({ ...fall, force: () => [0, 0] }), runsOf(fall)).met).toBe(false)
  })
})
