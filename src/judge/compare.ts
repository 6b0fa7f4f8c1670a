import { type Extent, relativeDistance } from "./extent.ts"
import { commonSpan, countsSteps, endOfMotion, gridOf } from "./grid.ts"
import { type Ladder, type Limit, limitOf } from "./limit.ts"
import { hullDistance, steepestChange } from "./steep.ts"
import { endOf, sample, spacingOf, startOf } from "./track.ts"

export interface Instant {
  readonly t: number
  readonly student: readonly number[]
  readonly reference: readonly number[]
}

export interface Comparison {
  /** "undecided": a shorter time step would tell */
  readonly outcome: "same limit" | "apart" | "ends early" | "undecided"
  /** the limit as the step shrinks, or closeness at the given step where there is only that */
  readonly basis: "limit" | "closeness"
  /** largest distance of the limits, as part of the reference's extent */
  readonly distance: number
  /** what was allowed there */
  readonly tolerance: number
  /** at the given step, before any refinement: largest distance, as part of the extent */
  readonly distanceAsGiven: number
  readonly departsAt: number | null
  /** shortly after the departure, where the difference can be seen and named */
  readonly seenAt: Instant | null
  /** last instant that was compared, s */
  readonly until: number
  /** end of the reference's motion, s */
  readonly referenceEnd: number
  readonly studentEnd: number
  /** up to here the reference itself can be trusted; null when to its end */
  readonly horizon: number | null
  /** one of the programs counts steps, so shorter steps cover less time; the rest was judged by closeness */
  readonly countsSteps: boolean
  /** matches at the given step yet not at shorter ones: the step is written as a number */
  readonly onlyAsGiven: boolean
}

/** Limits nearer than this part of the extent are the same: rounding of constants, a last partial step. */
export const leastTolerance = 0.002
/** Where only the given step is known, a method's own error must pass. */
export const leastCloseness = 0.01
/** The reference's own uncertainty times this is allowed. */
const trust = 2
/** Beyond this uncertainty, as part of the extent, the reference says nothing. */
const horizonUncertainty = 0.05
/** Ending sooner than the reference by less than this part of its time is no fault. */
const endShare = 0.02
/** In a ladder that closes on the reference, each halving leaves at most this part of the distance … */
const closingRatio = 0.75
/** … down to at most this part of the extent … */
const closingDistance = 0.1
/** A foretold limit that came nearer by this factor is still on its way. */
const drawingNear = 0.6
/** A limit that is foretold nearer than this part of the last run's distance is one still on its way. */
const stillMoving = 0.8
/** … and the distance of the extrapolated limits is at most this part of the last one. */
const vanishing = 0.35

