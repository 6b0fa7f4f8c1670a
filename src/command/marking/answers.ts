import { createHash } from "node:crypto"
import type { Problem } from "../../cell/problem.ts"
import {
  type AnswerFile,
  matchAnswers,
  readAnswerFile,
  refuses,
  type Worksheet,
} from "../../worksheet/index.ts"
import type { Handed } from "../collect.ts"
import { decodeUtf8 } from "../files.ts"

/** What was handed in, read: answers and the worksheet that they belong to, or why they cannot be marked. */
export type ReadAnswers =
  | {
      readonly ok: true
      readonly answers: AnswerFile
      readonly worksheet: Worksheet
      /** digest of its bytes: tells the same file handed in twice */
      readonly bytes: string
      readonly problems: readonly Problem[]
    }
  | {
      readonly ok: false
      readonly student: AnswerFile["student"] | null
      readonly problems: readonly Problem[]
    }

/** @param worksheets the one to be marked first, then earlier versions of it that are at hand */
export function readHanded(item: Handed, worksheets: readonly Worksheet[]): ReadAnswers {
  const bytes = item.read()
  if (!(bytes instanceof Uint8Array)) return refusal(null, [bytes])
  const text = decodeUtf8(bytes)
  if (text === null)
    return refusal(null, [
      {
        code: "not-utf-8",
        text: "The answer file is not written in UTF-8.",
        todo: "Hand in the downloaded file unchanged.",
      },
    ])
  const read = readAnswerFile(text)
  if (!read.ok) return refusal(null, read.problems)
  const { answers } = read
  const [current] = worksheets
  const worksheet = worksheets.find(({ sheet }) => sheet.digest === answers.worksheet.digest) ?? current!
  const problems = matchAnswers(worksheet.sheet, answers)
  if (problems.some(refuses)) return refusal(answers.student, matchAnswers(current!.sheet, answers))
  const { version } = worksheet.sheet
  const earlier: Problem[] =
    worksheet === current
      ? []
      : [
          {
            code: "answer-earlier-version",
            text: `These answers were written on version ${version} of the worksheet, and were marked against that version.`,
            todo: "Compare points with care: the versions may differ in what they ask.",
          },
        ]
  const digest = createHash("sha256").update(bytes).digest("hex")
  return { ok: true, answers, worksheet, bytes: digest, problems: [...earlier, ...problems] }
}

const refusal = (student: AnswerFile["student"] | null, problems: readonly Problem[]): ReadAnswers => ({
  ok: false,
  student,
  problems,
})
