import { signal } from "@preact/signals"
import { describe, expect, it } from "vitest"
import { orderOf, stepStudy } from "../../../src/page/bench/step-study.ts"
import { orderText, stepWords } from "../../../src/page/bench/step-words.ts"
import type { ShownRun } from "../../../src/page/lines/looking.ts"
import { openStepping } from "../../../src/page/stepping.ts"
import type { Recording, RunOutcome, RunRequest } from "../../../src/run/contract.ts"
import { projectile, record } from "../bench-fixture/recordings.ts"

const three = (make: (dt: number) => Recording, dt: number) => [make(dt), make(dt / 2), make(dt / 4)] as const
const plain = (text: string) => text.replaceAll("\u00a0", " ")
const words = (runs: readonly [Recording, Recording, Recording]) =>
  stepWords(stepStudy(runs)!, "dt", body => `the ${body}`).map(plain)

/** A unit mass on a unit spring from rest at 1 m, for 2 s, stepped by leapfrog: order 2. */
function leapfrog(dt: number): Recording {
  let [x, v] = [1, 0]
  const rows: number[][] = []
  for (let k = 1; k <= Math.round(2 / dt); k++) {
    v -= (x * dt) / 2
    x += v * dt
    v -= (x * dt) / 2
    rows.push([k * dt, x, 0, 0, v, 0, 0])
  }
  return record("spring", ["bob.position", "bob.momentum"], rows)
}

const straight = (dt: number) =>
  record(
    "glide",
    ["puck.position"],
    Array.from({ length: Math.round(1 / dt) }, (_, k) => [(k + 1) * dt, (k + 1) * dt, 0, 0]),
  )

describe("the study of the time step", () => {
  it("shows order 1 of Euler–Cromer in free fall, whose error is known: g t dt / 2", () => {
    const dt = 0.01
    const study = stepStudy(three(step => projectile("throw", 9, step), dt))!
    const [place] = study.places
    expect(place!.changes[0]).toBeCloseTo((9.81 * study.at * dt) / 4, 9)
    expect(place!.changes[1]).toBeCloseTo((9.81 * study.at * dt) / 8, 9)
    expect(place!.order).toEqual({ kind: "order", order: expect.closeTo(1, 6) })
    expect(study.off!.distance).toBeCloseTo((9.81 * study.at * dt) / 2, 8)
    expect(study.others.map(row => row.quantity)).toEqual(["highest y of weight", "end of the recording, t"])
  })
  it("shows order 2 of leapfrog on a spring", () => {
    const study = stepStudy(three(leapfrog, 0.05))!
    const order = study.places[0]!.order
    if (order.kind !== "order") throw new Error(order.kind)
    expect(order.order).toBeGreaterThan(1.95)
    expect(order.order).toBeLessThan(2.05)
    // the exact place is cos 2
    expect(study.off!.distance).toBeCloseTo(Math.abs(leapfrog(0.05).data[39 * 7 + 1]! - Math.cos(2)), 5)
  })
  it("knows a motion that no step changes, and one whose changes show no order", () => {
    expect(stepStudy(three(straight, 0.1))!.places[0]!.order).toEqual({ kind: "exact" })
    expect(orderOf([1, 0.99], 10)).toEqual({ kind: "none" })
    expect(orderOf([0.1, 0.4], 10)).toEqual({ kind: "none" })
    expect(orderOf([Number.NaN, 1], 1)).toEqual({ kind: "none" })
    expect(orderOf([1e-12, 2e-12], 1)).toEqual({ kind: "exact" })
  })
  it("tells it in a sentence", () => {
    const [moved, falls] = words(three(step => projectile("throw", 9, step), 0.01))
    expect(moved).toMatch(
      /^At t = 1\.8\d\d s half the step moves the weight by 0\.04\d m, and half of that again by 0\.02\d m\.$/,
    )
    expect(falls).toMatch(
      /^So the change falls to a half when the step is halved: .* order 1\. By that the run with dt is about 0\.08\d m off/,
    )
    expect(words(three(straight, 0.1))).toEqual([
      "A shorter step changes nothing: at t = 1.000 s the puck is at the same place with dt, dt/2 and dt/4.",
    ])
    expect(orderText({ kind: "none" })).toBe("none seen")
  })
  it("is none where the runs have no time in common", () => {
    const late = (dt: number) =>
      record(
        "glide",
        ["puck.position"],
        [
          [dt, 0, 0, 0],
          [dt * 1.5, 0, 0, 0],
        ],
      )
    expect(stepStudy([late(8), late(4), late(1)])).toBeNull()
  })
})

describe("the study's runs", () => {
  const outcome = (over: Partial<RunOutcome> = {}): RunOutcome => ({
    recordings: [],
    problem: null,
    output: [],
    turns: 0,
    timeStepFound: true,
    milliseconds: 1,
    ...over,
  })
  function open(answer: (request: RunRequest) => RunOutcome) {
    const asked: RunRequest[] = []
    let stops = 0
    const shown = signal<ShownRun | null>({
      compiled: {} as never,
      parameters: { m: 2 },
      seed: 7,
      recordings: [],
    })
    const stepping = openStepping({
      shown,
      timeStep: "dt",
      runner: () => ({
        async run(request) {
          asked.push(request)
          await Promise.resolve()
          return answer(request)
        },
        stop: () => {
          stops++
        },
        async close() {},
      }),
    })
    const settle = () => new Promise(done => setTimeout(done, 5))
    return { asked, shown, stepping, settle, stops: () => stops }
  }

  it("are the program shown with dt, dt/2 and dt/4, and are known to be old after the next run", async () => {
    const { asked, shown, stepping, settle } = open(() => outcome())
    stepping.start()
    await settle()
    expect(asked.map(({ stepFactor, parameters, seed }) => [stepFactor, parameters.m, seed])).toEqual([
      [1, 2, 7],
      [0.5, 2, 7],
      [0.25, 2, 7],
    ])
    expect(stepping.state.value).toMatchObject({ kind: "done", current: true })
    shown.value = { ...shown.value!, parameters: { m: 3 } }
    expect(stepping.state.value).toMatchObject({ kind: "done", current: false })
  })
  it("can be called off", async () => {
    const { asked, stepping, settle, stops } = open(() => outcome())
    stepping.start()
    expect(stepping.state.value).toEqual({ kind: "running", done: 0, of: 3 })
    stepping.cancel()
    await settle()
    expect([asked.length, stops(), stepping.state.value.kind]).toEqual([1, 1, "idle"])
  })
  it("say why they cannot be made", async () => {
    const { stepping, settle } = open(() => outcome({ timeStepFound: false }))
    stepping.start()
    await settle()
    expect(stepping.state.value).toMatchObject({ kind: "failed", why: { code: "page-no-time-step" } })
  })
})
