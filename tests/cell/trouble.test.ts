import { describe, expect, it } from "vitest"
import { createTracer, explainFailure, overshootOf } from "../../src/cell/index.ts"
import { compiled, run } from "./run.ts"

/** Fails in the first run, is traced in the second, and explained from both, as a runner does. */
async function failure(text: string, maxTurns = 1e5) {
  const c = await compiled(text)
  const first = run(c, { maxTurns })
  if (first.error === undefined) throw new Error("The program did not fail")
  const tracer = createTracer(c)
  run(c, { trace: true, maxTurns, at: tracer.at })
  const site = (first.error as { site?: number }).site ?? tracer.lastSite()
  return explainFailure(first.error, c, site, { notFinite: tracer.notFinite() })
}

describe("NaN and infinity are told where they first come up", () => {
  it("not where a function of the library notices them", async () => {
    const problem = await failure(`let v = vec3(1, 0, 0)
let m = 3
for (let i = 0; i < 10; i++) {
  m = m - 1
  const share = (m - m) / m
  const w = v * share
  v = v + w
}
unit(v)`)
    expect(problem).toMatchObject({
      code: "became-not-finite",
      text: expect.stringContaining(
        "share becomes NaN, which is no number, here, the 3rd time this line runs",
      ),
      where: { line: 5, column: 9 },
    })
  })
  it("in a vector's component", async () => {
    const problem = await failure(
      "const o = { p: vec3(1, 2, 3) }\nlet s = Math.sqrt(-1)\no.p = o.p * s\nmagnitude(o.p)",
    )
    expect(problem).toMatchObject({
      code: "became-not-finite",
      text: expect.stringMatching(/^s becomes NaN/),
      where: { line: 2 },
    })
  })
  it("an infinity put there on purpose is not blamed for another NaN", async () => {
    const problem = await failure(
      "let least = Infinity\nif (3 < least) least = 3\nconst bad = 0 * Math.log(0)\nvec3(bad, 0, 0)",
    )
    expect(problem).toMatchObject({ text: expect.stringMatching(/^bad becomes NaN/), where: { line: 3 } })
  })
  it("a quantity that grew until no number held it is told as that", async () => {
    const problem = await failure(
      "let x = 1\nlet t = 0\nwhile (t < 500) {\n  x = -x * 1e3\n  t += 1\n}\nvec3(x, 0, 0)",
    )
    expect(problem).toMatchObject({ code: "grew-without-bound", where: { line: 4, column: 3 } })
    expect(problem.text).toContain("after it or another quantity grew beyond all measure")
  })
  it("in a line that runs for the first time nothing is said of growing", async () => {
    const { text } = await failure("const long = 1e200\nconst area = long * long\nvec3(area, 0, 0)")
    expect(text).toBe("area becomes infinite here, the first time this line runs.")
  })
  it("a failure of another kind keeps its words", async () => {
    expect(await failure("const x = 0 / 0\nunit(vec3(0, 0, 0))")).toMatchObject({ code: "zero-length" })
  })
})

describe("an endless loop is named by its condition", () => {
  const cases: [string, string, RegExp][] = [
    [
      "what never changes",
      "let t = 0, n = 0\nwhile (t < 2) { n += 1 }",
      /nothing inside it changes t, so t < 2 stays true/,
    ],
    [
      "two that never change",
      "let t = 0, n = 5\nwhile (t < n) { let t = 3; t += 1 }",
      /nothing inside it changes t or n/,
    ],
    [
      "what changes the wrong way",
      "let t = 0\nwhile (t < 2) { t -= 1 }",
      /t < 2 stayed true, although t is given new values/,
    ],
    ["no condition", "for (;;) { }", /no condition/],
    ["a constant condition", "let t = 0\ndo { t += 1 } while (true)", /condition true never changes/],
    [
      "what a function changes",
      "let t = 0\nconst step = () => { t -= 1 }\nwhile (t < 2) step()",
      /t is given new values/,
    ],
  ]
  it.each(cases)("%s", async (_, text, words) => {
    const problem = await failure(text, 1000)
    expect(problem).toMatchObject({ code: "endless-loop", text: expect.stringMatching(words) })
    expect(problem.where?.line).toBeGreaterThan(0)
  })
})

describe("a time step that is too long is known by the motion it makes", () => {
  /** Momentum-first steps of an undamped oscillator, m = 1 kg. */
  function oscillation(omega: number, dt: number, rows: number) {
    const data: number[] = []
    let x = 1
    let p = 0
    for (let i = 1; i <= rows; i++) {
      p -= omega * omega * x * dt
      x += p * dt
      data.push(i * dt, x, 0, 0)
    }
    return { series: [{ name: "bob.position", kind: "vector" as const, column: 1 }], rows, width: 4, data }
  }
  it("beyond ω Δt = 2 it is found, with ω Δt as it was, from either side", () => {
    for (const angle of [2.1, 2.5, 3, 7]) {
      const found = overshootOf(oscillation(angle / 0.01, 0.01, 60))
      expect(found).toMatchObject({ name: "bob.position.x" })
      expect(found!.angle).toBeCloseTo(angle, 2)
      expect(found!.longest).toBeCloseTo((0.01 * 2) / angle, 4)
    }
  })
  it("below it no motion is blamed, however long it swings", () => {
    for (const angle of [0.1, 1, 1.9, 1.99])
      expect(overshootOf(oscillation(angle / 0.01, 0.01, 400))).toBeNull()
  })
  it("nor a short recording, or one that only grows", () => {
    expect(overshootOf(oscillation(300, 0.01, 8))).toBeNull()
    const data = Array.from({ length: 100 }, (_, i) => [i, 2 ** i]).flat()
    expect(
      overshootOf({ series: [{ name: "x", kind: "scalar", column: 1 }], rows: 100, width: 2, data }),
    ).toBeNull()
  })
})
