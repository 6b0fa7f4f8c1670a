import type { Problem } from "../../cell/problem.ts"
import { judgeSeed } from "../../judge/tools.ts"
import { maxAnswerFileBytes, readAnswerFile, tooLarge } from "../../worksheet/answers.ts"
import type { AnswerFile, StudentSheet } from "../../worksheet/contract.ts"
import type { Student } from "./device.ts"
import type { Texts } from "./keeper.ts"

/** The answer to a question for a number: a plain number as one, anything else (a unit, a comma) as it was typed. */
function numberOrText(typed: string): number | string {
  const plain = typed.trim()
  return plain !== "" && String(Number(plain)) === plain && Number.isFinite(Number(plain))
    ? Number(plain)
    : typed
}

/** What a student hands in. */
export function makeAnswerFile(
  sheet: StudentSheet,
  student: Student,
  texts: Texts,
  savedAt: Date,
): AnswerFile {
  const answers: Record<string, string> = {}
  for (const cell of sheet.cells)
    for (const segment of cell.segments)
      if (segment.kind === "blank") answers[segment.name] = texts.answers[segment.name] ?? segment.starter
  const questions: Record<string, string | number | null> = {}
  for (const { name, kind } of sheet.questions) {
    const typed = texts.questions[name] ?? ""
    questions[name] = typed.trim() === "" ? null : kind === "number" ? numberOrText(typed) : typed
  }
  return {
    format: "deltasheet-answers/1",
    worksheet: { id: sheet.id, version: sheet.version, digest: sheet.digest },
    student: { id: student.id.trim(), name: student.name.trim() },
    seed: judgeSeed,
    answers,
    questions,
    savedAt: savedAt.toISOString(),
  }
}

/** A name for the file that a teacher can sort: worksheet, then student. */
export function answerFileName(file: AnswerFile): string {
  const plain = (text: string): string => text.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "")
  return `${[plain(file.worksheet.id), plain(file.student.id || file.student.name) || "answers"].join("-")}.json`
}

/** What a file chosen by the student comes to. */
export type Opened =
  | {
      readonly kind: "fits"
      readonly file: AnswerFile
      readonly texts: Texts
      readonly left: readonly string[]
    }
  | {
      /** written on another edition: what fits may still be brought over, if the student says so */
      readonly kind: "other-edition"
      readonly file: AnswerFile
      readonly texts: Texts
      readonly problem: Problem
    }
  | { readonly kind: "refused"; readonly problem: Problem }

/** Reads an answer file for this sheet; whatever the file is, nothing of the sheet is changed yet. */
export function openAnswerFile(sheet: StudentSheet, bytes: number, text: string): Opened {
  if (bytes > maxAnswerFileBytes) return { kind: "refused", problem: tooLarge(bytes) }
  const read = readAnswerFile(text)
  if (!read.ok) return { kind: "refused", problem: read.problems[0]! }
  const file = read.answers
  if (file.worksheet.id !== sheet.id)
    return {
      kind: "refused",
      problem: {
        code: "answer-other-worksheet",
        text: `That file belongs to the worksheet “${file.worksheet.id}”; this is “${sheet.id}”.`,
        todo: "Open it on its own worksheet; nothing here was changed.",
      },
    }
  const blanks = sheet.cells.flatMap(cell => cell.segments.flatMap(s => (s.kind === "blank" ? [s.name] : [])))
  const questions = sheet.questions.map(question => question.name)
  const texts: Texts = {
    answers: Object.fromEntries(Object.entries(file.answers).filter(([name]) => blanks.includes(name))),
    questions: Object.fromEntries(
      Object.entries(file.questions)
        .filter(([name]) => questions.includes(name))
        .map(([name, value]) => [name, value === null ? "" : String(value)]),
    ),
  }
  if (file.worksheet.version !== sheet.version || file.worksheet.digest !== sheet.digest)
    return {
      kind: "other-edition",
      file,
      texts,
      problem: {
        code: file.worksheet.version !== sheet.version ? "answer-other-version" : "answer-other-digest",
        text: `That file was written on another edition of this worksheet (version ${file.worksheet.version}; this is version ${sheet.version}).`,
        todo: "Blanks and questions of the same name can be brought over; nothing here has been changed yet.",
      },
    }
  const left = Object.keys(file.answers).filter(name => !blanks.includes(name))
  return { kind: "fits", file, texts, left }
}
