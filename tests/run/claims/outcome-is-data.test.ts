import { describe, expect, it } from "vitest"
import { defaultLimits } from "../../../src/run/contract.ts"
import { readOutcome, readProblem } from "../../../src/run/outcome.ts"

const good = {
  recordings: [
    {
      cell: "drop",
      series: [
        { name: "r", kind: "vector", column: 1 },
        { name: "e", kind: "scalar", column: 4 },
      ],
      rows: 2,
      width: 5,
      data: new Float64Array(10),
    },
  ],
  problem: null,
  output: ["a"],
  turns: 3,
  timeStepFound: true,
  milliseconds: 1.5,
}
const read = (message: unknown) => readOutcome(message, ["drop"], defaultLimits)
const recording = (change: object) => ({ ...good, recordings: [{ ...good.recordings[0], ...change }] })

describe("claim: what comes back from a process or worker is read as data, and anything else is thrown away", () => {
  it("passes an outcome as it is, and nothing that was added to it", () => {
    expect(read(good)).toEqual(good)
    expect(read({ ...good, points: 100 })).toEqual(good)
  })

  it.each<[string, unknown]>([
    ["nothing", null],
    ["a text", "done"],
    ["no recordings", { ...good, recordings: undefined }],
    ["more recordings than cells", { ...good, recordings: [good.recordings[0], good.recordings[0]] }],
    ["a cell that does not exist", recording({ cell: "other" })],
    ["numbers of another kind", recording({ data: [1, 2] })],
    ["fewer numbers than rows", recording({ rows: 3 })],
    ["a number that is not finite", recording({ data: new Float64Array(10).fill(Number.NaN, 7, 8) })],
    ["a time that runs back", recording({ data: new Float64Array(10).fill(1, 0, 1) })],
    ["rows below zero", recording({ rows: -1 })],
    ["broken rows", recording({ rows: 0.5 })],
    [
      "columns that overlap",
      recording({
        series: [
          { name: "r", kind: "vector", column: 1 },
          { name: "e", kind: "scalar", column: 2 },
        ],
      }),
    ],
    ["a kind that does not exist", recording({ series: [{ name: "r", kind: "matrix", column: 1 }] })],
    ["an endless name", recording({ series: [{ name: "r".repeat(5000), kind: "vector", column: 1 }] })],
    ["output that is no text", { ...good, output: [{ toString: () => "x" }] }],
    ["a flood of output", { ...good, output: ["x".repeat(defaultLimits.output + 500)] }],
    ["turns below zero", { ...good, turns: -1 }],
    ["a problem that is none", { ...good, problem: { code: "x" } }],
    ["a problem with a path for a code", { ...good, problem: { code: "../x", text: "a", todo: "b" } }],
  ])("refuses %s", (_, message) => {
    expect(read(message)).toBeNull()
  })

  it("cuts the words of a problem to a sensible length", () => {
    const problem = readProblem({
      code: "a",
      text: "x".repeat(1e6),
      todo: "y",
      where: { line: 1, column: 2, extra: 3 },
    })
    expect(problem!.text.length).toBeLessThan(1100)
    expect(problem!.where).toEqual({ line: 1, column: 2 })
  })
})
