import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { createReferences, examineWorksheet, type JudgeTools, markAnswer } from "../../src/judge/index.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { readSheet, winch } from "./winch.ts"

const check = (name: string, lines: string) => `
\`\`\`yaml check ${name}
cell: haul
points: 1
${lines}
\`\`\`
`
const sheet =
  winch +
  check(
    "order",
    "stepper: momentum first\nbody: crate\nslips: { old-momentum: Which momentum moves the crate? }",
  ) +
  check("units", "units: agree") +
  check("own", "avoids: [rungeKutta4, velocityVerlet]") +
  check("first-order", "converges: crate.position\norder: 1") +
  check("energy", "law: energy\nbody: crate") +
  check("turn", "law: angular momentum\nbody: crate\nabout: [0, 1]")

let tools: JudgeTools & { close(): Promise<void> }
beforeAll(async () => {
  tools = await createJudgeTools(2)
})
afterAll(() => tools.close())

describe("a worksheet with checks of every other kind", () => {
  const worksheet = readSheet(sheet)
  const references = createReferences()
  const mark = async (answers: Record<string, string>) => {
    const { checks } = await markAnswer(worksheet, fileOf(worksheet, answers, 1), tools, references)
    return {
      checks,
      unmet: checks.filter(one => one.verdict !== "met").map(one => one.name),
    }
  }
  it("gives full points for the author's answers, however they are written", async () => {
    expect((await mark({})).unmet).toEqual([])
    expect((await mark({ update: "p += dt * Fnet\nr += dt * p / mass" })).unmet).toEqual([])
  })
  it("counts the old momentum as wrong in the check that asks for the order, and nowhere else", async () => {
    const { checks, unmet } = await mark({ update: "r = r + (p / mass) * dt\np = p + Fnet * dt" })
    expect(unmet).toEqual(["order"])
    const order = checks.find(one => one.name === "order")!
    expect(order.slip).toBe("old-momentum")
    expect(order.message).toContain("Which momentum moves the crate?")
  })
  it("without such a check the old momentum is right", async () => {
    const plain = readSheet(winch)
    const update = "r = r + (p / mass) * dt\np = p + Fnet * dt"
    const judgement = await markAnswer(plain, fileOf(plain, { update }, 1), tools, createReferences())
    expect(judgement.points).toBe(judgement.outOf)
  })
  it("refuses lines whose units do not fit, and lines that use what they should do without", async () => {
    expect((await mark({ update: "p = p + Fnet\nr = r + (p / mass) * dt" })).unmet).toContain("units")
    const helped = "const way = rungeKutta4\np = p + Fnet * dt\nr = r + (p / mass) * dt"
    expect((await mark({ update: helped })).unmet).toEqual(["own"])
  })
  it("gives nothing for empty blanks", async () => {
    const { unmet } = await mark({ net: "", update: "" })
    expect(unmet).toEqual(worksheet.sheet.checks.map(one => one.name))
  })
  it("is sound: the order that is asked for is not held against its own author", async () => {
    const found = await examineWorksheet(worksheet, tools)
    expect(found.findings).toEqual([])
    expect(found.slips.find(slip => slip.slip === "old-momentum")).toMatchObject({
      refusedBy: ["order"],
      named: true,
    })
  })
})
