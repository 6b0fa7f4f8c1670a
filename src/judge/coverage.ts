import type { Runs } from "./finding.ts"
import { countsSteps, endOfMotion } from "./grid.ts"
import { recordingOf } from "./ladders.ts"
import type { Ladder } from "./limit.ts"
import { endOf, spacingOf, startOf, type Track } from "./track.ts"

/*
 * A student chooses how much to record: when to begin, when to stop, how many rows, and for each time step anew. None of
 * it may make a verdict milder, so what is let pass is measured by the reference.
 */

/** Ending sooner than the reference, or beginning later, by less than this part of its time is no fault. */
const endShare = 0.02
/** An end that hangs on the motion, such as a landing, moves with the time step; by this part of the time at most. */
const mostShift = 0.05
/** Rows of a student may be this many times as far apart as the reference's before they count as no further. */
const mostWiden = 4

/** How far apart rows count as, s: what a last step, or an event that falls on a row, may be off by. */
export const rowStep = (student: Track, reference: Track): number =>
  Math.max(spacingOf(reference), Math.min(spacingOf(student), mostWiden * spacingOf(reference)))

/** Where a recording does not reach over the reference's time. */
export interface Lack {
  readonly kind: "begins late" | "ends early"
  /** where it begins or ends, s */
  readonly at: number
  /** it reaches at the given time step, but not at a shorter one */
  readonly shorter: boolean
}

/** The first time step at which a student's recording does not reach over the reference's motion; null where all do. */
export function lackOf(student: Ladder, reference: Ladder): Lack | null {
  const [first] = reference.tracks
  const referenceEnd = endOfMotion(reference)
  const duration = referenceEnd - startOf(first!)
  const slack = endShare * duration + 3 * rowStep(student.tracks[0]!, first!)
  const shifts = Math.min(mostShift * duration, endShift(student)) + endShift(reference)
  // a loop that counts steps is known to cover less time the shorter they are
  const ending = countsSteps(student) ? 1 : student.tracks.length
  for (const [i, track] of student.tracks.entries()) {
    const shorter = i > 0
    if (startOf(track) > startOf(first!) + slack) return { kind: "begins late", at: startOf(track), shorter }
    if (i < ending && endOf(track) < referenceEnd - slack - shifts)
      return { kind: "ends early", at: endOf(track), shorter }
  }
  return null
}

/** How far the end itself moves as the step shrinks, s. */
function endShift(ladder: Ladder): number {
  if (countsSteps(ladder)) return 0
  return Math.abs(endOf(ladder.tracks[0]!) - endOf(ladder.tracks[ladder.tracks.length - 1]!))
}

/** A law, a band or an event can be judged of a motion that is wrong and ends early, but not of next to nothing: … */
const leastPart = 0.2
/** … and not of rows further apart than this part of the reference's time, where the reference's are nearer. */
const widestRows = 0.05

/** What is missing for a verdict that does not compare the whole motion, s of the given or of a shorter time step. */
export interface Scarce {
  /** s that were recorded */
  readonly lasts: number
  readonly rows: number
  /** too few rows for the time, not too little time */
  readonly sparse: boolean
  /** end of the reference's recording, s */
  readonly referenceEnd: number
  readonly shorter: boolean
}

/** Whether a cell's recording is next to nothing beside the reference's, at any time step; null where there is enough. */
export function scarcity(student: Runs, reference: Runs, cell: string): Scarce | null {
  const theirs = timesOf(recordingOf(reference, cell))
  if (theirs === null || theirs.rows < 2) return null
  const duration = theirs.to - theirs.from
  for (const [i, recordings] of student.runs.entries()) {
    const mine = timesOf(recordings.find(one => one.cell === cell))
    // what a rule makes of no recording at all it says in words of its own
    if (mine === null) continue
    const lasts = mine.to - mine.from
    const spacing = lasts / Math.max(1, mine.rows - 1)
    const short = lasts < leastPart * student.factors[i]! * duration
    const sparse = spacing > Math.max(widestRows * duration, (2 * duration) / (theirs.rows - 1))
    if (short || sparse)
      return { lasts, rows: mine.rows, sparse: !short, referenceEnd: theirs.to, shorter: i > 0 }
  }
  return null
}

function timesOf(
  recording: ReturnType<typeof recordingOf>,
): { from: number; to: number; rows: number } | null {
  if (recording === undefined || recording.rows === 0) return null
  const { data, rows, width } = recording
  return { from: data[0]!, to: data[(rows - 1) * width]!, rows }
}
