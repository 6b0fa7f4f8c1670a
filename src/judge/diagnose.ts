import type { Recording } from "../run/contract.ts"
import type { Check, StudentSheet } from "../worksheet/contract.ts"
import type { Evidence, Reference, SlipMotion } from "./contract.ts"
import { recordingOf } from "./ladders.ts"
import { changeBySlip, recordingsUnlike } from "./likeness.ts"
import { pathsOf } from "./needed.ts"

export interface Diagnosis {
  readonly motion: SlipMotion
  /** series that the slip changes and that the student's motion has changed in the same way */
  readonly paths: readonly string[]
  readonly distance: number
}

/** A student's motion lies on a slip's when nearer than this part of the extent. */
export const onSlip = 0.002
/** It must be this much nearer to it than to the reference … */
const clearOfReference = 0.1
/** … and than to any other slip. */
const clearOfOthers = 0.4
/** A motion nearer to the reference than this is right. */
const sameMotion = 1e-3
/** Distances of packed motions below this are rounding. */
const rounding = 1e-5
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
  evidence: Motion,
  checks: readonly Check[] = sheet.checks,
): Diagnosis | null {
  const mine = recordingOf(evidence, cell)
  const right = recordingOf(reference, cell)
  if (mine === undefined || right === undefined) return null
  const paths = [...new Set(checks.filter(check => check.cell === cell).flatMap(pathsOf))]
  const cut = cutIn(cell, evidence)
  const own = new Map(paths.map(path => [path, recordingsUnlike(mine, right, right, path, cut)]))
  const fits = reference.slips.flatMap((motion): Diagnosis[] => {
    const affected = paths.filter(path => changes(motion, cell, path, right))
    if (affected.length === 0) return []
    const near = clearOfReference * Math.max(...affected.map(path => own.get(path)!))
    const distance = distanceTo(motion, cell, affected, reference, evidence, near)
    if (distance > near) return []
    if (wouldShowElsewhere(sheet, cell, motion, reference, evidence)) return []
    if (notAtHome(sheet, cell, motion, reference, evidence)) return []
    if (disturbed(sheet, cell, motion, reference, evidence)) return []
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
      best.distance > clearOfOthers * Math.max(fit.distance, rounding),
  )
  return rival ? null : best
}

type Motion = Pick<Evidence, "factors" | "runs" | "problem">

const cutIn = (cell: string, { problem }: Motion): boolean => problem !== null && problem.where?.cell === cell

/** Whether a slip moves this series. */
const changes = ({ recordings }: SlipMotion, cell: string, path: string, right: Recording): boolean =>
  changeBySlip(
    recordings.find(recording => recording.cell === cell),
    right,
    path,
  ) > changed

/** The distance to a slip's motion, the largest of the series; beyond `enough` it need not be found out. */
function distanceTo(
  { recordings }: SlipMotion,
  cell: string,
  paths: readonly string[],
  reference: Reference,
  evidence: Motion,
  enough: number,
): number {
  const mine = recordingOf(evidence, cell)
  const right = recordingOf(reference, cell)
  const theirs = recordings.find(recording => recording.cell === cell)
  const cut = cutIn(cell, evidence)
  const steps = rowsAreSteps(evidence, cell)
  let farthest = 0
  for (const path of paths) {
    farthest = Math.max(farthest, recordingsUnlike(mine, theirs, right, path, cut, enough, steps))
    if (farthest > enough) break
  }
  return farthest
}

/** With half the step, rows of single steps lie closer than this part of what they did. */
const closer = 0.75

/** False where a program records once in many steps, or goes through something else than time. */
function rowsAreSteps({ runs }: Motion, cell: string): boolean {
  const [given, halved] = runs.map(recordings => recordings.find(recording => recording.cell === cell))
  if (given === undefined || halved === undefined || given.rows < 3 || halved.rows < 3) return true
  const spacing = ({ data, width }: Recording): number => data[2 * width]! - data[width]!
  return spacing(halved) < closer * spacing(given)
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
  evidence: Motion,
): boolean {
  return sheet.checks.some(check => {
    const right = recordingOf(reference, check.cell)
    if (check.cell === cell || right === undefined) return false
    const mine = recordingOf(evidence, check.cell)
    return pathsOf(check).some(
      path =>
        changes(motion, check.cell, path, right) &&
        recordingsUnlike(mine, right, right, path, false, sameMotion) <= sameMotion,
    )
  })
}

/** Whether a slip shows in the cell of its own blank, and the motion there lies elsewhere: then it is another fault. */
function notAtHome(
  sheet: StudentSheet,
  cell: string,
  motion: SlipMotion,
  reference: Reference,
  evidence: Motion,
): boolean {
  const home = homeOf(sheet, motion)
  const right = home === undefined ? undefined : recordingOf(reference, home)
  if (home === undefined || home === cell || right === undefined) return false
  const paths = sheet.checks
    .filter(check => check.cell === home)
    .flatMap(pathsOf)
    .filter(path => changes(motion, home, path, right))
  return paths.length > 0 && distanceTo(motion, home, paths, reference, evidence, onSlip) > onSlip
}

const homeOf = (sheet: StudentSheet, { blank }: SlipMotion): string | undefined =>
  sheet.cells.find(({ segments }) =>
    segments.some(segment => segment.kind === "blank" && segment.name === blank),
  )?.name

/**
 * Whether another cell that this one hangs on moves wrongly already, by something else than this slip: what is seen
 * here may come from there. One cell hangs on another where slips in the other's blanks move it.
 */
function disturbed(
  sheet: StudentSheet,
  cell: string,
  motion: SlipMotion,
  reference: Reference,
  evidence: Motion,
): boolean {
  const own = homeOf(sheet, motion)
  const bearing = reference.slips.filter(slip => {
    const home = homeOf(sheet, slip)
    return home !== cell && home !== own && slip.recordings.some(recording => recording.cell === cell)
  })
  const homes = new Set(bearing.flatMap(slip => homeOf(sheet, slip) ?? []))
  return sheet.checks.some(check => {
    const right = homes.has(check.cell) ? recordingOf(reference, check.cell) : undefined
    if (right === undefined) return false
    const mine = recordingOf(evidence, check.cell)
    return pathsOf(check).some(
      path =>
        bearing.some(slip => changes(slip, check.cell, path, right)) &&
        recordingsUnlike(mine, right, right, path, false, changed) > changed,
    )
  })
}
