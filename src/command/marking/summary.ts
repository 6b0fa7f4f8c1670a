import { join } from "node:path"
import type { Problem } from "../../cell/problem.ts"
import { isContested, type Marked } from "../../report/index.ts"
import { count } from "../say.ts"
import type { Way } from "./mark-all.ts"

/** What is named of each kind; all of it stands in the results. */
const mostNamed = { refused: 20, aside: 20, shared: 20, halted: 10, passed: 20, ofOneReason: 5 }

export interface Counts {
  add(marked: Marked): void
  /** whether a file was refused for another reason than that another of its student counts, or somebody must decide */
  foundWanting(): boolean
  lines(): string[]
}

interface Reason {
  readonly problem: Problem
  readonly files: string[]
  count: number
}

/** What the class looks like, in a few lines, counted one file at a time. */
export function createCounts(): Counts {
  let [graded, full, sum, outOf, refused] = [0, 0, 0, 0, 0]
  const [halted, aside, shared] = [
    createNames(mostNamed.halted),
    createNames(mostNamed.aside),
    createNames(mostNamed.shared),
  ]
  const reasons = new Map<string, Reason>()
  return {
    add(marked) {
      const { result } = marked
      if (result.status === "graded") {
        graded++
        sum += result.points
        outOf = Math.max(outOf, result.outOf)
        if (result.points === result.outOf) full++
        if (result.checks.some(check => check.verdict === "could not run")) halted.add(result.file)
        if (isContested(marked))
          shared.add(
            `  “${result.student?.id.trim()}”: ${result.file}, by the name of “${result.student?.name.trim()}”`,
          )
        return
      }
      const superseded = result.problems.find(({ code }) => code === "answer-superseded")
      if (superseded !== undefined) {
        aside.add(`  ${result.file}: ${superseded.text}`)
        return
      }
      refused++
      const [problem] = result.problems
      if (problem === undefined) return
      const reason = reasons.get(problem.text)
      if (reason === undefined) {
        // where nearly every file has a reason of its own, the first will do
        if (reasons.size < mostNamed.refused)
          reasons.set(problem.text, { problem, files: [result.file], count: 1 })
        return
      }
      reason.count++
      if (reason.files.length < mostNamed.ofOneReason) reason.files.push(result.file)
    },
    foundWanting: () => refused > 0 || shared.count() > 0,
    lines() {
      const all = graded + refused + aside.count()
      const parts = listed([
        [graded, "marked"],
        [aside.count(), "left aside"],
        [refused, "refused"],
      ])
      const lines = [`${count(all, "answer file")}: ${parts}.`]
      if (graded > 0)
        lines.push(
          `${(sum / graded).toFixed(1)} of ${outOf} points on average; ${full === 0 ? "none" : full} with full points.`,
        )
      if (halted.count() > 0)
        lines.push(
          `${count(halted.count(), "program")} could not run: ${halted.names().join(", ")}${halted.more()}.`,
        )
      if (aside.count() > 0)
        lines.push(
          `${count(aside.count(), "file")} left aside, since another of the same student counts:`,
          ...aside.names(),
          ...andMore(aside.count() - aside.names().length),
        )
      if (shared.count() > 0)
        lines.push(
          "Different names under one id. All were marked; find out which should count:",
          ...shared.names(),
          ...andMore(shared.count() - shared.names().length),
        )
      if (refused > 0)
        lines.push(`${count(refused, "file")} refused:`, ...[...reasons.values()].flatMap(reasonLines))
      const told = [...reasons.values()].reduce((total, reason) => total + reason.count, 0)
      return [...lines, ...andMore(refused - told)]
    },
  }
}

const andMore = (n: number): string[] => (n > 0 ? [`  and ${n} more; results.csv names them all`] : [])

/** “29 marked, 6 refused”: what there is none of is not said. */
const listed = (parts: readonly (readonly [n: number, word: string])[]): string =>
  parts
    .filter(([n]) => n > 0)
    .map(([n, word]) => `${n.toLocaleString("en-GB")} ${word}`)
    .join(", ") || "none of them to be marked here"

/** A file with its reason; files with one reason together. */
function reasonLines({ problem, files, count: n }: Reason): string[] {
  if (n === 1) return [`  ${files[0]}: ${problem.text}`, `    ${problem.todo}`]
  const rest = n > files.length ? ` and ${n - files.length} more` : ""
  const todo = problem.code === "answer-other-worksheet" ? "Is this the right worksheet?" : problem.todo
  return [`  ${count(n, "file")}: ${problem.text}`, `    ${todo}`, `    ${files.join(", ")}${rest}`]
}

function createNames(most: number) {
  const names: string[] = []
  let n = 0
  return {
    add(name: string): void {
      n++
      if (names.length < most) names.push(name)
    },
    count: () => n,
    names: (): readonly string[] => names,
    more: () => (n > names.length ? ` and ${n - names.length} more` : ""),
  }
}

/** Files that were not opened, so that no student's work is missed for its name. */
export function passedLines(files: readonly string[]): string[] {
  if (files.length === 0) return []
  const named = [...files].sort().slice(0, mostNamed.passed)
  const rest = files.length > named.length ? ` and ${files.length - named.length} more` : ""
  const are = files.length === 1 ? "is no answer file and was" : "are no answer files and were"
  return [`${count(files.length, "file")} ${are} not opened: ${named.join(", ")}${rest}.`]
}

/** How the work was done, where there is more to say than that it was done. */
export function workLine(ways: Readonly<Record<Way, number>>, damaged: number, seconds: number): string[] {
  const lines: string[] = []
  if (ways.known > 0)
    lines.push(
      `${count(ways.known, "file")} known from before or equal to another one; ${ways.judged === 0 ? "nothing judged anew" : `${ways.judged} judged now`}.`,
    )
  if (ways.judged >= 100)
    lines.push(
      `${(ways.judged / Math.max(seconds, 1e-3)).toFixed(0)} a second, ${Math.round(seconds)} s in all.`,
    )
  if (damaged > 0)
    lines.push(`${count(damaged, "remembered verdict")} damaged; those files were judged again.`)
  return lines
}

/** What to open next. */
export function writtenLines(folder: string, names: readonly string[]): string[] {
  const reports = names.includes("report.html")
  return [
    ...(reports ? [`Open first:          ${join(folder, "report.html")}`] : []),
    `Spreadsheet:         ${join(folder, "results.csv")}`,
    ...(reports ? [`Pages for students:  ${join(folder, "students")}`] : []),
  ]
}
