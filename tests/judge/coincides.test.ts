import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { coincides, sameMethod } from "../../src/judge/coincides.ts"
import type { Evidence, Reference } from "../../src/judge/contract.ts"
import { createReferences, type JudgeTools, markAnswer } from "../../src/judge/index.ts"
import type { Recording, RunRequest } from "../../src/run/contract.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { checkOf } from "./check-of.ts"
import { readSheet, winch } from "./winch.ts"

const path = "buoy.position"
/** A buoy that bobs: y(t) = sin 3t in rows of `step` until `end`, moved by `more`. Invented. */
function bobbing(step: number, end = 2, more: (t: number, n: number) => number = () => 0): Recording {
  const rows = Math.round(end / step)
  const data = Float64Array.from({ length: rows * 4 }, (_, i) => {
    const n = Math.floor(i / 4) + 1
    const t = n * step
    return [t, 0, Math.sin(3 * t) + more(t, n), 0][i % 4]!
  })
  return { cell: "cell", series: [{ name: path, kind: "vector", column: 1 }], rows, width: 4, data }
}
/** As a reference is packed: thinned to every third row and the last, in 32-bit floats. */
function packed({ data, rows, width, ...named }: Recording): Recording {
  const kept = Array.from({ length: rows }, (_, row) => row).filter(row => row % 3 === 0 || row === rows - 1)
  const thinned = kept.flatMap(row => [...data.slice(row * width, (row + 1) * width)].map(Math.fround))
  return { ...named, rows: kept.length, width, data: Float64Array.from(thinned) }
}
const step = 0.01
const reference: Reference = {
  parameters: {},
  factors: [1, 1 / 2, 1 / 4],
  runs: [1, 2, 4].map(n => [packed(bobbing(step / n))]),
  slips: [],
}
const evidence = (...runs: readonly Recording[]): Evidence => ({
  unfilled: [],
  problem: null,
  finerProblem: null,
  factors: [1, 1 / 2].slice(0, runs.length),
  runs: runs.map(run => [run]),
  timeStepFound: true,
  looked: null,
})
const sheet = {
  cells: [{ name: "cell", line: 1, segments: [] }],
} as unknown as Parameters<typeof coincides>[0]
const check = checkOf({ kind: "compare", series: path, tolerance: null })
const asGiven = (mine: Recording): boolean => coincides(sheet, check, reference, evidence(mine))

describe("a motion that is the reference's own", () => {
  it("is known row by row, up to what packing rounds away", () => {
    expect(asGiven(bobbing(step))).toBe(true)
    expect(asGiven(bobbing(step, 2, () => 1e-7))).toBe(true)
  })
  it.each([
    ["lies a ten-thousandth of its extent off", bobbing(step, 2, () => 2e-4)],
    ["lies off in a single row that is kept", bobbing(step, 2, (_, n) => (n === 100 ? 1e-3 : 0))],
    ["ends sooner", bobbing(step, 1.9)],
    ["goes on for longer", bobbing(step, 2.1)],
    ["has rows at other times", bobbing(step * 1.01, 2.02)],
    ["has a third of its rows", packed(bobbing(step * 1.5, 2.01))],
    [
      "was recorded under another name",
      { ...bobbing(step), series: [{ name: "gull.position", kind: "vector" as const, column: 1 }] },
    ],
    ["was not recorded", { ...bobbing(step), rows: 0, data: new Float64Array(0) }],
  ])("is not one that %s", (_, mine) => {
    expect(asGiven(mine)).toBe(false)
  })
  it("is of the same method only if it is so at half the step as well", () => {
    const both = (...runs: readonly Recording[]) => sameMethod(evidence(...runs), reference, "cell", path)
    expect(both(bobbing(step), bobbing(step / 2))).toBe(true)
    expect(both(bobbing(step))).toBe(false)
    // a step written as a number: the same rows again
    expect(both(bobbing(step), bobbing(step))).toBe(false)
    expect(
      both(
        bobbing(step),
        bobbing(step / 2, 2, t => 1e-3 * t),
      ),
    ).toBe(false)
  })
  it("says nothing of checks that do not compare", () => {
    const law = checkOf({ kind: "law", law: "momentum", bodies: ["buoy"], external: null, tolerance: 0.01 })
    expect(coincides(sheet, law, reference, evidence(bobbing(step)))).toBe(false)
  })
})

describe("hidden draws of such a motion", () => {
  const worksheet = readSheet(winch)
  let tools: JudgeTools & { close(): Promise<void> }
  let asked: RunRequest[]
  const watched = (): JudgeTools => ({
    compile: program => tools.compile(program),
    run: request => {
      asked.push(request)
      return tools.run(request)
    },
  })
  beforeAll(async () => {
    tools = await createJudgeTools(2)
  })
  afterAll(() => tools.close())
  const wholeRows = ({ excerpt }: RunRequest): boolean =>
    Object.values(excerpt ?? {}).every(({ times }) => times === undefined)
  const references = createReferences()
  const mark = async (answers: Record<string, string>) => {
    await markAnswer(worksheet, fileOf(worksheet, {}, 1), tools, references)
    asked = []
    return markAnswer(worksheet, fileOf(worksheet, answers, 1), watched(), references)
  }

  it("are run once each, and little of them comes back", async () => {
    const judgement = await mark({ update: "p += Fnet * dt\nr += p / mass * dt" })
    expect(judgement.points).toBe(4)
    expect(asked.filter(wholeRows)).toHaveLength(2)
    const thinned = asked.filter(request => !wholeRows(request))
    expect(thinned).toHaveLength(5)
    for (const { excerpt } of thinned) expect(excerpt!.haul!.series).toEqual(["crate.position"])
  })
  it("are run at shorter steps where the method is another one, and it passes", async () => {
    const judgement = await mark({ update: "r = r + (p / mass) * dt\np = p + Fnet * dt" })
    expect(judgement.points).toBe(4)
    expect(asked.every(wholeRows)).toBe(true)
    expect(asked.length).toBeGreaterThanOrEqual(12)
  })
  it("tell a number that stands for a parameter, though the motion is the reference's own on the sheet", async () => {
    const judgement = await mark({ net: "Fnet = vec3(60, 0, 0) - 15 * p / mass" })
    const [hauls] = judgement.checks
    expect(asked.every(wholeRows)).toBe(false)
    expect(hauls!.verdict).toBe("not met")
    expect(hauls!.message).toContain("but not with others")
  })
})
