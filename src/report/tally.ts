import type { Problem } from "../cell/problem.ts"
import type { CheckResult, Verdict } from "../judge/contract.ts"
import type { StudentSheet } from "../worksheet/contract.ts"
import type { Marked } from "./contract.ts"
import { hintIn } from "./hints.ts"
import { pointsOf } from "./results.ts"
import { haltsOf } from "./told.ts"

/** One line of the register: what is kept of a file once it has been passed. */
export interface Entry {
  readonly name: string
  readonly id: string
  readonly file: string
  /** not marked, whatever the reason */
  readonly refused: boolean
  /** not marked because the student handed in a newer file */
  readonly superseded: boolean
  readonly points: number
  readonly outOf: number
  /** by check and question of the sheet, in its order; null where nothing was judged */
  readonly verdicts: readonly (Verdict | null)[]
  readonly slips: readonly string[]
  /** why there is nothing to compare: an empty blank, what stopped the program; "" where there is */
  readonly note: string
  /** the first thing that is wrong with a file that was refused */
  readonly reason: Problem | null
}

export interface CheckTally {
  readonly counts: Readonly<Record<Verdict, number>>
  /** entries that did not meet it and whose motion is that of no known slip, blanks filled */
  readonly unexplained: readonly number[]
}

export interface ClassTally {
  readonly entries: readonly Entry[]
  readonly graded: number
  /** entries that could not be marked */
  readonly refused: readonly number[]
  /** how many files were left aside for a newer one of the same student */
  readonly superseded: number
  readonly full: number
  /** points that could be had */
  readonly outOf: number
  readonly mean: number
  readonly median: number
  readonly checks: ReadonlyMap<string, CheckTally>
  /** entries by slip, the most frequent first */
  readonly slips: readonly (readonly [slip: string, who: readonly number[]])[]
  /** by slip, what students are told of it */
  readonly hints: ReadonlyMap<string, Hints>
  /** entries by the code of what stopped their program, the most frequent first */
  readonly stopped: readonly (readonly [code: string, who: readonly number[]])[]
  /** entries that left a blank empty */
  readonly open: readonly number[]
  readonly answers: ReadonlyMap<string, AnswerTally>
}

/** Hints to one slip, each with the checks at which it stands. */
export type Hints = ReadonlyMap<string, ReadonlySet<string>>

/** How often something was answered, and how it was judged. */
export interface AnswerCount {
  readonly right: number
  readonly wrong: number
}

/** What was answered to one question. */
export interface AnswerTally {
  /** by what stands in the file */
  readonly given: ReadonlyMap<string, AnswerCount>
  /** answers that are too many to be kept apart */
  readonly others: AnswerCount
  /** files without an answer */
  readonly none: number
}

/** Answers to a number question that are kept apart; the rest are counted as one. */
const mostAnswers = 200

/** Names of everything that gives a verdict, in the order of the sheet. */
export const judged = (sheet: StudentSheet): string[] => [
  ...sheet.checks.map(check => check.name),
  ...sheet.questions.filter(question => question.kind !== "text").map(question => question.name),
]