export function compareLadders(
  student: Ladder,
  reference: Ladder,
  extent: Extent,
  authorTolerance: number | null = null,
): Comparison {
  const first = { student: student.tracks[0]!, reference: reference.tracks[0]! }
  if (reference.tracks.length > 1 && !refines(reference, extent))
    return compareLadders(givenStep(student), givenStep(reference), extent, authorTolerance)
  const span = commonSpan(student, reference)
  const referenceEnd = endOfMotion(reference)
  const studentEnd = endOfMotion(student)
  const counting = countsSteps(student) || countsSteps(reference)
  const step = Math.max(spacingOf(first.student), spacingOf(first.reference))
  const slack =
    endShare * (referenceEnd - startOf(first.reference)) + 3 * step + endShift(student) + endShift(reference)
  const early = studentEnd < referenceEnd - slack
  const base = { referenceEnd, studentEnd, countsSteps: counting }
  if (!(span.to > span.from)) {
    return { ...base, ...nothingShared(span.to), outcome: early ? "ends early" : "apart" }
  }

  const grid = gridOf(first.reference, span)
  const mine = limitOf(student, grid, extent)
  const theirs = limitOf(reference, grid, extent)
  const allowed = allowance(
    theirs,
    grid,
    first.reference,
    extent,
    authorTolerance,
    reference.factors.length > 1,
  )
  const until = allowed.horizon
  const distances = distancesOf(mine, theirs, grid, extent, student, reference, allowed.tolerance, until)

  let worst = 0
  let departs = -1
  let beyondDoubt = false
  let limitSeen = false
  for (let i = 0; i < until; i++) {
    const d = distances[i]!
    if (mine.rungs[i]! > 1 && theirs.rungs[i]! > 1) limitSeen = true
    if (d - allowed.tolerance[i]! > distances[worst]! - allowed.tolerance[worst]!) worst = i
    if (d <= allowed.tolerance[i]!) continue
    if (departs < 0) departs = i
    if (d > allowed.tolerance[i]! + trust * mine.unsure[i]!) beyondDoubt = true
  }
  const asGiven = distanceAsGiven(first.student, first.reference, grid, until, extent)
  const approach = approachOf(student, mine, theirs, grid, distances, until, extent)
  // While shorter steps still bring the motions together, they are not apart, however far they are yet.
  const onItsWay = approach.drawsNear || (approach.shrinks && approach.left < stillMoving)
  const surelyApart = beyondDoubt && !onItsWay
  const closes = departs >= 0 && approach.closing && approach.drawsNear && approach.left <= vanishing
  const together = departs < 0 || closes
  const outcome = together
    ? early
      ? "ends early"
      : "same limit"
    : surelyApart || !limitSeen
      ? "apart"
      : "undecided"
  const seen = together ? -1 : seenIndex(distances, departs, until)
  return {
    ...base,
    outcome,
    basis: limitSeen ? "limit" : "closeness",
    distance: distances[worst] ?? 0,
    tolerance: allowed.tolerance[worst] ?? leastTolerance,
    distanceAsGiven: asGiven,
    departsAt: together ? (early ? studentEnd : null) : grid[departs]!,
    seenAt: seen < 0 ? null : instantAt(grid, seen, mine, theirs, extent),
    until: grid[until - 1] ?? span.from,
    horizon: until < grid.length ? grid[until]! : null,
    onlyAsGiven: !together && limitSeen && asGiven < leastTolerance,
  }
}

/** The reference itself goes somewhere as the step shrinks; else only the given step can be judged. */
function refines(reference: Ladder, extent: Extent): boolean {
  const span = commonSpan(reference, reference)
  if (!(span.to > span.from)) return false
  const grid = gridOf(reference.tracks[0]!, span)
  const limit = limitOf(reference, grid, extent)
  return limit.converges || limit.unsure.every(unsure => trust * unsure <= leastTolerance)
}

const givenStep = ({ factors, tracks }: Ladder): Ladder => ({
  factors: factors.slice(0, 1),
  tracks: tracks.slice(0, 1),
})

function nothingShared(at: number) {
  return {
    basis: "closeness" as const,
    distance: Number.POSITIVE_INFINITY,
    tolerance: leastTolerance,
    distanceAsGiven: Number.POSITIVE_INFINITY,
    departsAt: at,
    seenAt: null,
    until: at,
    horizon: null,
    onlyAsGiven: false,
  }
}

/** How far the end itself moves as the step shrinks, s. */
function endShift(ladder: Ladder): number {
  if (countsSteps(ladder)) return 0
  return Math.abs(endOf(ladder.tracks[0]!) - endOf(ladder.tracks[ladder.tracks.length - 1]!))
}

/** What may lie between two limits at each instant, and the first index past which the reference is unsure. */
function allowance(
  reference: Limit,
  grid: Float64Array,
  track: Ladder["tracks"][number],
  extent: Extent,
  author: number | null,
  refined: boolean,
): { tolerance: Float64Array; horizon: number } {
  const tolerance = new Float64Array(grid.length)
  let unsure = 0
  let horizon = grid.length
  const close = leastCloseness + (refined ? steepestChange(track, spacingOf(track), extent) : 0)
  for (let i = 0; i < grid.length; i++) {
    if (reference.rungs[i]! > 2) unsure = Math.max(unsure, reference.unsure[i]!)
    if (unsure > horizonUncertainty && horizon === grid.length) horizon = Math.max(i, 2)
    tolerance[i] = author ?? (reference.rungs[i]! > 1 ? Math.max(leastTolerance, trust * unsure) : close)
  }
  return { tolerance, horizon }
}

