import type { Check, StudentSheet } from "../worksheet/contract.ts"
import type { Evidence, Reference, SlipMotion } from "./contract.ts"
import { recordingOf } from "./ladders.ts"
import { recordingsUnlike } from "./likeness.ts"
import { pathsOf } from "./needed.ts"

export interface Diagnosis {
  readonly motion: SlipMotion
  /** series that the slip changes and that the student's motion has changed in the same way */
  readonly paths: readonly string[]
  readonly distance: number
}

/** A student's motion lies on a slip's when nearer than this part of the extent. */
export const onSlip = 0.004
/** It must be this much nearer to it than to the reference … */
const clearOfReference = 0.1
/** … and than to any other slip. */
const clearOfOthers = 0.4
/** Motions nearer to each other than this cannot be told apart. */
const sameMotion = 1e-3
/** A series that a slip moves by less than this is not changed by it. */
const changed = 0.005

/**
 * The slip whose motion a student's motion in one cell lies on, and clearly nearer than on the rest; null when
 * there is none. Only series that a slip changes are looked at, so that a second fault elsewhere does not hide it;
 * of slips that fit, the one that explains most series counts.
 *
 * @param checks those whose series are looked at; without the ones that an open blank bears on
 */
export function diagnose(
  sheet: StudentSheet,
  cell: string,
  reference: Reference,
  evidence: Pick<Evidence, "factors" | "runs" | "problem">,
  checks: readonly Check[] = sheet.checks,
): Diagnosis | null {
  const mine = recordingOf(evidence, cell)
  const right = recordingOf(reference, cell)
  if (mine === undefined || right === undefined) return null
  const cut = evidence.problem !== null && evidence.problem.where?.cell === cell
  const paths = [...new Set(checks.filter(check => check.cell === cell).flatMap(pathsOf))]
  const own = new Map(paths.map(path => [path, recordingsUnlike(mine, right, right, path, cut)]))
  const fits = reference.slips.flatMap((motion): Diagnosis[] => {
    const theirs = motion.recordings.find(recording => recording.cell === cell)
    const affected = paths.filter(path => recordingsUnlike(theirs, right, right, path) > changed)
    if (affected.length === 0 || wouldShowElsewhere(sheet, cell, motion, reference, evidence)) return []
    const distance = Math.max(...affected.map(path => recordingsUnlike(mine, theirs, right, path, cut)))
    const fromReference = Math.max(...affected.map(path => own.get(path)!))
    if (distance > clearOfReference * fromReference) return []
    return [{ motion, paths: affected, distance }]
  })
  const ranked = fits
    .filter(fit => fit.distance <= onSlip)
    .sort((a, b) => b.paths.length - a.paths.length || a.distance - b.distance)
  const [best] = ranked
  if (best === undefined) return null
  const rival = fits.some(
    fit =>
      fit.motion.slip !== best.motion.slip &&
      fit.paths.length >= best.paths.length &&
      best.distance > clearOfOthers * Math.max(fit.distance, sameMotion),
  )
  return rival ? null : best
}

/**
 * Whether a slip would have changed another cell, whose motion is right: then it was not made, though it would
 * explain this cell.
 */
function wouldShowElsewhere(
  sheet: StudentSheet,
  cell: string,
  motion: SlipMotion,
  reference: Reference,
  evidence: Pick<Evidence, "factors" | "runs" | "problem">,
): boolean {
  return sheet.checks.some(check => {
    if (check.cell === cell) return false
    const right = recordingOf(reference, check.cell)
    const theirs = motion.recordings.find(recording => recording.cell === check.cell)
    const mine = recordingOf(evidence, check.cell)
    return pathsOf(check).some(
      path =>
        recordingsUnlike(theirs, right, right, path) > changed &&
        recordingsUnlike(mine, right, right, path) <= sameMotion,
    )
  })
}
