import { readNumberAnswer } from "../judge/number-answer.ts"
import type { Question, StudentSheet } from "../worksheet/contract.ts"
import type { Marked } from "./contract.ts"
import { savedInstant } from "./instant.ts"
import { isContested } from "./tally.ts"
import { uuidOf } from "./uuid.ts"

/** Home of the activity ids and accounts; `.example` belongs to nobody (RFC 2606). */
const home = "https://deltasheet.example"
const verbs = "http://adlnet.gov/expapi/verbs"
const activities = "http://adlnet.gov/expapi/activities"

interface Score {
  readonly scaled: number
  readonly raw: number
  readonly min: number
  readonly max: number
}

/** A statement of the Experience API 1.0.3, as far as it is used here. */
export interface Statement {
  readonly id: string
  readonly actor: {
    readonly objectType: "Agent"
    readonly account: { readonly homePage: string; readonly name: string }
  }
  readonly verb: { readonly id: string; readonly display: Readonly<Record<string, string>> }
  readonly object: Activity
  readonly result: {
    readonly score?: Score
    readonly success?: boolean
    readonly completion?: boolean
    readonly response?: string
  }
  readonly context: {
    readonly contextActivities?: { readonly parent: readonly Activity[] }
    readonly platform: string
    readonly language: string
  }
  readonly timestamp?: string
}

interface Activity {
  readonly objectType: "Activity"
  readonly id: string
  readonly definition?: {
    readonly name: Readonly<Record<string, string>>
    readonly description?: Readonly<Record<string, string>>
    readonly type: string
    readonly interactionType?: "choice" | "numeric" | "long-fill-in"
    readonly choices?: readonly {
      readonly id: string
      readonly description: Readonly<Record<string, string>>
    }[]
  }
}

/**
 * Statements of one marked file (Experience API 1.0.3, part two): the worksheet was scored, each check was passed or
 * failed, each question was answered. Students are accounts by their id alone, without their names; right answers
 * are not told. Nothing for a file that was refused, or whose id is missing or claimed by two names. Times are those of the answer file.
 */
export function statementsOf(sheet: StudentSheet, marked: Marked): Statement[] {
  const { result, work } = marked
  const student = result.student?.id.trim() ?? ""
  if (result.status !== "graded" || work === null || student === "" || isContested(marked)) return []
  const base = `${home}/worksheets/${encodeURIComponent(sheet.id)}/${sheet.version}`
  const instant = savedInstant(marked)
  const statement = (item: string, rest: Pick<Statement, "verb" | "object" | "result">): Statement => ({
    id: uuidOf("statement", sheet.digest, result.file, student, item),
    actor: { objectType: "Agent", account: { homePage: `${home}/students`, name: student } },
    ...rest,
    context: {
      ...(item === "" ? {} : { contextActivities: { parent: [{ objectType: "Activity", id: base }] } }),
      platform: "Deltasheet",
      language: "en",
    },
    ...(instant === null ? {} : { timestamp: instant }),
  })
  const found = new Map(result.checks.map(check => [check.name, check]))
  return [
    statement("", {
      verb: verb("scored"),
      object: {
        objectType: "Activity",
        id: base,
        definition: {
          name: { en: sheet.title },
          ...(sheet.summary === "" ? {} : { description: { en: sheet.summary } }),
          type: `${activities}/assessment`,
        },
      },
      result: { ...scored(result.points, result.outOf), completion: true },
    }),
    ...sheet.checks.flatMap(check => {
      const verdict = found.get(check.name)
      if (verdict === undefined) return []
      const met = verdict.verdict === "met"
      return [
        statement(`check ${check.name}`, {
          verb: verb(met ? "passed" : "failed"),
          object: {
            objectType: "Activity",
            id: `${base}/checks/${encodeURIComponent(check.name)}`,
            definition: {
              name: { en: check.name },
              ...(check.says === "" ? {} : { description: { en: check.says } }),
              type: `${activities}/objective`,
            },
          },
          result: {
            ...scored(verdict.points, verdict.outOf),
            success: met,
            completion: verdict.verdict !== "could not run",
          },
        }),
      ]
    }),
    ...sheet.questions.flatMap(question => {
      const given = work.questions[question.name]
      if (given === undefined || given === null || given === "") return []
      const verdict = found.get(question.name)
      const response = responseOf(question, given)
      return [
        statement(`question ${question.name}`, {
          verb: verb("answered"),
          object: questionActivity(base, question),
          result: {
            ...(verdict === undefined
              ? {}
              : { ...scored(verdict.points, verdict.outOf), success: verdict.verdict === "met" }),
            ...(response === null ? {} : { response }),
          },
        }),
      ]
    }),
  ]
}

const verb = (name: string): Statement["verb"] => ({ id: `${verbs}/${name}`, display: { en: name } })

/** No score where there is nothing to score: `max` must be greater than `min`. */
const scored = (raw: number, max: number): { score?: Score } =>
  max > 0 ? { score: { scaled: Math.min(1, Math.max(0, raw / max)), raw, min: 0, max } } : {}

function questionActivity(base: string, question: Question): Activity {
  return {
    objectType: "Activity",
    id: `${base}/questions/${encodeURIComponent(question.name)}`,
    definition: {
      name: { en: question.name },
      description: { en: question.ask },
      type: `${activities}/cmi.interaction`,
      ...interaction(question),
    },
  }
}

/** An answer in the form that its kind of interaction asks for; null when it has not that form. */
function responseOf(question: Question, given: string | number): string | null {
  switch (question.kind) {
    case "choice":
      return question.choices.some(choice => choice.key === String(given)) ? String(given) : null
    case "number": {
      const read = readNumberAnswer(given, question.unit)
      return read.ok ? String(read.value) : null
    }
    case "text":
      return String(given)
  }
}

function interaction(question: Question): Partial<NonNullable<Activity["definition"]>> {
  switch (question.kind) {
    case "choice":
      return {
        interactionType: "choice",
        choices: question.choices.map(({ key, text }) => ({ id: key, description: { en: text } })),
      }
    case "number":
      return { interactionType: "numeric" }
    case "text":
      return { interactionType: "long-fill-in" }
  }
}
