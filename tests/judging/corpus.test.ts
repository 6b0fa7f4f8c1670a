import { afterAll, beforeAll, describe, expect, it } from "vitest"
import type { JudgeTools } from "../../src/judge/index.ts"
import { buoy } from "./corpus/buoy.ts"
import type { Corpus } from "./corpus/corpus.ts"
import { fender } from "./corpus/fender.ts"
import { findTheFault } from "./corpus/find-the-fault.ts"
import { heavingLine } from "./corpus/heaving-line.ts"
import { lampKey } from "./corpus/lamp-key.ts"
import { makeYourOwn } from "./corpus/make-your-own.ts"
import { measured as measuredSheet } from "./corpus/measured.ts"
import { readTheMotion } from "./corpus/read-the-motion.ts"
import { slipway } from "./corpus/slipway.ts"
import { tideAndMoon } from "./corpus/tide-and-moon.ts"
import { tumble } from "./corpus/tumble.ts"
import { twoFloats } from "./corpus/two-floats.ts"
import { type Measured, measure } from "./measure.ts"
import { namedRightly, tableOf, writeTable } from "./table.ts"
import { createJudgeTools } from "./tools.ts"

const corpora: readonly Corpus[] = [
  lampKey,
  fender,
  slipway,
  tideAndMoon,
  measuredSheet,
  makeYourOwn,
  readTheMotion,
  heavingLine,
  buoy,
  twoFloats,
  tumble,
  findTheFault,
]
const measured: Measured[] = []
let tools: JudgeTools & { close(): Promise<void> }

beforeAll(async () => {
  tools = await createJudgeTools(2)
})
afterAll(async () => {
  await tools.close()
  const into = process.env.JUDGING_TABLE
  if (into !== undefined && measured.length === corpora.length) writeTable(into, tableOf(measured))
})

for (const corpus of corpora) {
  describe(`corpus of ${corpus.worksheet}`, () => {
    let found: Measured
    beforeAll(async () => {
      found = await measure(corpus, tools)
      measured.push(found)
    }, 1_200_000)

    it("holds at least 20 right and 40 wrong answers, half of the wrong ones not of the catalogue's kinds", () => {
      expect(corpus.right.length).toBeGreaterThanOrEqual(20)
      expect(corpus.wrong.length).toBeGreaterThanOrEqual(40)
      const faults = corpus.wrong.filter(answer => answer.slips.length === 0).length
      expect(faults).toBeGreaterThanOrEqual(20)
    })

    it("has no false refusal: every right answer earns full points", () => {
      const refused = found.right.filter(({ unmet }) => unmet.length > 0)
      expect(refused.map(({ answer, unmet }) => `${answer.how}: ${unmet.join(", ")}`)).toEqual([])
    })

    it("has no false pass: every wrong answer fails a check", () => {
      const passed = found.wrong.filter(({ unmet }) => unmet.length === 0)
      expect(passed.map(({ answer }) => answer.how)).toEqual([])
    })

    it("names at least 90 % of the catalogue's slips as students write them", () => {
      const slips = found.wrong.filter(({ answer }) => answer.slips.length > 0)
      const missed = slips.filter(marked => !namedRightly(marked))
      expect(
        missed.length,
        missed.map(({ answer, named }) => `${answer.how}: ${named.join(", ") || "none"}`).join("\n"),
      ).toBeLessThanOrEqual(0.1 * slips.length)
    })

    it("names no slip for a fault that is none", () => {
      const wrongly = found.wrong.filter(({ answer, named }) =>
        named.some(name => !answer.slips.includes(name)),
      )
      expect(wrongly.map(({ answer, named }) => `${answer.how}: ${named.join(", ")}`)).toEqual([])
    })

    it("shows no line of the author's answers in any message", () => {
      const lines = answerLines(found)
      for (const { judgement } of [...found.right, ...found.wrong]) {
        for (const { message } of judgement.checks)
          for (const line of lines) expect(message).not.toContain(line)
      }
    })
  })
}

function answerLines({ worksheet }: Measured): string[] {
  return Object.values(worksheet.answers)
    .flatMap(text => text.split("\n"))
    .map(line => line.trim())
    .filter(line => line.length > 8)
}
