import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { createReferences, isOfTheMoment, type JudgeTools, markAnswer } from "../../src/judge/index.ts"
import { watch } from "../../src/judge/watch.ts"
import type { RunOutcome, RunRequest } from "../../src/run/contract.ts"
import { lostOutcome } from "../../src/run/outcome.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { readSheet, winch } from "./winch.ts"

let tools: JudgeTools & { close(): Promise<void> }
beforeAll(async () => {
  tools = await createJudgeTools(1)
})
afterAll(() => tools.close())

const ended = (code: string): RunOutcome =>
  lostOutcome({ code, text: "The process was lost.", todo: "Run it again." }, 5)

/** Tools whose chosen runs end as the machine likes; the author's and the student's programs are told apart by a remark. */
function failing(code: string, chosen: (request: RunRequest, student: boolean) => boolean, times = Infinity) {
  let left = times
  const made: RunRequest[] = []
  return {
    made,
    compile: tools.compile,
    run: async (request: RunRequest) => {
      made.push(request)
      const student = request.compiled.program.text.includes("// mine")
      if (left > 0 && chosen(request, student)) {
        left--
        return ended(code)
      }
      return tools.run(request)
    },
  }
}

const worksheet = readSheet(winch)
const mine = { update: `// mine\n${worksheet.answers.update}` }
const mark = (used: JudgeTools, answers: Record<string, string> = mine) =>
  markAnswer(worksheet, fileOf(worksheet, answers, 1), used, createReferences())
const atHalf = (request: RunRequest): boolean => request.stepFactor === 0.5
const atDraw = (request: RunRequest): boolean =>
  worksheet.sheet.parameters.some(({ name, vary, value }) => vary && request.parameters[name] !== value)

describe("a run that the machine ended", () => {
  for (const code of ["run-lost", "memory-limit"])
    it(`is made once more, and a right answer keeps its points: ${code}`, async () => {
      for (const chosen of [atHalf, atDraw]) {
        const used = failing(code, (request, student) => student && chosen(request), 1)
        const judgement = await mark(used)
        expect(judgement.points).toBe(judgement.outOf)
        expect(isOfTheMoment(judgement)).toBe(false)
      }
    })
  it("is said with the verdict when it happens again, at a shorter step and at a hidden draw", async () => {
    for (const code of ["run-lost", "memory-limit", "time-limit"])
      for (const chosen of [atHalf, atDraw]) {
        const judgement = await mark(failing(code, (request, student) => student && chosen(request)))
        expect(judgement.problems.map(problem => problem.code)).toEqual(["verdict-unsure"])
        expect(isOfTheMoment(judgement)).toBe(true)
      }
  })
  it("makes no verdict milder where it was the author's: nothing is marked then", async () => {
    const literal = { update: "// mine\np = p + Fnet * 0.005\nr = r + (p / mass) * 0.005" }
    for (const [chosen, answers] of [
      [atHalf, literal],
      [atDraw, mine],
    ] as const) {
      const used = failing("time-limit", (request, student) => !student && chosen(request))
      await expect(mark(used, answers)).rejects.toThrow("The process was lost.")
    }
  })
  it("is not asked of a run that the program itself ended", async () => {
    const judgement = await mark(tools, { update: "// mine\nwhile (true) {}" })
    expect(judgement.problems.map(problem => problem.code)).toEqual(["endless-loop"])
    expect(isOfTheMoment(judgement)).toBe(false)
  })
})

describe("the runs of one answer together", () => {
  it("have half a minute; then no more are made, and it is said", async () => {
    let runs = 0
    const slow = watch({
      compile: tools.compile,
      run: async () => {
        runs++
        return { ...ended("endless-loop"), milliseconds: 12_000 }
      },
    })
    const request = {} as RunRequest
    for (let i = 0; i < 5; i++) await slow.run(request)
    expect(runs).toBe(3)
    expect(slow.unsure()?.text).toContain("more than 30 seconds together")
  })
})
