import { describe, expect, it } from "vitest"
import { longestText, motionRows } from "../../src/report/contract.ts"
import { motionsOf, workOf } from "../../src/report/index.ts"
import type { Recording } from "../../src/run/contract.ts"
import { lampKey } from "../support/marked.ts"

const { sheet } = lampKey

/** A key that falls 1.3 s and stands: 20 000 rows with position, momentum and a series that no check reads. */
function recording(cell = "fall", rows = 20_000): Recording {
  const width = 8
  const data = new Float64Array(rows * width)
  for (let row = 0; row < rows; row++) {
    const t = (row * 2) / rows
    const y = Math.max(0, 8 - 4.905 * t * t)
    data.set([t, 0, y, 0, 0, -2.4525 * t, 0, Math.sin(1e4 * t)], row * width)
  }
  return {
    cell,
    series: [
      { name: "key.position", kind: "vector", column: 1 },
      { name: "key.momentum", kind: "vector", column: 4 },
      { name: "noise", kind: "scalar", column: 7 },
    ],
    rows,
    width,
    data,
  }
}

describe("the motion that is kept for reports", () => {
  const [motion] = motionsOf(sheet, [recording()])
  it("holds the components that checks read, and no others", () => {
    const paths = motion!.curves.map(curve => curve.path)
    expect(paths).toContain("key.position.y")
    expect(paths).toContain("key.momentum.y")
    expect(paths.join()).not.toContain("noise")
  })
  it("is thinned, ends and corners kept", () => {
    expect(motion!.times.length).toBeLessThanOrEqual(motionRows)
    expect(motion!.times[0]).toBe(0)
    expect(motion!.times.at(-1)).toBeCloseTo(2, 3)
    const landing = Math.sqrt(8 / 4.905)
    expect(motion!.times.some(t => Math.abs(t - landing) < 0.001)).toBe(true)
  })
  it("strays from the full one by less than a pixel of its picture", () => {
    const { times, curves } = motion!
    const y = curves.find(curve => curve.path === "key.position.y")!.values
    let worst = 0
    for (let t = 0; t < 1.99; t += 0.001) {
      const i = times.findIndex(next => next > t)
      const s = (t - times[i - 1]!) / (times[i]! - times[i - 1]!)
      const drawn = y[i - 1]! + s * (y[i]! - y[i - 1]!)
      worst = Math.max(worst, Math.abs(drawn - Math.max(0, 8 - 4.905 * t * t)))
    }
    expect(worst).toBeLessThan(8 / 100)
  })
  it("takes a few kilobytes", () => {
    expect(JSON.stringify(motion).length).toBeLessThan(12_000)
  })
  it("is empty for a cell that no check looks at, for no rows, and for no run", () => {
    expect(motionsOf(sheet, [recording("other")])).toEqual([])
    expect(motionsOf(sheet, [recording("fall", 0)])).toEqual([])
    expect(motionsOf(sheet, undefined)).toEqual([])
  })
})

describe("what is kept of an answer file", () => {
  const answers = {
    format: "deltasheet-answers/1" as const,
    worksheet: { id: sheet.id, version: sheet.version, digest: sheet.digest },
    student: { id: "hs1", name: "Ailsa Marr" },
    seed: 1,
    answers: JSON.parse('{"update":"p = p","__proto__":"x","other":"y"}') as Record<string, string>,
    questions: { heavier: "same", "own-words": "w".repeat(longestText + 5), stray: "z" },
    savedAt: "2026-11-25T09:00:00.000Z",
  }
  it("is what the sheet asks for, and nothing that was slipped in", () => {
    const { blanks, questions } = workOf(sheet, answers, [])
    expect(Object.keys(blanks)).toEqual(["update"])
    expect(Object.keys(questions)).toEqual(["heavier", "own-words"])
  })
  it("cuts long texts and says how much is left out", () => {
    const text = workOf(sheet, answers, []).questions["own-words"] as string
    expect(text.length).toBeLessThan(longestText + 80)
    expect(text).toContain("5 more characters")
  })
})
