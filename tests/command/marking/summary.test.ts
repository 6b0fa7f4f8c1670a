import { describe, expect, it } from "vitest"
import { createCounts } from "../../../src/command/marking/summary.ts"
import { type Marked, refused } from "../../../src/report/index.ts"
import { shipped } from "../../support/class.ts"

const { sheet } = shipped("lamp-key")
const turnedAway = (file: string, text: string, code = "answer-file-empty"): Marked => ({
  result: refused(sheet, file, null, [{ code, text, todo: "Do this." }]),
  work: null,
})
const graded = (file: string, points: number, over: Partial<Marked["result"]> = {}): Marked => ({
  result: { ...turnedAway(file, "").result, status: "graded", points, outOf: 7, problems: [], ...over },
  work: null,
})
function said(...files: Marked[]) {
  const counts = createCounts()
  for (const file of files) counts.add(file)
  return { text: counts.lines().join("\n"), wanting: counts.foundWanting() }
}

describe("what the terminal says of a class", () => {
  it("leaves out what there is none of, and gives averages one digit", () => {
    const { text, wanting } = said(graded("a", 7), graded("b", 5), graded("c", 5))
    expect(text).toBe("3 answer files: 3 marked.\n5.7 of 7 points on average; 1 with full points.")
    expect(wanting).toBe(false)
  })
  it("says once what many files are refused for, with what to do", () => {
    const other = Array.from({ length: 32 }, (_, i) =>
      turnedAway(`${i}.json`, "These answers belong to “buoy”.", "answer-other-worksheet"),
    )
    const { text, wanting } = said(...other, turnedAway("x.json", "It is empty."))
    expect(text.match(/buoy/g)).toHaveLength(1)
    expect(text).toMatch(/ {2}32 files: .*\n {4}Is this the right worksheet\?\n.*4\.json and 27 more/)
    expect(text).toMatch(/x\.json: It is empty\.\n {4}Do this\./)
    expect(wanting).toBe(true)
  })
  it("names the file that was left aside, and files of one id with different names, over which somebody must decide", () => {
    const aside = said(graded("a", 7), turnedAway("b", "The newest, “a”, counts.", "answer-superseded"))
    expect(aside.text).toMatch(/b: The newest, “a”, counts\./)
    expect(aside.wanting).toBe(false)
    const shared = [{ code: "answer-id-shared", text: "Two names.", todo: "Decide." }]
    const two = ["Vic Tim", "Someone Else"].map((name, i) =>
      graded(`f${i}`, 7, { student: { id: "s1", name }, problems: shared }),
    )
    expect(said(...two).text).toMatch(/“s1”: f0, by the name of “Vic Tim”\n.*f1.*“Someone Else”/)
    expect(said(...two).wanting).toBe(true)
  })
})
