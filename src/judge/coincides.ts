import type { Excerpt, Recording } from "../run/contract.ts"
import { notAfter } from "../run/excerpt.ts"
import type { Check, StudentSheet } from "../worksheet/contract.ts"
import { completeRuns } from "./complete.ts"
import type { Evidence, Reference } from "./contract.ts"
import { extentOf } from "./extent.ts"
import type { Runs } from "./finding.ts"
import { recordingOf } from "./ladders.ts"
import { neededSeries } from "./needed.ts"
import { columnsOf, trackOf } from "./track.ts"

/** Of the extent: far below any tolerance and any method's own error, far above what packing rounds away. */
const hair = 1e-5

/**
 * Whether a series moves as the reference's own, row by row, at the given step and at half of it: then it was made by the
 * same method and goes to the same limit, and nothing need be foretold.
 */
export function sameMethod(student: Runs, reference: Runs, cell: string, path: string): boolean {
  const halved = [0, 1].every(i => student.factors[i] === reference.factors[i]) && student.runs.length > 1
  return (
    halved &&
    [0, 1].every(i => {
      const [mine, theirs] = [student, reference].map(({ runs }) => runs[i]!.find(one => one.cell === cell))
      return mine !== undefined && theirs !== undefined && rowsCoincide(mine, theirs, path)
    })
  )
}

/**
 * Whether a check compares a motion that is, at the given step, the reference's own, row by row: then it was made by the
 * reference's method. Where its limit is known to be right at one set of parameters, shorter steps at another would
 * show nothing new.
 */
export function coincides(
  sheet: StudentSheet,
  { cell, rule }: Check,
  reference: Reference,
  evidence: Evidence,
): boolean {
  if (rule.kind !== "compare") return false
  const mine = recordingOf(completeRuns(sheet, evidence, cell), cell)
  const theirs = recordingOf(reference, cell)
  return mine !== undefined && theirs !== undefined && rowsCoincide(mine, theirs, rule.series)
}

/** All of a run at the given step that `coincides` looks at, by cell. */
export function excerptFor(checks: readonly Check[], reference: Reference): Record<string, Excerpt> {
  const known = excerpts.get(reference) ?? new Map<string, Record<string, Excerpt>>()
  excerpts.set(reference, known)
  const key = JSON.stringify(checks.map(check => check.name))
  const made = known.get(key) ?? makeExcerpt(checks, reference)
  known.set(key, made)
  return made
}

/** A class asks the same of a reference again and again. */
const excerpts = new WeakMap<Reference, Map<string, Record<string, Excerpt>>>()

function makeExcerpt(checks: readonly Check[], reference: Reference): Record<string, Excerpt> {
  return Object.fromEntries(
    (reference.runs[0] ?? []).flatMap(recording => {
      const series = neededSeries(checks, recording)
      const times = Float64Array.from(
        { length: recording.rows },
        (_, row) => recording.data[row * recording.width]!,
      )
      return series.length === 0 ? [] : [[recording.cell, { series, times }]]
    }),
  )
}

/** Each row of the reference, which is thinned, has one at its time in `mine`, and with the last of them both end. */
function rowsCoincide(mine: Recording, theirs: Recording, path: string): boolean {
  const own = columnsOf(mine, path)
  const right = columnsOf(theirs, path)
  const track = trackOf(theirs, path)
  if (own === null || right === null || track === null || own.dim !== right.dim) return false
  const bounds = extentOf(track, path).scales.map(scale => hair * scale)
  let row = 0
  for (let i = 0; i < theirs.rows; i++) {
    const from = i * theirs.width
    const t = theirs.data[from]!
    // of rows at one instant the last counts
    while (row + 1 < mine.rows && notAfter(mine.data[(row + 1) * mine.width]!, t)) row++
    const at = row * mine.width
    if (!notAfter(mine.data[at]!, t) || !notAfter(t, mine.data[at]!)) return false
    for (let k = 0; k < own.dim; k++) {
      const apart = Math.abs(mine.data[at + own.column + k]! - theirs.data[from + right.column + k]!)
      if (!(apart <= bounds[k]!)) return false
    }
  }
  return row === mine.rows - 1
}
