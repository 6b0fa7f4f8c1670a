import { readdirSync, readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { assembleProgram } from "../../src/cell/assemble.ts"
import { parseWorksheet } from "../../src/worksheet/index.ts"
import { fender } from "../judging/corpus/fender.ts"
import { lampKey } from "../judging/corpus/lamp-key.ts"
import { slipway } from "../judging/corpus/slipway.ts"
import { problemsOf } from "./types-tools.ts"

const folder = new URL("../../worksheets/", import.meta.url)
const sheets = readdirSync(folder)
  .filter(name => name.endsWith(".md"))
  .map(name => name.slice(0, -3))

function open(id: string) {
  const read = parseWorksheet(readFileSync(new URL(`${id}.md`, folder), "utf8"), `${id}.md`)
  if (!read.ok) throw new Error(read.problems[0]?.text)
  const { sheet, answers } = read.worksheet
  const names = sheet.parameters.map(one => one.name)
  return {
    answers,
    problems: (texts: Readonly<Record<string, string>>) =>
      problemsOf(assembleProgram(sheet.cells, texts, names, sheet.timeStep), sheet.parameters).map(
        one => `${one.where?.cell} ${one.where?.line}: ${one.code}: ${one.text}`,
      ),
  }
}

describe("the check of kinds raises no false alarm", () => {
  it.each(sheets)("on the author's answers, the starters and empty blanks of %s", id => {
    const { answers, problems } = open(id)
    expect(problems(answers)).toEqual([])
    expect(problems({})).toEqual([])
    expect(problems(Object.fromEntries(Object.keys(answers).map(name => [name, ""])))).toEqual([])
  })
  it.each(sheets)("on %s with one blank filled and the others as they come", id => {
    const { answers, problems } = open(id)
    for (const [name, text] of Object.entries(answers)) expect(problems({ [name]: text })).toEqual([])
  })
  it.each([fender, lampKey, slipway])("on the right answers to $worksheet", ({ worksheet, right }) => {
    const { answers, problems } = open(worksheet)
    for (const one of right)
      expect([one.how, problems({ ...answers, ...one.answers })]).toEqual([one.how, []])
  })
  it("and does on a wrong one: a force without its direction", () => {
    const { answers, problems } = open("fender")
    const [name, text] = Object.entries(answers).find(([, answer]) => answer.includes(" * away"))!
    expect(problems({ ...answers, [name]: text.replace(" * away", "") })).toEqual([
      expect.stringContaining("number-for-vector: Ffender is a vector"),
    ])
  })
})
