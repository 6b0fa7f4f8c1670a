import { describe, expect, it } from "vitest"
import { answerFileName, makeAnswerFile, openAnswerFile } from "../../src/page/keep/answerFile.ts"
import { numberWords } from "../../src/page/reader/QuestionBlock.tsx"
import { readAnswerFile, writeAnswerFile } from "../../src/worksheet/answers.ts"
import { smallEdition } from "./fixtures/edition.ts"

const { sheet } = smallEdition()
const student = { id: "1042", name: "Mara Quill" } // invented
const texts = {
  answers: { net: "mass * g", update: "  p = p + F * dt" },
  questions: { speed: "−3,5", why: "It falls.", first: "a" },
}
const file = makeAnswerFile(sheet, student, texts, new Date("2026-11-14T10:02:00Z"))

describe("the answer file", () => {
  it("has the agreed keys, in the agreed order, and nothing else", () => {
    expect(JSON.stringify(file)).toBe(
      JSON.stringify({
        format: "deltasheet-answers/1",
        worksheet: { id: "bell-buoy", version: 2, digest: "d1" },
        student: { id: "1042", name: "Mara Quill" },
        seed: 1,
        answers: { net: "mass * g", update: "  p = p + F * dt" },
        questions: { speed: "−3,5", why: "It falls.", first: "a" },
        savedAt: "2026-11-14T10:02:00.000Z",
      }),
    )
  })
  it("is accepted by the reader that marks it", () => {
    expect(readAnswerFile(writeAnswerFile(file))).toEqual({ ok: true, answers: file })
  })
  it("names every blank, with its starter where nothing was typed", () => {
    const empty = makeAnswerFile(sheet, student, { answers: {}, questions: {} }, new Date(0))
    expect(empty.answers).toEqual({ net: "", update: "  // p = ..." })
    expect(empty.questions).toEqual({ speed: null, why: null, first: null })
  })
  it("has a name that sorts by worksheet and student", () => {
    expect(answerFileName(file)).toBe("bell-buoy-1042.json")
    expect(answerFileName({ ...file, student: { id: "../x y", name: "" } })).toBe("bell-buoy-x-y.json")
  })
})

describe("opening an answer file", () => {
  const open = (text: string, bytes = text.length) => openAnswerFile(sheet, bytes, text)
  it("gives back what was written", () => {
    const opened = open(writeAnswerFile(file))
    expect(opened.kind === "fits" && opened.texts).toEqual({
      answers: texts.answers,
      questions: { speed: "−3,5", why: "It falls.", first: "a" },
    })
  })
  it.each([
    ["broken JSON", "{", "answer-file-not-json"],
    ["an empty file", "", "answer-file-empty"],
    ["some other JSON", "[1]", "answer-file-format"],
    [
      "another worksheet's",
      writeAnswerFile({ ...file, worksheet: { ...file.worksheet, id: "fender" } }),
      "answer-other-worksheet",
    ],
  ])("%s is refused in words", (_what, text, code) => {
    const opened = open(text)
    expect(opened.kind === "refused" && opened.problem.code).toBe(code)
    expect(opened.kind === "refused" && opened.problem.todo).toMatch(/\.$/)
  })
  it("a huge file is refused by its size, unread", () => {
    const opened = open("", 100_000_000)
    expect(opened.kind === "refused" && opened.problem.code).toBe("answer-file-too-large")
  })
  it("another edition's is not taken without asking, and what fits is ready", () => {
    const opened = open(
      writeAnswerFile({
        ...file,
        worksheet: { ...file.worksheet, digest: "other" },
        answers: { net: "a", gone: "b" },
      }),
    )
    expect(opened.kind).toBe("other-edition")
    expect(opened.kind === "other-edition" && opened.texts.answers).toEqual({ net: "a" })
  })
})

describe("the answer to a question for a number", () => {
  const given = (speed: string) =>
    makeAnswerFile(sheet, student, { answers: {}, questions: { speed } }, new Date(0)).questions.speed
  it.each([
    ["3.2", 3.2],
    ["-0.5", -0.5],
    ["3,2", "3,2"],
    ["12 km/h", "12 km/h"],
    ["1.50", "1.50"],
    ["Infinity", "Infinity"],
    ["about 3", "about 3"],
    [" ", null],
  ])("%j is handed in as %j", (typed, value) => expect(given(typed)).toBe(value))
  it.each([
    ["3,2", ""],
    ["12 km/h", ""],
    ["", ""],
    ["about 3", /number in m\/s is wanted/],
    ["3 kg", /another quantity/],
    ["3 xyz", /not known/],
  ])("%j is commented with %s", (typed, words) => expect(numberWords(typed, "m/s")).toMatch(words))
})