/** Distance of the limits where both have one; of the motions at the given step where one has not. */
function distancesOf(
  mine: Limit,
  theirs: Limit,
  grid: Float64Array,
  extent: Extent,
  student: Ladder,
  reference: Ladder,
  tolerance: Float64Array,
  until: number,
): Float64Array {
  const dim = extent.scales.length
  const out = new Float64Array(grid.length)
  const here = new Float64Array(dim)
  const there = new Float64Array(dim)
  const window = 2 * Math.max(spacingOf(student.tracks[0]!), spacingOf(reference.tracks[0]!))
  for (let i = 0; i < until; i++) {
    const t = grid[i]!
    const limits = mine.rungs[i]! > 1 && theirs.rungs[i]! > 1
    if (limits) {
      out[i] = relativeDistance(mine.values, i * dim, theirs.values, i * dim, extent)
    } else {
      sample(student.tracks[0]!, t, here)
      sample(reference.tracks[0]!, t, there)
      out[i] = relativeDistance(here, 0, there, 0, extent)
      if (reference.tracks.length > 1) tolerance[i] = Math.max(tolerance[i]!, closenessFor(reference, extent))
    }
    if (out[i]! > tolerance[i]!) {
      const finest = limits ? student.tracks[student.tracks.length - 1]! : student.tracks[0]!
      const other = limits ? reference.tracks[reference.tracks.length - 1]! : reference.tracks[0]!
      const hull = hullDistance(finest, other, t, window, extent)
      if (hull !== null) out[i] = Math.min(out[i]!, hull)
    }
  }
  return out
}

const closenessFor = (reference: Ladder, extent: Extent): number =>
  leastCloseness + steepestChange(reference.tracks[0]!, spacingOf(reference.tracks[0]!), extent)

function distanceAsGiven(
  student: Ladder["tracks"][number],
  reference: Ladder["tracks"][number],
  grid: Float64Array,
  until: number,
  extent: Extent,
): number {
  const here = new Float64Array(extent.scales.length)
  const there = new Float64Array(extent.scales.length)
  let worst = 0
  for (let i = 0; i < until; i++) {
    sample(student, grid[i]!, here)
    sample(reference, grid[i]!, there)
    worst = Math.max(worst, relativeDistance(here, 0, there, 0, extent))
  }
  return worst
}

interface Approach {
  /** the last run's distance from the reference's limit over the run's before; small when each halving brings it nearer */
  readonly shrinks: boolean
  /** … so does each of the last two halvings, down to little */
  readonly closing: boolean
  /** the foretold limit came clearly nearer to the reference's when the finest step was added */
  readonly drawsNear: boolean
  /** distance of the limits over that of the last run */
  readonly left: number
}

/** How the student's motion moves towards the reference's limit, or does not, as the step shrinks. */
function approachOf(
  student: Ladder,
  mine: Limit,
  theirs: Limit,
  grid: Float64Array,
  distances: Float64Array,
  until: number,
  extent: Extent,
): Approach {
  const dim = extent.scales.length
  const here = new Float64Array(dim)
  const gaps = student.tracks.slice(-3).map(track => {
    let worst = 0
    for (let i = 0; i < until; i++) {
      if (mine.rungs[i]! < 3) continue
      sample(track, grid[i]!, here)
      worst = Math.max(worst, relativeDistance(here, 0, theirs.values, i * dim, extent))
    }
    return worst
  })
  const [fine = 0, middle = 0, coarse = 0] = gaps.reverse()
  let now = 0
  let before = 0
  for (let i = 0; i < until; i++) {
    if (mine.rungs[i]! < 3) continue
    now = Math.max(now, distances[i]!)
    before = Math.max(before, relativeDistance(mine.before, i * dim, theirs.values, i * dim, extent))
  }
  const shrinks = gaps.length > 2 && fine <= closingRatio * middle
  return {
    shrinks,
    closing: shrinks && middle <= closingRatio * coarse && fine <= closingDistance,
    drawsNear: now < drawingNear * before,
    left: fine > 0 ? now / fine : 1,
  }
}

/** The departure is named at once; its size where it has become plain to see (a twentieth of the extent) or is largest. */
function seenIndex(distances: Float64Array, departs: number, until: number): number {
  let best = departs
  for (let i = departs; i < until; i++) {
    if (distances[i]! > distances[best]!) best = i
    if (distances[i]! > 0.05) return i
  }
  return best
}

function instantAt(grid: Float64Array, i: number, mine: Limit, theirs: Limit, extent: Extent): Instant {
  const dim = extent.scales.length
  return {
    t: grid[i]!,
    student: [...mine.values.subarray(i * dim, (i + 1) * dim)],
    reference: [...theirs.values.subarray(i * dim, (i + 1) * dim)],
  }
}
