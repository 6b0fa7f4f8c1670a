import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { createReferences, type JudgeTools, markAnswer, ownParameters } from "../../src/judge/index.ts"
import { pairMotions } from "../../src/judge/pairs.ts"
import { slipNamed } from "../../src/judge/slips/catalogue.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { readSheet, winch } from "./winch.ts"

let tools: JudgeTools & { close(): Promise<void> }
beforeAll(async () => {
  tools = await createJudgeTools(2)
})
afterAll(() => tools.close())

describe("two slips at once", () => {
  const worksheet = readSheet(winch)
  const references = createReferences()
  let asked = 0
  const counting = {
    ...references,
    pairs: (...args: Parameters<typeof references.pairs>) => {
      asked++
      return references.pairs(...args)
    },
  }
  const mark = async (answers: Record<string, string>) => {
    const judgement = await markAnswer(worksheet, fileOf(worksheet, answers, 1), tools, counting)
    return judgement.checks.find(check => check.name === "hauls")!
  }

  const net = "Fnet = vec3(pull, 0, 0) - 15 * p / mass"
  const update = "p = p + Fnet * dt\nr = r + (p / mass) * dt"

  it("are not asked for by a right answer, nor by one with a single slip", async () => {
    expect((await mark({ net, update })).verdict).toBe("met")
    expect((await mark({ update: "p = p + Fnet * dt\nr = r + p * dt" })).slip).toBe("mass-missing")
    expect(asked).toBe(0)
  })
  const pairs: [string, Record<string, string>, string][] = [
    [
      "in one blank",
      { update: "const kick = dt * Fnet\np = kick\nr += dt * p" },
      "momentum-overwritten + mass-missing",
    ],
    [
      "in two blanks",
      {
        net: "const pulled = vec3(pull, 0, 0)\nFnet = pulled + 15 * p / mass",
        update: "p += Fnet * dt\nr += p * dt",
      },
      "sign-turned + mass-missing",
    ],
    [
      "in two blanks, one of them a missing force",
      { net: "Fnet = vec3(pull, 0, 0)", update: "p = p + dt * Fnet\nr = r - dt * p / mass" },
      "force-missing + sign-turned",
    ],
  ]
  for (const [where, answers, name] of pairs)
    it(`${where} are named: ${name}`, async () => {
      const found = await mark(answers)
      expect(found.verdict).toBe("not met")
      expect(found.slip?.split(" + ").sort()).toEqual(name.split(" + ").sort())
      expect(found.message).toContain("Two things seem to be wrong at once.")
    })
  it("are told in the teacher's words where there are some, for each by itself", async () => {
    const found = await mark({ net: "Fnet = vec3(pull, 0, 0)", update: "p = p + Fnet * dt\nr = r + p * dt" })
    expect(found.slip).toBe("force-missing + mass-missing")
    expect(found.message).toContain("Does a heavy crate move as fast as a light one?")
  })
  it("are not named where the motion is another", async () => {
    const others: Record<string, string>[] = [
      { net: "Fnet = vec3(1.3 * pull, 0, 0) - 15 * p / mass" },
      {
        net: "Fnet = vec3(pull, 0, 0) - 11 * p / mass",
        update: "p = p + Fnet * dt\nr = r - (p / mass) * dt",
      },
      { update: "p = p + Fnet * dt\nr = r + (p / mass) * dt + vec3(0, 0.01, 0)" },
      { update: "p = 1.01 * p + Fnet * dt\nr = r + (p / mass) * dt" },
    ]
    for (const answers of others) expect((await mark(answers)).slip).toBe(null)
    expect(asked).toBeGreaterThan(0)
  })
  it("have words for the teacher as well", () => {
    const both = slipNamed("sign-turned + mass-missing")!
    expect(both.teacher).toContain(slipNamed("sign-turned")!.teacher)
    expect(both.teacher).toContain(slipNamed("mass-missing")!.teacher)
    expect(slipNamed("sign-turned + nothing")).toBeUndefined()
    expect(slipNamed("nothing")).toBeUndefined()
  })
})

describe("the budget for pairs", () => {
  it("counts turns, so that two runs of the judge try the same pairs", async () => {
    const sheet = readSheet(winch)
    const reference = await createReferences().get(sheet, tools, ownParameters(sheet.sheet), true)
    const tried = async (budget?: number): Promise<number> => {
      let runs = 0
      const counted: JudgeTools = {
        compile: program => tools.compile(program),
        run: request => {
          runs++
          return tools.run(request)
        },
      }
      await pairMotions(sheet, counted, reference, budget)
      return runs - 1
    }
    const all = await tried()
    expect(all).toBeGreaterThan(20)
    expect(await tried()).toBe(all)
    expect(await tried(0)).toBe(0)
    const some = await tried(2000)
    expect(some).toBeGreaterThan(0)
    expect(some).toBeLessThan(20)
  })
})
