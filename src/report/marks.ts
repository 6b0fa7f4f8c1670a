import type { Verdict } from "../judge/contract.ts"
import { number } from "./text.ts"

export const verdictWords: Readonly<Record<Verdict, string>> = {
  met: "met",
  "not met": "not met",
  "could not run": "could not run",
}

const kindOf = (verdict: Verdict): string => verdict.replaceAll(" ", "-")

/** A stroke for each verdict: whole, broken, dotted. Its word stands beside it or, in a narrow table, unseen. */
export function verdictMark(verdict: Verdict | null): string {
  if (verdict === null) return '<span class="unseen">nothing judged</span>'
  return `<svg class="mark" viewBox="0 0 28 8" width="28" height="8" aria-hidden="true"><line class="${kindOf(verdict)}" x1="1" y1="4" x2="27" y2="4"/></svg>`
}

export const verdictWord = (verdict: Verdict): string =>
  `<span class="word ${kindOf(verdict)}">${verdictWords[verdict]}</span>`

/** Shares of a class as one line in the three strokes. */
export function shares(counts: Readonly<Record<Verdict, number>>, length = 160): string {
  const all = counts.met + counts["not met"] + counts["could not run"]
  if (all === 0) return ""
  let x = 1
  const strokes = (["met", "not met", "could not run"] as const).map(verdict => {
    const from = x
    x += (counts[verdict] / all) * (length - 2)
    return counts[verdict] === 0
      ? ""
      : `<line class="${kindOf(verdict)}" x1="${number(from)}" y1="5" x2="${number(x)}" y2="5"/>`
  })
  return `<svg class="shares" viewBox="0 0 ${length} 10" width="${length}" height="10" aria-hidden="true">${strokes.join("")}</svg>`
}

/** “3 of 5 points” */
export const pointsWords = (points: number, outOf: number): string =>
  `${number(points)} of ${number(outOf)} ${outOf === 1 ? "point" : "points"}`
