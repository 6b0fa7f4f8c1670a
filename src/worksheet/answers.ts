import * as v from "valibot"
import type { Problem } from "../cell/problem.ts"
import type { AnswerFile, StudentSheet } from "./contract.ts"
import { suggest } from "./nearest.ts"
import { normalise } from "./source.ts"

/** Larger than any honest answer file; a file above it is refused unread. */
export const maxAnswerFileBytes = 2_000_000

/** Unknown blanks that are named; a file may hold a hundred thousand of them. */
const mostUnknown = 5

/** Lengths that an honest answer file stays under. */
const maxBlankText = 100_000
const maxName = 200

const shortText = v.pipe(v.string(), v.maxLength(maxName, `=is longer than ${maxName} characters`))

const answerSchema = v.object({
  format: v.literal("deltasheet-answers/1"),
  worksheet: v.object({
    id: shortText,
    version: v.pipe(v.number(), v.integer()),
    digest: shortText,
  }),
  student: v.object({ id: shortText, name: shortText }),
  seed: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(4_294_967_295)),
  answers: v.record(
    v.string(),
    v.pipe(v.string(), v.maxLength(maxBlankText, `=is longer than ${maxBlankText} characters`)),
  ),
  questions: v.record(
    v.string(),
    v.union([v.string(), v.pipe(v.number(), v.finite("=is a number too large to reckon with")), v.null()]),
  ),
  savedAt: v.pipe(v.string(), v.maxLength(40)),
})

export type AnswerFileResult =
  | { readonly ok: true; readonly answers: AnswerFile }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads an answer file from its text. What is not one is refused in words; what one holds beyond the format is
 * left aside.
 */
export function readAnswerFile(text: string): AnswerFileResult {
  if (text.length > maxAnswerFileBytes) return refuse(tooLarge(text.length))
  const plain = normalise(text)
  if (plain.trim() === "")
    return refuse({
      code: "answer-file-empty",
      text: "The answer file is empty.",
      todo: "Download the answer file from the worksheet again.",
    })
  let raw: unknown
  try {
    raw = JSON.parse(plain)
  } catch {
    return refuse({
      code: "answer-file-not-json",
      text: "The answer file cannot be read: it is not JSON, or it was cut short or changed on its way.",
      todo: "Download the answer file from the worksheet again and hand in that file unchanged.",
    })
  }
  const format = isObject(raw) ? raw.format : undefined
  if (format !== "deltasheet-answers/1")
    return refuse({
      code: "answer-file-format",
      text:
        typeof format === "string"
          ? `The file says that it is “${format.slice(0, 60)}”; an answer file says “deltasheet-answers/1”.`
          : "The file does not say that it is an answer file.",
      todo: "Hand in the file that “Download answer file” in the worksheet gives.",
    })
  const result = v.safeParse(answerSchema, raw)
  if (result.success) return { ok: true, answers: result.output }
  return {
    ok: false,
    problems: result.issues.slice(0, 5).map(issue => {
      const path = (issue.path ?? []).map(item => String(item.key)).join(".")
      return {
        code: "answer-file-value",
        text: `In the answer file “${path.slice(0, 80)}” ${issue.message.startsWith("=") ? issue.message.slice(1) : "is missing or of the wrong kind"}.`,
        todo: "Download the answer file from the worksheet again; it should not be edited by hand.",
      }
    }),
  }
}

/** Whether the answers belong to this worksheet: same id, version and task, no blank missing, none unknown. */
export function matchAnswers(sheet: StudentSheet, file: AnswerFile): Problem[] {
  if (file.worksheet.id !== sheet.id)
    return [
      {
        code: "answer-other-worksheet",
        text: `These answers belong to the worksheet “${file.worksheet.id}”; this is “${sheet.id}”.`,
        todo: "Choose the answer file of this worksheet.",
      },
    ]
  if (file.worksheet.version !== sheet.version)
    return [
      {
        code: "answer-other-version",
        text: `These answers were written on version ${file.worksheet.version} of the worksheet; this is version ${sheet.version}.`,
        todo: "Mark them with the version that was handed out, or let the student copy them into the new one.",
      },
    ]
  if (file.worksheet.digest !== sheet.digest)
    return [
      {
        code: "answer-other-digest",
        text: "These answers were written on another edition of the worksheet: its given lines, parameters or blanks were different, though the version is the same.",
        todo: "Mark them with the worksheet file that was handed out; raise the version whenever the task changes.",
      },
    ]
  const blanks = sheet.cells.flatMap(cell => cell.segments.flatMap(s => (s.kind === "blank" ? [s.name] : [])))
  const missing = blanks.filter(name => !Object.hasOwn(file.answers, name))
  const unknown = Object.keys(file.answers).filter(name => !blanks.includes(name))
  return [
    ...missing.map(name => ({
      code: "answer-missing-blank",
      text: `The answer file says nothing about the blank “${name}”; it counts as empty.`,
      todo: "Download the answer file from the worksheet again if something was written there.",
    })),
    ...unknown.slice(0, mostUnknown).map(name => ({
      code: "answer-unknown-blank",
      text: `The answer file fills a blank “${name.slice(0, 60)}” that the worksheet does not have; it is left aside.`,
      todo: suggest(name.slice(0, 60), blanks),
    })),
    ...(unknown.length <= mostUnknown
      ? []
      : [
          {
            code: "answer-unknown-blank",
            text: `It fills ${unknown.length - mostUnknown} more blanks that the worksheet does not have; they are left aside.`,
            todo: "Hand in the file that “Download answer file” in the worksheet gives.",
          },
        ]),
  ]
}

/** Problems of matchAnswers that leave nothing to mark. */
export function refuses(problem: Problem): boolean {
  return ["answer-other-worksheet", "answer-other-version", "answer-other-digest"].includes(problem.code)
}

/** The text of an answer file, keys in a fixed order, blanks in the worksheet's order. */
export function writeAnswerFile(file: AnswerFile): string {
  const { format, worksheet, student, seed, answers, questions, savedAt } = file
  return `${JSON.stringify({ format, worksheet, student, seed, answers, questions, savedAt }, null, 2)}\n`
}

export function tooLarge(bytes: number): Problem {
  return {
    code: "answer-file-too-large",
    text: `The file has ${(bytes / 1e6).toFixed(1)} MB; an answer file has at most ${maxAnswerFileBytes / 1e6} MB.`,
    todo: "Hand in the file that “Download answer file” in the worksheet gives.",
  }
}

function refuse(problem: Problem): AnswerFileResult {
  return { ok: false, problems: [problem] }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value)
}
