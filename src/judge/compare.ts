import { approachOf } from "./approach.ts"
import { type Lack, lackOf } from "./coverage.ts"
import { allowance, distanceAsGiven, distancesOf, leastTolerance, trust } from "./distances.ts"
import { type Extent, relativeDistance } from "./extent.ts"
import { commonSpan, countsSteps, endOfMotion, gridOf, type Span } from "./grid.ts"
import { type Ladder, type Limit, limitOf } from "./limit.ts"
import { finestFactor } from "./tools.ts"
import { sample, startOf, type Track } from "./track.ts"

export interface Instant {
  readonly t: number
  readonly student: readonly number[]
  readonly reference: readonly number[]
}

export interface Comparison {
  /** "undecided": a shorter time step would tell */
  readonly outcome: "same limit" | "apart" | "does not reach" | "undecided"
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
  /** start and end of the reference's motion, s */
  readonly referenceStart: number
  readonly referenceEnd: number
  /** where the student's recording does not reach over it */
  readonly lack: Lack | null
  /** up to here the reference itself can be trusted; null when to its end */
  readonly horizon: number | null
  /** one of the programs counts steps, so shorter steps cover less time; the rest was judged by closeness */
  readonly countsSteps: boolean
  /** matches at the given step yet not at shorter ones: the step is written as a number */
  readonly onlyAsGiven: boolean
}

/**
 * Holds a student's motion against the reference's, in the limit of a short step where there is one.
 *
 * @param authorTolerance part of the extent; null for what the reference's own uncertainty asks for
 * @param sensitive the reference is known to be chaotic: it is compared only as far as its own runs agree
 */
