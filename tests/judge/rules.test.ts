import { describe, expect, it } from "vitest"
import { applyRule } from "../../src/judge/rules/index.ts"
import type { Recording } from "../../src/run/contract.ts"
import type { Check, CheckRule } from "../../src/worksheet/contract.ts"
import { bounce, fall, halvings, type Method, methods, type Scene, simulate } from "./steppers.ts"

const check = (rule: CheckRule): Check => ({
  name: "c",
  cell: "cell",
  rule,
  points: 1,
  says: "",
  hint: "",
  slips: {},
  draws: 0,
})
const runsOf = (scene: Scene, method: Method = "momentum first") => ({
  factors: halvings,
  runs: halvings.map(factor => [simulate(scene, method, factor)]),
})
const judge = (rule: CheckRule, student: ReturnType<typeof runsOf>, reference = student) =>
  applyRule({ check: check(rule), student, reference })

/** The scene with another force in the recording than the one that acted. */
function misrecorded(scene: Scene, change: (recording: Recording) => void) {
  const runs = runsOf(scene)
  for (const [recording] of runs.runs) change(recording!)
  return runs
}

describe("momentum law: dp = F Δt in every step, an identity at any step (CHECKS L01)", () => {
  const law: CheckRule = { kind: "law", law: "momentum", bodies: ["body0"], external: null, tolerance: 1e-9 }
  for (const method of methods) {
    it(`balances for ${method} in free fall and in contact`, () => {
      expect(judge(law, runsOf(fall, method)).met).toBe(true)
      expect(judge(law, runsOf(bounce(), method)).met).toBe(true)
    })
  }
  it("does not balance when a force is left out of the books", () => {
    const runs = misrecorded(fall, r => {
      for (let i = 0; i < r.rows; i++) r.data[i * r.width + 8]! *= 0.99
    })
    const found = judge(law, runs, runsOf(fall))
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("kg m/s")
  })
  it("is not kept by a body on which nothing ever acts", () => {
    const idle = runsOf({ ...fall, p: [0, 0], force: () => [0, 0] })
    expect(judge(law, idle, runsOf(fall)).met).toBe(false)
  })
})

describe("stays: a component never leaves its band, at the step as given", () => {
  const above: CheckRule = {
    kind: "stays",
    series: "body0.forces.net.y",
    above: -0.2 * 9.80665 - 1e-9,
    below: null,
  }
  it("is met by a floor that only pushes", () => expect(judge(above, runsOf(bounce())).met).toBe(true))
  it("is not met by a floor that pulls, and the instant is named", () => {
    const pulls: Scene = { ...bounce(), force: r => [0, -0.2 * 9.80665 - 20 * r[1]!] }
    const found = judge(above, runsOf(pulls), runsOf(bounce()))
    expect(found.met).toBe(false)
    expect(found.departsAt).toBeGreaterThan(0)
  })
  it("is not met where nothing happens", () => {
    const idle: Scene = { ...bounce(), force: () => [0, 0] }
    expect(judge(above, runsOf(idle), runsOf(bounce())).met).toBe(false)
  })
})

describe("rests: from an instant on the momentum is zero", () => {
  const rest: CheckRule = { kind: "rests", body: "body0", from: 0.9 }
  const sliding = (limit: boolean): Scene => ({
    masses: [1],
    r: [0, 0],
    p: [2, 0],
    force: (_, p) => [
      limit ? -Math.sign(p[0]!) * Math.min(3, Math.abs(p[0]!) / 0.001) : -3 * Math.sign(p[0]!),
      0,
    ],
    until: 1,
    dt: 0.001,
  })
  const atOneStep = (scene: Scene) => ({ factors: [1], runs: [[simulate(scene, "momentum first")]] })
  it("is met by friction that uses up the motion and stops", () => {
    expect(judge(rest, atOneStep(sliding(true))).met).toBe(true)
  })
  it("is not met by friction that trembles about zero", () => {
    expect(judge(rest, atOneStep(sliding(false)), atOneStep(sliding(true))).met).toBe(false)
  })
  it("is not met by a body that never moved", () => {
    const idle: Scene = { ...sliding(true), p: [0, 0] }
    expect(judge(rest, atOneStep(idle), atOneStep(sliding(true))).met).toBe(false)
  })
  it("is not met when the recording ends while the body still moves", () => {
    expect(judge(rest, atOneStep({ ...sliding(true), until: 0.3 }), atOneStep(sliding(true))).met).toBe(false)
  })
})

describe("value: a component at an instant, in the limit of a short step", () => {
  const at = (value: number | null): CheckRule => ({
    kind: "value",
    series: "body0.position.y",
    at: 1,
    value,
    tolerance: 1e-3,
  })
  it("accepts any stepper for the reference's own value", () => {
    for (const method of methods) expect(judge(at(null), runsOf(fall, method), runsOf(fall)).met).toBe(true)
  })
  it("agrees with h − g t²/2, which the stepped motion itself misses by g t Δt/2", () => {
    expect(judge(at(8 - 0.5 * 9.81), runsOf(fall)).met).toBe(true)
    expect(judge(at(8 - 0.5 * 9.81 * 1.02), runsOf(fall)).met).toBe(false)
  })
  it("says when the motion ends too soon", () => {
    const found = judge(at(null), runsOf({ ...fall, until: 0.5 }), runsOf(fall))
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("ends")
  })
})
