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