export function compareLadders(
  student: Ladder,
  reference: Ladder,
  extent: Extent,
  authorTolerance: number | null = null,
  sensitive = false,
): Comparison {
  const first = { student: student.tracks[0]!, reference: reference.tracks[0]! }
  const trusted = sensitive ? trustedUntil(reference, extent) : null
  if (reference.tracks.length > 1 && !refines(reference, extent, trusted))
    return compareLadders(givenStep(student), givenStep(reference), extent, authorTolerance)
  const shared = trusted === null ? null : sharedTrust(student, trusted, extent)
  const span = cutAt(commonSpan(student, reference), shared)
  const referenceEnd = endOfMotion(reference)
  const counting = countsSteps(student) || countsSteps(reference)
  const lack = lackOf(student, reference)
  const base = { referenceStart: startOf(first.reference), referenceEnd, lack, countsSteps: counting }
  if (!(span.to > span.from))
    return { ...base, ...nothingShared(span.to), outcome: lack === null ? "apart" : "does not reach" }

  const { grid, limit: full } = goalOver(reference, span, extent)
  const mine = limitOf(student, grid, extent)
  // A student's limit that is foretold from two runs is held against the reference's from the same two.
  const fewer = student.tracks.length > 1 && student.tracks.length < reference.tracks.length
  const theirs = fewer ? limitOf(coarser(reference, student.tracks.length), grid, extent) : full
  const allowed = allowance(
    full,
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
  let noFiner = false
  let limitSeen = false
  for (let i = 0; i < until; i++) {
    const d = distances[i]!
    if (mine.rungs[i]! > 1 && theirs.rungs[i]! > 1) limitSeen = true
    if (d - allowed.tolerance[i]! > distances[worst]! - allowed.tolerance[worst]!) worst = i
    if (d <= allowed.tolerance[i]!) continue
    if (departs < 0) departs = i
    if (d <= allowed.tolerance[i]! + trust * mine.unsure[i]!) continue
    beyondDoubt = true
    if (mine.rungs[i]! < 3) noFiner = true
  }
  const asGiven = distanceAsGiven(first.student, first.reference, grid, until, extent)
  const approach = departs < 0 ? null : approachOf(student, mine, theirs, grid, distances, until, extent)
  // While shorter steps still bring the motions together, they are not apart, however far they are yet.
  const surelyApart =
    noFiner || (approach !== null && ((beyondDoubt && !approach.onItsWay) || approach.runsAway))
  const closes = approach !== null && !surelyApart && approach.closing
  const together = departs < 0 || closes
  const sure = together
    ? (!limitSeen || student.tracks.length > 2 || steady(mine, until)) &&
      !judgedTooShort(student, shared, trusted)
    : surelyApart || !limitSeen
  const outcome = !sure ? "undecided" : !together ? "apart" : lack === null ? "same limit" : "does not reach"
  const seen = together ? -1 : seenIndex(distances, departs, until)
  return {
    ...base,
    outcome,
    basis: limitSeen ? "limit" : "closeness",
    distance: distances[worst] ?? 0,
    tolerance: allowed.tolerance[worst] ?? leastTolerance,
    distanceAsGiven: asGiven,
    departsAt: !together ? grid[departs]! : lack === null ? null : leftAt(lack, base.referenceStart),
    seenAt: seen < 0 ? null : instantAt(grid, seen, mine, theirs, extent),
    until: grid[until - 1] ?? span.from,
    horizon: until < grid.length ? grid[until]! : span.to === shared ? shared : null,
    onlyAsGiven: !together && limitSeen && asGiven < leastTolerance,
  }
}

/** Two runs are enough to foretell a limit when halving the step changes little. */
const steadyChange = 0.01
function steady(limit: Limit, until: number): boolean {
  for (let i = 0; i < until; i++) if (limit.unsure[i]! > steadyChange) return false
  return true
}

/** The reference itself goes somewhere as the step shrinks; else only the given step can be judged. */
function refines(reference: Ladder, extent: Extent, trusted: number | null): boolean {
  const span = cutAt(commonSpan(reference, reference), trusted)
  if (!(span.to > span.from)) return false
  const { limit } = goalOver(reference, span, extent)
  return limit.converges || limit.unsure.every(unsure => trust * unsure <= leastTolerance)
}

/** Runs of a chaotic reference are trusted while they agree to this part of the extent. */
const sensitiveUncertainty = 0.02
/** A stretch shorter than this part of the time is none. */
const leastStretch = 0.02

/** Until when the two finest runs of a chaotic motion agree, s; null when to the end. */
function agreeUntil({ tracks }: Ladder, span: Span, extent: Extent): number | null {
  const [middle, fine] = tracks.slice(-2)
  if (middle === undefined || fine === undefined) return null
  const [a, b] = [new Float64Array(middle.dim), new Float64Array(middle.dim)]
  for (const t of gridOf(middle, span)) {
    sample(middle, t, a)
    sample(fine, t, b)
    if (relativeDistance(a, 0, b, 0, extent) > sensitiveUncertainty) return t
  }
  return null
}

/** Until when a chaotic reference can be trusted, s; null for to its end, or when it hardly can be at all. */
function trustedUntil(reference: Ladder, extent: Extent): number | null {
  if (reference.tracks.length < 3) return null
  const span = commonSpan(reference, reference)
  const until = agreeUntil(reference, span, extent)
  return until === null || until - span.from < leastStretch * (span.to - span.from) ? null : until
}

/** A student's method may be less exact than the author's, but is judged over this part of the stretch at least … */
const leastShared = 0.2
/** … and with shorter steps while it is not over this part. */
const shareWanted = 0.5

/** Until when both motions can be trusted: past it a method's own error has grown into another motion. */
function sharedTrust(student: Ladder, trusted: number, extent: Extent): number {
  const own = agreeUntil(student, { from: startOf(student.tracks[0]!), to: trusted }, extent)
  return own === null ? trusted : Math.max(own, leastShared * trusted)
}

const judgedTooShort = ({ factors }: Ladder, shared: number | null, trusted: number | null): boolean =>
  shared !== null &&
  trusted !== null &&
  shared < shareWanted * trusted &&
  factors[factors.length - 1]! > finestFactor

const cutAt = (span: Span, at: number | null): Span =>
  at === null || at >= span.to ? span : { from: span.from, to: at }

interface Goal {
  readonly rungs: number
  readonly span: Span
  readonly extent: Extent
  readonly grid: Float64Array
  readonly limit: Limit
}

/** Where references go, over the last spans that were asked for: most answers of a class end together. */
const goals = new WeakMap<Track, Goal[]>()
const goalsKept = 4

/** Grid and limit of a reference over a span. Tracks and extents never change, so what was worked out once holds. */
function goalOver(reference: Ladder, span: Span, extent: Extent): Goal {
  const [first] = reference.tracks
  const rungs = reference.tracks.length
  const known = goals.get(first!) ?? []
  const found = known.find(
    goal =>
      goal.rungs === rungs &&
      goal.span.from === span.from &&
      goal.span.to === span.to &&
      goal.extent.scales.every((scale, k) => scale === extent.scales[k]),
  )
  if (found !== undefined) return found
  const grid = gridOf(first!, span)
  const goal = { rungs, span, extent, grid, limit: limitOf(reference, grid, extent) }
  goals.set(first!, [goal, ...known].slice(0, goalsKept))
  return goal
}

const coarser = ({ factors, tracks }: Ladder, rungs: number): Ladder => ({
  factors: factors.slice(0, rungs),
  tracks: tracks.slice(0, rungs),
})
const givenStep = (ladder: Ladder): Ladder => coarser(ladder, 1)

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

/** A recording that begins late leaves the reference at its start. */
const leftAt = ({ kind, at }: Lack, start: number): number => (kind === "ends early" ? at : start)

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
