import type { AnswerFile, Question, QuestionKey, Worksheet } from "../worksheet/contract.ts"
import type { CheckResult } from "./contract.ts"
import { readNumberAnswer } from "./number-answer.ts"

/** Rounding of an answer to the digits of a wide tolerance must not fail at its very edge. */
const edge = 1e-9

/** Results of the questions that a rule can mark; short texts are left for the teacher and do not count here. */
export function markQuestions({ sheet, keys }: Worksheet, answers: AnswerFile): CheckResult[] {
  return sheet.questions.flatMap(question => {
    const key = keys.find(k => k.name === question.name)
    if (question.kind === "text" || key === undefined) return []
    const given = answers.questions[question.name]
    const { right, message } =
      question.kind === "choice" ? markChoice(given, key) : markNumber(question, given, key)
    return [
      {
        name: question.name,
        verdict: right ? ("met" as const) : ("not met" as const),
        points: right ? question.points : 0,
        outOf: question.points,
        departsAt: null,
        slip: null,
        message,
      },
    ]
  })
}

interface Mark {
  readonly right: boolean
  readonly message: string
}

const unanswered: Mark = { right: false, message: "This question was not answered." }

function markChoice(given: string | number | null | undefined, key: QuestionKey): Mark {
  if (given === null || given === undefined || given === "") return unanswered
  const right = String(given) === String(key.answer)
  return { right, message: right ? "The choice is right." : "Another choice is right." }
}

function markNumber(question: Question, given: string | number | null | undefined, key: QuestionKey): Mark {
  const read = readNumberAnswer(given, question.unit)
  if (!read.ok) {
    switch (read.why) {
      case "empty":
        return unanswered
      case "no number":
        return { right: false, message: `“${String(given).slice(0, 40)}” is not a number.` }
      case "unit":
        return { right: false, message: "The unit behind the number is not known." }
      case "wrong quantity":
        return {
          right: false,
          message: `The unit belongs to another quantity; ${unitWords(question.unit)} was asked for.`,
        }
    }
  }
  const wanted = Number(key.answer)
  const allowed = Math.abs(wanted) * key.tolerance * (1 + edge) + Math.abs(wanted) * edge
  const near = (value: number): boolean =>
    Math.abs(value - wanted) <= (wanted === 0 ? key.tolerance : allowed)
  if (near(read.value)) return { right: true, message: "The number is right." }
  if (near(-read.value)) return { right: false, message: "The size is right, the sign is not." }
  const power = wanted === 0 || read.value === 0 ? 0 : Math.round(Math.log10(Math.abs(read.value / wanted)))
  if (power !== 0 && near(read.value / 10 ** power))
    return { right: false, message: "The digits are right, but the power of ten is not: look at the units." }
  return { right: false, message: "The number is not right." }
}

const unitWords = (unit: string): string => (unit === "1" ? "a pure number" : `a value in ${unit}`)
