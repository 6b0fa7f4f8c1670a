import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { createReferences, type JudgeTools, markAnswer } from "../../src/judge/index.ts"
import { excerptKey, wishOf } from "../../src/judge/wish.ts"
import type { RunRequest } from "../../src/run/contract.ts"
import type { CheckRule } from "../../src/worksheet/contract.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { checkOf } from "./check-of.ts"
import { readSheet, winch } from "./winch.ts"

const wished = (...rules: readonly CheckRule[]) => wishOf(rules.map(checkOf)).cell!.series

describe("what a verdict reads of a recording", () => {
  it("is the series that is compared, or of which a value is asked", () => {
    expect(wished({ kind: "compare", series: "key.position.y", tolerance: null })).toEqual(["key.position.y"])
  })
  it("is all forces of a body, where a law is asked of it", () => {
    const law = { kind: "law", law: "momentum", bodies: ["a", "b"], external: null, tolerance: 0.01 } as const
    expect(wished(law)).toEqual(["a.momentum", "b.momentum", "a.forces.*", "b.forces.*"])
  })
  it("is everything where no body is read, as it would not be seen then whether the first column is a time", () => {
    expect(wished({ kind: "compare", series: "gap", tolerance: null })).toEqual([])
  })
  it("is nothing of a cell without a check", () => {
    expect(
      Object.keys(wishOf([checkOf({ kind: "compare", series: "key.position", tolerance: null })])),
    ).toEqual(["cell"])
  })
  it("is told apart from other wishes", () => {
    const wishes: RunRequest["excerpt"][] = [
      undefined,
      {},
      { cell: { series: ["a"] } },
      { cell: { series: ["b"] } },
      { cell: { series: ["a"], times: Float64Array.of(1) } },
    ]
    const keys = wishes.map(excerptKey)
    expect(new Set(keys).size).toBe(keys.length)
  })
})

describe("an answer that records something else than the check reads", () => {
  let tools: JudgeTools & { close(): Promise<void> }
  beforeAll(async () => {
    tools = await createJudgeTools(1)
  })
  afterAll(() => tools.close())
  const record = "  record(t, { crate: { position: r, momentum: p, forces: { net: Fnet } } })"
  const worksheet = readSheet(
    winch.replace(record, `  // blank keep: Record the motion.\n${record}\n  // end blank`),
  )
  const messageFor = async (keep: string): Promise<string> => {
    const answer = fileOf(worksheet, { keep }, 1)
    const { checks } = await markAnswer(worksheet, answer, tools, createReferences())
    return checks.find(({ name }) => name === "hauls")!.message
  }

  it("is told so, not that it records nothing", async () => {
    expect(await messageFor("record(t, { crate: { momentum: p } })")).toContain(
      "Your program does not record the position of crate",
    )
  })
  it("is told that it records nothing, where that is so", async () => {
    expect(await messageFor("let unused = t")).toContain("records nothing in the cell “haul”")
  })
})
