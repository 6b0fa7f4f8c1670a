import type { Excerpt, RunRequest } from "../run/contract.ts"
import type { Check } from "../worksheet/contract.ts"
import { seriesOf } from "../worksheet/series.ts"

/** What tells that a cell's first column is time (follow.ts). */
const ofBodies = /\.(position|momentum)(\.[xyz])?$|\.\*$/

/**
 * What verdicts read of a recording, by cell: a run is asked for no more, as most of what a worksheet records is there to be
 * looked at. A cell of which no body is read is asked for whole, for the words that are found for it.
 */
export function wishOf(checks: readonly Check[]): Record<string, Excerpt> {
  const cells = [...new Set(checks.map(check => check.cell))]
  return Object.fromEntries(
    cells.map(cell => {
      const series = [...new Set(checks.filter(check => check.cell === cell).flatMap(namesOf))]
      return [cell, { series: series.some(name => ofBodies.test(name)) ? series : [] }]
    }),
  )
}

/** What a rule names, and of the bodies of a law all forces, which it sums up. */
function namesOf({ rule }: Check): string[] {
  const named = seriesOf(rule).map(({ name }) => name)
  return rule.kind === "law" ? [...named, ...rule.bodies.map(body => `${body}.forces.*`)] : named
}

/** Tells wishes apart, for whoever keeps outcomes. */
export const excerptKey = (excerpt: RunRequest["excerpt"]): string =>
  JSON.stringify(
    excerpt &&
      Object.entries(excerpt).map(([cell, { series, times }]) => [cell, series, times !== undefined]),
  ) ?? ""
