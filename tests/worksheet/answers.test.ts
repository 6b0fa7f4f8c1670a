import { describe, expect, it } from "vitest"
import { matchAnswers, readAnswerFile } from "../../src/worksheet/index.ts"
import { answerFile, shipped } from "../support/class.ts"

const worksheet = shipped("lamp-key")

describe("an answer file", () => {
  it("with ever so many unknown blanks has five of them named and the rest counted", () => {
    const many = Object.fromEntries(Array.from({ length: 20_000 }, (_, i) => [`b${i}`, ""]))
    const read = readAnswerFile(answerFile(worksheet, 1, { update: "", formula: "", ...many }))
    if (!read.ok) throw new Error("should be read")
    const problems = matchAnswers(worksheet.sheet, read.answers)
    expect(problems).toHaveLength(6)
    expect(problems[5]).toMatchObject({
      code: "answer-unknown-blank",
      text: expect.stringMatching(/19995 more/),
    })
  })
  it("with a number past all numbers is refused in words", () => {
    const text = answerFile(worksheet, 1, { update: "", formula: "" }, { speed: 1 })
    expect(text).toContain('"speed": 1')
    const read = readAnswerFile(text.replace('"speed": 1', '"speed": 1e999'))
    expect(read).toMatchObject({
      ok: false,
      problems: [
        { code: "answer-file-value", text: expect.stringMatching(/“questions.speed” is a number too large/) },
      ],
    })
  })
})
