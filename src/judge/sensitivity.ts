import type { Recording } from "../run/contract.ts"
import type { Check, Parameter } from "../worksheet/contract.ts"
import type { Sensitive } from "./contract.ts"
import { horizonUncertainty } from "./distances.ts"
import { extentOf, relativeDistance } from "./extent.ts"
import type { Runs } from "./finding.ts"
import { commonSpan, gridOf } from "./grid.ts"
import { ladderOf, recordingOf } from "./ladders.ts"
import { limitOf } from "./limit.ts"
import { endOf, sample, startOf, type Track, trackOf } from "./track.ts"

/*
 * Two motions of a chaotic system part at an exponential rate, however near they start: past some time no stepper
 * goes where another goes, and shorter steps do not settle it. To tell this from a program whose step was written
 * wrongly, the reference is run again with its start changed by a hair. A regular motion carries a change on, or lets
 * it grow with a power of time; a sensitive one multiplies it.
 */

/**
 * Relative changes of the start. Two, because a change may tip a switch (a contact that begins a step later): that
 * makes the same difference whatever its size, while growth is in proportion to it.
 */
export const hairs: readonly number[] = [1e-9, 1e-6]

/**
 * From this many-fold growth on a motion is sensitive. A tenth of a percent that a method errs in the first stretch has
 * then become ten times the motion itself; a regular orbit would need more than a thousand turns for it.
 */
const growth = 1e4

/** Every number that the start can depend on, changed by about `hair`, each by another share of it, so that none cancel. */
export function perturbed(
  parameters: Readonly<Record<string, number>>,
  sheet: { readonly parameters: readonly Parameter[] },
  hair: number,
): Record<string, number> {
  return Object.fromEntries(
    Object.entries(parameters).map(([name, value], k) => {
      const declared = sheet.parameters.find(parameter => parameter.name === name)
      const size = value !== 0 ? value : (declared?.range[1] ?? 0) - (declared?.range[0] ?? 0)
      return [name, value + size * hair * (1 - 0.37 * ((k * 0.618) % 1))]
    }),
  )
}

/** Series that checks hold against the reference's point by point. */
const comparedIn = (checks: readonly Check[], cell: string): string[] =>
  checks.flatMap(check =>
    check.cell === cell && (check.rule.kind === "compare" || check.rule.kind === "converges")
      ? [check.rule.series]
      : [],
  )

/** Cells where shorter steps do not settle where a compared series goes. */
export function unsettledCells(checks: readonly Check[], reference: Runs): string[] {
  return [...new Set(checks.map(check => check.cell))].filter(cell =>
    comparedIn(checks, cell).some(path => {
      const ladder = ladderOf(reference, cell, path)
      if (ladder === null || ladder.tracks.length < 3) return false
      const span = commonSpan(ladder, ladder)
      if (!(span.to > span.from)) return false
      const [first] = ladder.tracks
      const limit = limitOf(ladder, gridOf(first!, span), extentOf(first!, path))
      return !limit.converges || limit.unsure.some(unsure => unsure > horizonUncertainty)
    }),
  )
}

/** Of these cells those that multiply a hair, and from when on. `moved` holds the recordings for each of the hairs. */
export function sensitiveCells(
  checks: readonly Check[],
  cells: readonly string[],
  right: readonly Recording[],
  moved: readonly (readonly Recording[])[],
): Sensitive[] {
  const all = [right, ...moved].map(recordings => ({ factors: [1], runs: [recordings] }))
  return cells.flatMap(cell => {
    const from = comparedIn(checks, cell).map(path => {
      const [own, ...others] = all.map(runs => trackOf(recordingOf(runs, cell), path))
      return own
        ? Math.max(...others.map((other, i) => (other ? grownAt(own, other, path, hairs[i]!) : endless)))
        : endless
    })
    const first = Math.min(...from)
    return Number.isFinite(first) ? [{ cell, from: first }] : []
  })
}

const endless = Number.POSITIVE_INFINITY

/** When two motions that began a hair apart have come apart by `growth` times as much; endless for never. */
function grownAt(own: Track, other: Track, path: string, hair: number): number {
  const extent = extentOf(own, path)
  const span = {
    from: Math.max(startOf(own), startOf(other)),
    to: Math.min(endOf(own), endOf(other)),
  }
  if (!(span.to > span.from)) return endless
  const [a, b] = [new Float64Array(own.dim), new Float64Array(own.dim)]
  for (const t of gridOf(own, span)) {
    sample(own, t, a)
    sample(other, t, b)
    if (relativeDistance(a, 0, b, 0, extent) > growth * hair) return t
  }
  return endless
}
