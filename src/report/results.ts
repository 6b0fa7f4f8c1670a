import type { Problem } from "../cell/problem.ts"
import type { CheckResult, Judgement } from "../judge/contract.ts"
import type { StudentSheet } from "../worksheet/contract.ts"

/** One line of the markbook: what became of one file that was handed in. */
export interface Result {
  readonly file: string
  readonly student: { readonly id: string; readonly name: string } | null
  readonly status: "graded" | "refused"
  readonly points: number
  readonly outOf: number
  readonly checks: readonly CheckResult[]
  /** short texts, which no rule marks: for the teacher to read */
  readonly toRead: Readonly<Record<string, string>>
  readonly problems: readonly Problem[]
}

/** deltasheet-results/1: the whole of results.json. Holds no time and no path but those handed in. */
export interface Results {
  readonly format: "deltasheet-results/1"
  readonly worksheet: {
    readonly id: string
    readonly version: number
    readonly digest: string
    readonly title: string
  }
  readonly results: readonly Result[]
}

/** Points that a worksheet gives in all. */
export function pointsOf(sheet: StudentSheet): number {
  const sum = (list: readonly { points: number }[]): number =>
    list.reduce((total, item) => total + item.points, 0)
  return sum(sheet.checks) + sum(sheet.questions)
}

/** A file that could not be marked, with the reason. */
export function refused(
  sheet: StudentSheet,
  file: string,
  student: Result["student"],
  problems: readonly Problem[],
): Result {
  return {
    file,
    student,
    status: "refused",
    points: 0,
    outOf: pointsOf(sheet),
    checks: [],
    toRead: {},
    problems,
  }
}

/** A file that was marked. */
export function graded(
  file: string,
  student: NonNullable<Result["student"]>,
  judgement: Judgement,
  toRead: Result["toRead"],
  problems: readonly Problem[],
): Result {
  const { points, outOf, checks } = judgement
  return {
    file,
    student,
    status: "graded",
    points,
    outOf,
    checks,
    toRead,
    problems: [...problems, ...judgement.problems],
  }
}

/** results.json, keys in a fixed order: the same results give the same bytes. */
export function resultsJson(sheet: StudentSheet, results: readonly Result[]): string {
  const { id, version, digest, title } = sheet
  const whole: Results = {
    format: "deltasheet-results/1",
    worksheet: { id, version, digest, title },
    results,
  }
  return `${JSON.stringify(whole, null, 2)}\n`
}
