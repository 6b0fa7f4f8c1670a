import { afterAll, beforeAll, describe, expect, it } from "vitest"
import {
  buildReference,
  createReferences,
  type JudgeTools,
  markAnswer,
  ownParameters,
  packReference,
  unpackReference,
} from "../../src/judge/index.ts"
import { applyRule } from "../../src/judge/rules/index.ts"
import { unsettledCells } from "../../src/judge/sensitivity.ts"
import { fileOf } from "../judging/measure.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { shipped } from "../support/class.ts"
import { shippedIds } from "../worksheets/sheet-run.ts"
import { readSheet, winch } from "./winch.ts"

/**
 * Two weights on springs, one below the other, let go from the side: chaotic at this swing. Invented.
 */
const chain = (swing: number) => `---
title: Two weights on a line
id: chain
version: 1
parameters:
  swing: { label: start to the side, unit: m, value: ${swing}, range: [0.01, 1.5] }
---

\`\`\`ts cell chain
const g: Vec3<'N/kg'> = vec3(0, -9.81, 0)
const m: Scalar<'kg'> = 1
const k: Scalar<'N/m'> = 200
const L: Scalar<'m'> = 0.8
const dt: Scalar<'s'> = 0.002
let r1: Vec3<'m'> = vec3(swing, 0, 0)
let r2: Vec3<'m'> = vec3(swing, 0.8, 0)
let p1: Vec3<'kg m/s'> = vec3(0, 0, 0)
let p2: Vec3<'kg m/s'> = vec3(0, 0, 0)
let t: Scalar<'s'> = 0
let n = 0
while (t < 12) {
  const d = r2 - r1
  const low: Vec3<'N'> = -k * (magnitude(d) - L) * unit(d)
  const top: Vec3<'N'> = -k * (magnitude(r1) - L) * unit(r1)
  const F1 = m * g + top - low
  const F2 = m * g + low
  // blank update: Momentum, then position, of both.
  p1 = p1 + F1 * dt
  r1 = r1 + (p1 / m) * dt
  p2 = p2 + F2 * dt
  r2 = r2 + (p2 / m) * dt
  // end blank
  n = n + 1
  t = n * dt
  record(t, { low: { position: r2, momentum: p2, forces: { net: F2 } } })
}
\`\`\`

\`\`\`yaml check swings
cell: chain
compare: low.position
points: 3
\`\`\`
`

let tools: JudgeTools & { close(): Promise<void> }
beforeAll(async () => {
  tools = await createJudgeTools(2)
})
afterAll(() => tools.close())

const referenceOf = (text: string) => {
  const worksheet = readSheet(text)
  return buildReference(worksheet, tools, ownParameters(worksheet.sheet), { slips: false })
}

describe("a chaotic reference is known by a hair's growth", () => {
  it("is told for the wide swing, and survives being packed", async () => {
    const reference = await referenceOf(chain(1))
    expect(reference.sensitive).toEqual([{ cell: "chain", from: expect.any(Number) }])
    const { checks } = readSheet(chain(1)).sheet
    const packed = JSON.parse(JSON.stringify(packReference(reference, checks)))
    expect(unpackReference(packed).sensitive).toEqual(reference.sensitive)
  })
  it("is not told for the small swing, nor for the crate on the winch", async () => {
    expect(
      (
        await referenceOf(
          chain(0.02)
            .replace("vec3(swing, 0, 0)", "vec3(swing, -0.85, 0)")
            .replace("vec3(swing, 0.8, 0)", "vec3(swing, -1.7, 0)"),
        )
      ).sensitive,
    ).toBeUndefined()
    expect((await referenceOf(winch)).sensitive).toBeUndefined()
  })

  it("is not told for a regular motion at a step so long that shorter ones leave it open", async () => {
    const text = winch
      .replace("= 0.005", "= 0.1")
      .replace("t < 1", "t < 12")
      .replace("vec3(pull, 0, 0) - 15 * p / mass", "vec3(pull, 0, 0) - 120 * r")
      .replace("p = p + Fnet * dt\nr = r", "p = p + Fnet * dt\nr = r")
      .replace(
        "  p = p + Fnet * dt\n  r = r + (p / mass) * dt",
        "  r = r + (p / mass) * dt\n  p = p + Fnet * dt",
      )
    const worksheet = readSheet(text)
    const reference = await referenceOf(text)
    expect(unsettledCells(worksheet.sheet.checks, reference)).toEqual(["haul"])
    expect(reference.sensitive).toBeUndefined()
  })
})

describe("what is not chaotic is judged to its end", () => {
  for (const id of shippedIds)
    it(`${id}: every compared series`, async () => {
      const worksheet = shipped(id)
      const { sheet } = worksheet
      const reference = await buildReference(worksheet, tools, ownParameters(sheet), { slips: false })
      expect(reference.sensitive).toBeUndefined()
      for (const check of sheet.checks.filter(one => one.rule.kind === "compare")) {
        const found = applyRule({ check, student: reference, reference })
        expect(found.met).toBe(true)
        expect(found.horizon).toBe(null)
      }
    })
})

describe("an answer to a chaotic sheet is judged as far as the reference can be trusted", () => {
  const worksheet = readSheet(chain(1))
  const references = createReferences()
  const mark = async (update: string) => {
    const judgement = await markAnswer(worksheet, fileOf(worksheet, { update }, 1), tools, references)
    return judgement.checks[0]!
  }
  const rights: Record<string, string> = {
    "momentum first": worksheet.answers.update!,
    "explicit Euler":
      "r1 = r1 + (p1 / m) * dt\nr2 = r2 + (p2 / m) * dt\np1 = p1 + F1 * dt\np2 = p2 + F2 * dt",
    "the mean momentum":
      "const a = p1\nconst b = p2\np1 = p1 + F1 * dt\np2 = p2 + F2 * dt\nr1 = r1 + (a + p1) / 2 / m * dt\nr2 = r2 + (b + p2) / 2 / m * dt",
  }
  for (const [name, update] of Object.entries(rights))
    it(`${name} is accepted, and it is said from when on nothing is compared`, async () => {
      const result = await mark(update)
      expect(result.verdict).toBe("met")
      expect(result.message).toContain("too sensitive to be compared point by point")
    })
  for (const share of [0.9, 0.98, 1.01])
    it(`${share} times the force on one of the weights is not`, async () => {
      const wrong = rights["momentum first"]!.replaceAll("F1 * dt", `${share} * F1 * dt`)
      expect((await mark(wrong)).verdict).toBe("not met")
    })
})