/** Counts a class as its files pass; keeps of each some hundred bytes. */
export function createTally(sheet: StudentSheet) {
  const entries: Entry[] = []
  const names = judged(sheet)
  const checks = new Map(
    names.map(name => [
      name,
      {
        counts: { met: 0, "not met": 0, "could not run": 0 } as Record<Verdict, number>,
        unexplained: [] as number[],
      },
    ]),
  )
  const slips = new Map<string, number[]>()
  const hints = new Map<string, Map<string, Set<string>>>()
  const stopped = new Map<string, number[]>()
  const open: number[] = []
  const answers = new Map(sheet.questions.map(question => [question.name, noAnswers()]))

  return {
    /** @returns its place in the register */
    add(item: Marked): number {
      const { result, work } = item
      const place = entries.length
      const found = new Map(result.checks.map(check => [check.name, check]))
      const emptied = result.problems.some(problem => problem.code === "empty-blank")
      const mine = new Set(result.checks.flatMap(check => check.slip ?? []))
      const refused = result.status === "refused"
      const halt = haltsOf(result)[0]?.code
      entries.push({
        name: result.student?.name ?? "",
        id: result.student?.id ?? "",
        file: result.file,
        refused,
        superseded: isSuperseded(item),
        points: result.points,
        outOf: result.outOf,
        verdicts: names.map(name => found.get(name)?.verdict ?? null),
        slips: [...mine],
        note: [emptied ? "left empty" : "", halt?.replaceAll("-", " ") ?? ""].filter(Boolean).join(", "),
        reason: refused ? (result.problems[0] ?? null) : null,
      })
      if (refused) return place
      for (const [name, check] of found) {
        const tally = checks.get(name)
        if (tally === undefined) continue
        tally.counts[check.verdict]++
        const asked = sheet.checks.find(candidate => candidate.name === name)
        if (asked !== undefined && check.slip !== null) note(hints, check.slip, hintIn(check, asked), name)
        if (unexplained(check) && !emptied) tally.unexplained.push(place)
      }
      for (const slip of mine) push(slips, slip, place)
      if (emptied) open.push(place)
      if (halt !== undefined) push(stopped, halt, place)
      for (const [name, tally] of answers)
        tell(tally, work?.questions[name], found.get(name)?.verdict === "met")
      return place
    },
    finish(): ClassTally {
      const marked = entries.filter(entry => !entry.refused)
      const points = marked.map(entry => entry.points).sort((a, b) => a - b)
      const middle = points.length >> 1
      return {
        entries,
        graded: marked.length,
        refused: entries.flatMap((entry, place) => (entry.refused && !entry.superseded ? [place] : [])),
        superseded: entries.filter(entry => entry.superseded).length,
        full: marked.filter(isFull).length,
        outOf: marked[0]?.outOf ?? pointsOf(sheet),
        mean: points.reduce((sum, value) => sum + value, 0) / Math.max(1, points.length),
        median: points.length === 0 ? 0 : (points[middle]! + points[(points.length - 1) >> 1]!) / 2,
        checks,
        slips: byNumber(slips),
        hints,
        stopped: byNumber(stopped),
        open,
        answers,
      }
    },
  }
}

function note(
  hints: Map<string, Map<string, Set<string>>>,
  slip: string,
  words: string,
  check: string,
): void {
  if (words === "") return
  const known = hints.get(slip) ?? new Map<string, Set<string>>()
  hints.set(slip, known.set(words, (known.get(words) ?? new Set<string>()).add(check)))
}

/** A file that was left aside because its student handed in a newer one. */
export const isSuperseded = ({ result }: Marked): boolean =>
  result.status === "refused" && result.problems.some(problem => problem.code === "answer-superseded")

/** A file under an id that another name stands on too: whose marks these are, somebody has to decide first. */
export const isContested = ({ result }: Marked): boolean =>
  result.problems.some(problem => problem.code === "answer-id-shared")

export const isFull = (entry: Entry): boolean => !entry.refused && entry.points >= entry.outOf

const unexplained = (check: CheckResult): boolean => check.verdict === "not met" && check.slip === null

const noAnswers = () => ({
  given: new Map<string, { right: number; wrong: number }>(),
  others: { right: 0, wrong: 0 },
  none: 0,
})

function tell(
  tally: ReturnType<typeof noAnswers>,
  given: string | number | null | undefined,
  right: boolean,
): void {
  const key = given === null || given === undefined ? "" : String(given).trim().slice(0, 80)
  if (key === "") {
    tally.none++
    return
  }
  let count = tally.given.get(key)
  if (count === undefined && tally.given.size < mostAnswers)
    tally.given.set(key, (count = { right: 0, wrong: 0 }))
  ;(count ?? tally.others)[right ? "right" : "wrong"]++
}

function push(lists: Map<string, number[]>, key: string, place: number): void {
  const list = lists.get(key)
  if (list === undefined) lists.set(key, [place])
  else list.push(place)
}

const byNumber = (lists: ReadonlyMap<string, readonly number[]>) =>
  [...lists].sort(([a, whoA], [b, whoB]) => whoB.length - whoA.length || (a < b ? -1 : 1))
