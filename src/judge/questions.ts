import type { AnswerFile, Question, QuestionKey, Worksheet } from "../worksheet/contract.ts"
import type { CheckResult } from "./contract.ts"
import { type Figures, readNumberAnswer } from "./number-answer.ts"

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
  const allowed =
    Math.max(Math.abs(wanted) * key.tolerance, roundingOf(wanted, key.figures)) * (1 + edge) +
    Math.abs(wanted) * edge
  const near = (value: number): boolean =>
    Math.abs(value - wanted) <= (wanted === 0 ? key.tolerance : allowed)
  if (near(read.value)) return withFigures(read.figures, key.figures)
  if (near(-read.value)) return { right: false, message: "The size is right, the sign is not." }
  const power = wanted === 0 || read.value === 0 ? 0 : Math.round(Math.log10(Math.abs(read.value / wanted)))
  if (power !== 0 && near(read.value / 10 ** power))
    return { right: false, message: "The digits are right, but the power of ten is not: look at the units." }
  return { right: false, message: "The number is not right." }
}

/** Half a unit of the last figure that is asked for: an answer rounded to it is right. */
function roundingOf(wanted: number, figures: number | null): number {
  if (figures === null || wanted === 0) return 0
  return 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(wanted))) + 1 - figures)
}

/** One figure more than is asked for does no harm; two more claim what nobody knows. */
const spareFigures = 1

function withFigures({ least, most }: Figures, asked: number | null): Mark {
  if (asked === null) return { right: true, message: "The number is right." }
  if (most < asked)
    return {
      right: false,
      message: `The size is right, but it is given with ${count(most)}, and ${asked} are asked for. A zero at the end counts: write it.`,
    }
  if (least > asked + spareFigures)
    return {
      right: false,
      message: `The size is right, but it is given with ${count(least)}, and ${asked} are asked for: more than the data can tell.`,
    }
  return { right: true, message: "The number is right, and so is the number of its figures." }
}

const count = (figures: number): string => `${figures} significant figure${figures === 1 ? "" : "s"}`

const unitWords = (unit: string): string => (unit === "1" ? "a pure number" : `a value in ${unit}`)
