import { afterAll, beforeAll, describe, expect, it } from "vitest"
import {
  createReferences,
  examineWorksheet,
  type Judgement,
  type JudgeTools,
  judgeProblemCodes,
  markAnswer,
} from "../../src/judge/index.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { readSheet as read, winch } from "./winch.ts"

let tools: JudgeTools & { close(): Promise<void> }
beforeAll(async () => {
  tools = await createJudgeTools(2)
})
afterAll(() => tools.close())

describe("marking an answer", () => {
  const worksheet = read(winch)
  const references = createReferences()
  const mark = (answers: Record<string, string>, seed = 1): Promise<Judgement> =>
    markAnswer(worksheet, fileOf(worksheet, answers, seed), tools, references)
  const check = (judgement: Judgement, name = "hauls") => judgement.checks.find(c => c.name === name)!

  it("gives full points for the author's own answers", async () => {
    const judgement = await mark({})
    expect(judgement.points).toBe(4)
    expect(judgement.outOf).toBe(4)
    expect(judgement.problems).toEqual([])
  })

  it("gives the same judgement byte for byte, with other references and other processes", async () => {
    const answers = { update: "p = p + Fnet * dt\nr = r + p * dt" }
    const first = await mark(answers)
    const other = await createJudgeTools(1)
    try {
      const again = await markAnswer(worksheet, fileOf(worksheet, answers, 1), other, createReferences())
      expect(JSON.stringify(again)).toBe(JSON.stringify(first))
    } finally {
      await other.close()
    }
  })

  it("says first that a blank is not filled, and gives nothing", async () => {
    const judgement = await mark({ net: "", update: "" })
    expect(judgement.points).toBe(0)
    for (const { message } of judgement.checks) expect(message).toMatch(/^These blanks are not filled yet/)
    expect(check(await mark({ update: "" })).message).toMatch(/^The blank “update” is not filled yet\./)
  })

  it("says what is right, what is wrong and when, a hint in the teacher's words, and where to look, in this order", async () => {
    const late = check(
      await mark({ net: "Fnet = vec3(pull, 0, 0) - 15 * p / mass\nif (t > 0.5) Fnet = -1 * Fnet" }),
    )
    const order = ["Up to t", "too far left", "Watch the first steps.", "On the bench"].map(part =>
      late.message.indexOf(part),
    )
    expect(order.every((at, i) => at >= 0 && (i === 0 || at > order[i - 1]!))).toBe(true)
    expect(late.departsAt).toBeGreaterThan(0.5)
    expect(late.departsAt).toBeLessThan(0.65)
  })

  it("names a slip, in the teacher's words where the worksheet has them, else in its own", async () => {
    const mass = check(await mark({ update: "p += Fnet * dt\nr += p * dt" }))
    expect(mass.slip).toBe("mass-missing")
    expect(mass.message).toContain("Does a heavy crate move as fast as a light one?")
    const sign = check(await mark({ net: "Fnet = vec3(pull, 0, 0) + 15 * p / mass" }))
    expect(["sign-turned", "damper-sign-turned"]).toContain(sign.slip)
    expect(sign.message).not.toContain("15 * p")
  })

  it("does not take a step written as a number", async () => {
    const literal = check(await mark({ update: "p = p + Fnet * 0.005\nr = r + (p / mass) * 0.005" }))
    expect(literal.verdict).toBe("not met")
    expect(literal.message).toContain("shorter")
  })

  it("tells why a copied curve fails: other values are tried", async () => {
    const copied = check(
      await mark({
        net: "Fnet = vec3(60, 0, 0) - 15 * p / 20",
        update: "p = p + Fnet * dt\nr = r + (p / 20) * dt",
      }),
    )
    expect(copied.verdict).toBe("not met")
    expect(copied.message).toContain("With the values on the sheet it comes out right, but not with others")
    const table =
      "const table = [0, 0.1, 0.2]\nr = vec3(n < 3 ? table[n] * 1e-5 : 1.5 * t * t, 0, 0)\np = p + Fnet * dt"
    expect(check(await mark({ update: table })).verdict).toBe("not met")
  })

  it("could not run: a syntax error, an endless loop and a thrown value, each in words, without points", async () => {
    for (const update of ["p = p + Fnet * dt)", "while (true) {}", "throw 3", "p = p * Fnet"]) {
      const judgement = await mark({ update })
      expect(check(judgement).verdict).toBe("could not run")
      expect(judgement.points).toBe(0)
      expect(judgement.problems.length).toBeGreaterThan(0)
      expect(check(judgement).message.length).toBeGreaterThan(20)
    }
  })

  it("accepts explicit Euler, the mean momentum and helper functions", async () => {
    const ways = [
      "r = r + (p / mass) * dt\np = p + Fnet * dt",
      "const q = p\np = p + Fnet * dt\nr = r + (q + p) / (2 * mass) * dt",
      "const step = (x, rate) => x + rate * dt\np = step(p, Fnet)\nr = step(r, p / mass)",
    ]
    for (const update of ways) expect((await mark({ update })).points).toBe(4)
  })
})

describe("examining a worksheet", () => {
  it("finds a good one sound, with margins for its checks and every slip refused", async () => {
    const found = await examineWorksheet(read(winch), tools)
    expect(found.findings).toEqual([])
    expect(found.sound).toBe(true)
    const hauls = found.checks.find(check => check.name === "hauls")!
    expect(hauls.empty).not.toBe("met")
    expect(hauls.nearestAccepted!.ratio).toBeLessThan(1)
    expect(hauls.nearestSlip!.ratio).toBeGreaterThan(1)
    expect(found.slips.length).toBeGreaterThan(8)
    expect(found.slips.every(slip => slip.refusedBy.length > 0)).toBe(true)
  })

  const faults: Record<string, [code: (typeof judgeProblemCodes)[number], from: string, to: string]> = {
    "a check that its own answers miss": [
      "check-refuses-author",
      "compare: crate.position",
      "value: crate.position.x\nequals: 9",
    ],
    "a check that empty blanks meet": [
      "check-met-by-empty",
      "compare: crate.position",
      "value: crate.position.y\nequals: 0",
    ],
    "a band too narrow for another stepper": [
      "check-refuses-right",
      "compare: crate.position",
      "stays: crate.position.x\nabove: 0.00001",
    ],
    "checks that a slip passes": [
      "slip-passes",
      "compare: crate.position",
      "value: crate.position.x\ntolerance: 1",
    ],
  }
  for (const [name, [code, from, to]] of Object.entries(faults)) {
    it(`finds ${name}: ${code}`, async () => {
      const text = code === "slip-passes" ? winch.replace(/```yaml check books[\s\S]*?```/, "") : winch
      const found = await examineWorksheet(read(text.replace(from, to)), tools)
      expect(found.sound).toBe(false)
      expect(found.findings.map(problem => problem.code)).toContain(code)
      expect(judgeProblemCodes).toContain(code)
    })
  }
})
