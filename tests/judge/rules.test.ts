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
  it("is met by what is left of numbers too small to hold their digits, and not by one just above", () => {
    const left = (size: number) => {
      const recording = simulate(sliding(true), "momentum first")
      const { column } = recording.series.find(({ name }) => name === "body0.momentum")!
      const data = recording.data.slice()
      for (let row = 0; row < recording.rows; row++)
        if (data[row * recording.width]! >= 0.8) data[row * recording.width + column] = size
      return { factors: [1], runs: [[{ ...recording, data }]] }
    }
    expect(judge(rest, left(2.5e-323)).met).toBe(true)
    expect(judge(rest, left(2.5e-308)).met).toBe(false)
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

describe("a series of the wrong kind", () => {
  /** The momentum as one number an instant, or a number as a vector; every other row of data stays as it is. */
  const withKind = (name: string, kind: "scalar" | "vector") => {
    const runs = runsOf(fall)
    return {
      ...runs,
      runs: runs.runs.map(recordings =>
        recordings.map(recording => {
          const old = recording.series.find(series => series.name === name)!
          const width = recording.width + (kind === "scalar" ? 1 : 3)
          const data = new Float64Array(recording.rows * width)
          for (let row = 0; row < recording.rows; row++) {
            data.set(recording.data.subarray(row * recording.width, (row + 1) * recording.width), row * width)
            data[row * width + recording.width] = 3 * row + 5
          }
          const others = recording.series.map(series =>
            series === old ? { ...series, name: "was" } : series,
          )
          return { ...recording, width, data, series: [...others, { name, kind, column: recording.width }] }
        }),
      ),
    }
  }
  const asNumber = withKind("body0.momentum", "scalar")
  const rules: CheckRule[] = [
    { kind: "law", law: "momentum", bodies: ["body0"], external: null, tolerance: 1e-6 },
    {
      kind: "law",
      law: "angular momentum",
      bodies: ["body0"],
      external: null,
      tolerance: 1e-6,
      about: [0, 0, 0],
    },
    { kind: "law", law: "energy", bodies: ["body0"], energy: null, work: null, tolerance: 0.01 },
    { kind: "rests", body: "body0", from: 0.5 },
    { kind: "stepper", order: "momentum first", body: "body0" },
    { kind: "happens", event: "rest", of: "body0", at: 1, within: 1, count: 1 },
    { kind: "compare", series: "body0.momentum", tolerance: null },
    { kind: "converges", series: "body0.momentum", order: 1 },
  ]
  for (const rule of rules)
    it(`is told in words, and is not met: ${rule.kind} ${rule.kind === "law" ? rule.law : ""}`, () => {
      const found = judge(rule, asNumber, runsOf(fall))
      expect(found.met).toBe(false)
      expect(found.wrong).toMatch(/is recorded as a number, .* is a vector/)
    })
  it("is told of a number that is recorded as a vector, too", () => {
    const rule: CheckRule = { kind: "compare", series: "x", tolerance: null }
    const named = (runs: ReturnType<typeof runsOf>, kind: "vector" | "scalar", column: number) => ({
      ...runs,
      runs: runs.runs.map(recordings =>
        recordings.map(recording => ({ ...recording, series: [{ name: "x", kind, column }] })),
      ),
    })
    const found = judge(rule, named(runsOf(fall), "vector", 1), named(runsOf(fall), "scalar", 1))
    expect(found.met).toBe(false)
    expect(found.wrong).toMatch(/is recorded as a vector, .* is a number/)
  })
  it("is asked at every time step, not at the given one alone", () => {
    const runs = runsOf(fall)
    const mixed = { ...runs, runs: [runs.runs[0]!, ...asNumber.runs.slice(1)] }
    expect(judge(rules[0]!, mixed, runs).met).toBe(false)
    expect(judge(rules[0]!, runs, runs).met).toBe(true)
  })
})
