import { join } from "node:path"
import type { Marked } from "../../report/index.ts"
import { count, shortNumber } from "../say.ts"
import type { Way } from "./mark-all.ts"

/** Names of refused files that are printed; all of them stand in the results. */
const mostNames = 20

export interface Counts {
  add(marked: Marked): void
  /** whether a file was refused for another reason than that its student handed in a newer one */
  refusedSome(): boolean
  lines(): string[]
}

/** What the class looks like, in a few lines, counted one file at a time. */
export function createCounts(): Counts {
  let [graded, full, halted, sum, outOf, left, refused] = [0, 0, 0, 0, 0, 0, 0]
  const named: string[] = []
  return {
    add({ result }) {
      if (result.status === "graded") {
        graded++
        sum += result.points
        outOf = Math.max(outOf, result.outOf)
        if (result.points === result.outOf) full++
        if (result.checks.some(check => check.verdict === "could not run")) halted++
      } else if (result.problems.some(problem => problem.code === "answer-superseded")) left++
      else {
        refused++
        if (named.length < mostNames) named.push(`  ${result.file}: ${result.problems[0]?.text ?? ""}`)
      }
    },
    refusedSome: () => refused > 0,
    lines() {
      const mean = sum / Math.max(1, graded)
      const lines = [
        `${count(graded, "answer file")} marked: ${full} with full points, ${halted} that could not run, ${shortNumber(mean)} of ${shortNumber(outOf)} points on average.`,
      ]
      if (left > 0)
        lines.push(`${count(left, "older file")} left aside, since the student handed in a newer one.`)
      if (refused > 0) lines.push(`${count(refused, "file")} refused:`, ...named)
      if (refused > named.length && refused > 0)
        lines.push(`  and ${refused - named.length} more; results.csv names them all`)
      return lines
    },
  }
}

/** How the work was done, where there is more to say than that it was done. */
export function workLine(ways: Readonly<Record<Way, number>>, damaged: number, seconds: number): string[] {
  const lines: string[] = []
  if (ways.known > 0)
    lines.push(
      `${count(ways.known, "file")} known from before or equal to another one; ${ways.judged} judged now.`,
    )
  if (ways.judged >= 100)
    lines.push(
      `${(ways.judged / Math.max(seconds, 1e-3)).toFixed(0)} a second, ${Math.round(seconds)} s in all.`,
    )
  if (damaged > 0)
    lines.push(`${count(damaged, "remembered verdict")} damaged; those files were judged again.`)
  return lines
}

export const writtenLine = (folder: string, names: readonly string[]): string =>
  `written: ${join(folder, "results.json")}, ${join(folder, "results.csv")}${names.includes("report.html") ? `; for the class open ${join(folder, "report.html")}` : ""}`
