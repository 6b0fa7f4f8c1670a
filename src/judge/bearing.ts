import type { Problem } from "../cell/problem.ts"
import type { Check } from "../worksheet/contract.ts"
import type { Reference } from "./contract.ts"
import { recordingOf } from "./ladders.ts"
import { changeBySlip } from "./likeness.ts"
import { pathsOf } from "./needed.ts"

/** A series that moves by less than this part of its extent is not moved: packed motions are rounded. */
const moved = 1e-3

/**
 * Of the blanks still open, those that a check hangs on. A blank can be left for later without a word about it where
 * none of the slips made in it moves a series that the check reads; one that no slip was made in may bear on all.
 */
export function bearingOn(check: Check, unfilled: readonly Problem[], reference: Reference): Problem[] {
  const right = recordingOf(reference, check.cell)
  const paths = pathsOf(check)
  return unfilled.filter(problem => {
    if (problem.where?.cell !== check.cell) return false
    const made = reference.slips.filter(slip => slip.blank === problem.where?.blank)
    // What looks at the lines themselves hangs on every blank of its cell.
    if (made.length === 0 || paths.length === 0) return true
    return made.some(slip => {
      const theirs = slip.recordings.find(recording => recording.cell === check.cell)
      return paths.some(path => changeBySlip(theirs, right, path) > moved)
    })
  })
}
