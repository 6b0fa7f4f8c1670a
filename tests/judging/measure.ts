import { createReferences, type Judgement, type JudgeTools, markAnswer } from "../../src/judge/index.ts"
import { inTurns } from "../../src/judge/thrifty.ts"
import type { AnswerFile, Worksheet } from "../../src/worksheet/index.ts"
import { shipped } from "../support/class.ts"
import type { Corpus, QuestionAnswers, RightAnswer, WrongAnswer } from "./corpus/corpus.ts"

export interface Marked<A> {
  readonly answer: A
  readonly judgement: Judgement
  /** checks of the worksheet that are not met, and questions that the answer itself answers */
  readonly unmet: readonly string[]
  readonly named: readonly string[]
}

export interface Measured {
  readonly corpus: Corpus
  readonly worksheet: Worksheet
  readonly right: readonly Marked<RightAnswer>[]
  readonly wrong: readonly Marked<WrongAnswer>[]
}

/** Marks every answer of a corpus as the marker would, hidden draws included. */
export async function measure(corpus: Corpus, tools: JudgeTools): Promise<Measured> {
  const worksheet = shipped(corpus.worksheet)
  const references = createReferences()
  let number = 0
  const mark = async <A extends RightAnswer>(answer: A): Promise<Marked<A>> => {
    const judgement = await markAnswer(
      worksheet,
      fileOf(worksheet, answer.answers, ++number, answer.questions),
      tools,
      references,
    )
    const names = new Set([
      ...worksheet.sheet.checks.map(check => check.name),
      ...Object.keys(answer.questions ?? {}),
    ])
    const unmet = judgement.checks.filter(check => names.has(check.name) && check.verdict !== "met")
    const named = [...new Set(unmet.flatMap(check => check.slip ?? []))]
    return { answer, judgement, unmet: unmet.map(check => check.name), named }
  }
  const right = await inTurns(corpus.right, answer => mark(answer))
  const wrong = await inTurns(corpus.wrong, answer => mark(answer))
  return { corpus, worksheet, right, wrong }
}

export function fileOf(
  worksheet: Worksheet,
  answers: Readonly<Record<string, string>>,
  seed: number,
  questions: QuestionAnswers = {},
): AnswerFile {
  const { id, version, digest } = worksheet.sheet
  return {
    format: "deltasheet-answers/1",
    worksheet: { id, version, digest },
    student: { id: `s${seed}`, name: `Student ${seed}` },
    seed,
    answers: { ...worksheet.answers, ...answers },
    questions: { ...Object.fromEntries(worksheet.keys.map(key => [key.name, key.answer])), ...questions },
    savedAt: "2026-11-25T09:00:00.000Z",
  }
}
