import type { Recording } from "../run/contract.ts"
import type { Check, StudentSheet } from "../worksheet/contract.ts"
import { completeRuns } from "./complete.ts"
import type { Evidence, Reference } from "./contract.ts"
import { extentOf } from "./extent.ts"
import { recordingOf } from "./ladders.ts"
import { columnsOf, trackOf } from "./track.ts"

/** Of the extent: far below any tolerance and any method's own error, far above what packing rounds away. */
const hair = 1e-5
/** Packed times are 32-bit floats. */
const timeRounding = 2e-7

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
    const slack = timeRounding * Math.max(1, Math.abs(t))
    // of rows at one instant the last counts
    while (row + 1 < mine.rows && mine.data[(row + 1) * mine.width]! <= t + slack) row++
    const at = row * mine.width
    if (!(Math.abs(mine.data[at]! - t) <= slack)) return false
    for (let k = 0; k < own.dim; k++) {
      const apart = Math.abs(mine.data[at + own.column + k]! - theirs.data[from + right.column + k]!)
      if (!(apart <= bounds[k]!)) return false
    }
  }
  return row === mine.rows - 1
}
