import { afterAll, describe, expect, it } from "vitest"
import { compile } from "../../src/cell/index.ts"
import { createNodeStripper } from "../../src/cell/strip.node.ts"
import { createReferences, markAnswer } from "../../src/judge/index.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import type { AnswerFile } from "../../src/worksheet/index.ts"
import { readSheet, shippedIds } from "./sheet-run.ts"

const runner = createNodeRunner({ workers: 2 })
const stripper = createNodeStripper()
const tools = {
  compile: async (program: Parameters<typeof compile>[0]) => compile(program, await stripper),
  run: (request: Parameters<typeof runner.run>[0]) => runner.run(request),
}
const references = createReferences()

afterAll(() => runner.close())

describe.each(shippedIds)("%s handed in", id => {
  const worksheet = readSheet(id)
  const { sheet, answers, keys } = worksheet
  const handedIn = (texts: AnswerFile["answers"], questions: AnswerFile["questions"]): AnswerFile => ({
    format: "deltasheet-answers/1",
    worksheet: { id, version: sheet.version, digest: sheet.digest },
    student: { id: "s001", name: "Student 1" },
    seed: 7,
    answers: texts,
    questions,
    savedAt: "2025-01-01T00:00:00.000Z",
  })

  it("earns all ten points with the author's answers, hidden draws included", async () => {
    const right = Object.fromEntries(keys.map(key => [key.name, key.answer]))
    const judgement = await markAnswer(worksheet, handedIn(answers, right), tools, references)
    const lost = judgement.checks.filter(check => check.points < check.outOf)
    expect(lost.map(check => `${check.name}: ${check.message}`)).toEqual([])
    expect([judgement.points, judgement.outOf]).toEqual([10, 10])
  })

  it("earns nothing as a student finds it", async () => {
    const judgement = await markAnswer(worksheet, handedIn({}, {}), tools, references)
    expect(judgement.checks.filter(check => check.points > 0).map(check => check.name)).toEqual([])
  })
})

async function checksOf(id: string, answers: AnswerFile["answers"]) {
  const worksheet = readSheet(id)
  const answer: AnswerFile = {
    format: "deltasheet-answers/1",
    worksheet: { id, version: worksheet.sheet.version, digest: worksheet.sheet.digest },
    student: { id: "s003", name: "Student 3" },
    seed: 5,
    answers,
    questions: {},
    savedAt: "2025-01-01T00:00:00.000Z",
  }
  const { checks } = await markAnswer(worksheet, answer, tools, references)
  return Object.fromEntries(checks.map(check => [check.name, check]))
}

describe("lamp-key with its second blank left for later, as the sheet asks", () => {
  it("gives the points of the first blank", async () => {
    const update = "p = p + Fnet * dt\nr = r + (p / mass) * dt"
    const { impulse, follows, formula } = await checksOf("lamp-key", { update })
    expect([impulse!.points, follows!.points, formula!.points]).toEqual([2, 3, 0])
    expect(formula!.message).toMatch(/^The blank “formula” is not filled yet/)
  })

  it("speaks of the first blank's own fault, in the teacher's words", async () => {
    const update = "p = p + Fnet * dt\nr = r + p * dt"
    const { impulse, follows } = await checksOf("lamp-key", { update })
    expect([impulse!.verdict, follows!.verdict]).toEqual(["met", "not met"])
    expect(follows!.message).toContain("uses momentum where a velocity belongs")
    for (const check of [impulse!, follows!]) expect(check.message).not.toContain("formula")
  })
})

describe("tide-and-moon: a cell that goes round the Earth instead of through time", () => {
  it("is spoken of by its records, not by seconds", async () => {
    const { answers } = readSheet("tide-and-moon")
    const wrong = { ...answers, difference: "gTide = field(moon, place) - field(moon, moonAt)" }
    const { bulges } = await checksOf("tide-and-moon", wrong)
    expect(bulges!.verdict).toBe("not met")
    expect(bulges!.message).toMatch(/at record \d+ it is/)
    expect(bulges!.message).not.toContain("t = ")
  })
})

describe("make-your-own", () => {
  it("takes any honest landing: a damped spring and rough planks earn all points of the checks", async () => {
    const worksheet = readSheet("make-your-own")
    const forces = [
      "const N = Math.max(0, -9000 * r.y - 320 * (p.y / mass))",
      "if (r.y < 0) {",
      "  Flanding = N * vec3(0, 1, 0)",
      "  Fbrake = vec3(-Math.min(0.228 * N, Math.abs(p.x) / dt) * Math.sign(p.x), 0, 0)",
      "}",
    ].join("\n")
    const { sheet, answers } = worksheet
    const answer: AnswerFile = {
      format: "deltasheet-answers/1",
      worksheet: { id: sheet.id, version: sheet.version, digest: sheet.digest },
      student: { id: "s002", name: "Student 2" },
      seed: 3,
      answers: { ...answers, forces },
      questions: {},
      savedAt: "2025-01-01T00:00:00.000Z",
    }
    const judgement = await markAnswer(worksheet, answer, tools, references)
    const checks = judgement.checks.filter(check => sheet.checks.some(c => c.name === check.name))
    expect(checks.filter(check => check.verdict !== "met").map(c => `${c.name}: ${c.message}`)).toEqual([])
  })
})
