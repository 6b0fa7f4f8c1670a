import type { Recording } from "../run/contract.ts"
import { type Extent, extentOf } from "./extent.ts"
import { columnsOf, endOf, sampler, spacingOf, startOf, type Track, trackOf } from "./track.ts"

/** Times of a packed motion are rounded to this part. */
const timeRounding = 1e-6

/**
 * How far two motions lie apart at one and the same time step, over the time that both cover: the largest distance
 * against the reference's extent or, where a motion has run far out of it, against how far that one has come. A
 * shift by one step is free, since old and new values within a step make no other law. A different end in time
 * counts as well, unless one of them was cut short.
 *
 * @param enough a distance beyond this need not be found out
 * @param rowsAreSteps false where rows stand for more than a step, or for none: then no shift is free
 * @param start where the reference begins: how far a motion has come is told from there, even in its first row
 */
export function unlikeness(
  a: Track,
  b: Track,
  extent: Extent,
  cutShort: boolean,
  enough: number,
  rowsAreSteps: boolean,
  start: ArrayLike<number>,
): number {
  const from = Math.max(startOf(a), startOf(b))
  const to = Math.min(endOf(a), endOf(b))
  const latest = Math.max(endOf(a), endOf(b))
  const duration = latest - from || 1
  const step = Math.max(spacingOf(a), spacingOf(b))
  const rounding = timeRounding * Math.max(1, Math.abs(latest))
  if (to < from - rounding) return 1
  let worst = cutShort ? 0 : Math.max(0, latest - to - 2 * step) / duration
  const { dim } = a
  const here = new Float64Array(dim)
  const before = new Float64Array(dim)
  const now = new Float64Array(dim)
  const after = new Float64Array(dim)
  const run = Float64Array.from(extent.scales)
  const shift = rowsAreSteps ? spacingOf(a) : 0
  const [mineAt, theirsAt, earlierAt, laterAt] = [sampler(a), sampler(b), sampler(b), sampler(b)]
  for (const t of b.times) {
    if (t < from - rounding || t > to + rounding) continue
    mineAt(t, here)
    theirsAt(t, now)
    if (shift > 0) {
      earlierAt(Math.max(t - shift, startOf(b)), before)
      laterAt(Math.min(t + shift, endOf(b)), after)
    }
    for (let k = 0; k < dim; k++) {
      const there = finite(now[k]!)
      run[k] = Math.max(run[k]!, Math.abs(there - start[k]!))
      const mine = finite(here[k]!)
      const low = shift > 0 ? Math.min(finite(before[k]!), there, finite(after[k]!)) : there
      const high = shift > 0 ? Math.max(finite(before[k]!), there, finite(after[k]!)) : there
      worst = Math.max(worst, (mine - high) / run[k]!, (low - mine) / run[k]!)
    }
    if (worst > enough) break
  }
  return worst
}

/** The largest number that a packed motion can hold (IEEE 754 binary32). */
const largestPacked = 3.4e38

const finite = (value: number): number => Math.max(-largestPacked, Math.min(largestPacked, value))

/** A motion has left the picture when a series is this many times as large as the reference's ever is. */
const farAway = 20

const largestOf = new WeakMap<Recording, Map<string, number>>()

/** Largest size of any number of a series, at least 1. */
function largest(recording: Recording, name: string): number {
  let known = largestOf.get(recording)
  if (known === undefined) largestOf.set(recording, (known = new Map()))
  const before = known.get(name)
  if (before !== undefined) return before
  let most = 1
  for (const column of columns(recording, name)) {
    for (let at = column; at < recording.data.length; at += recording.width)
      most = Math.max(most, Math.abs(recording.data[at]!))
  }
  known.set(name, most)
  return most
}

function columns(recording: Recording, name: string): number[] {
  const series = recording.series.find(s => s.name === name)
  if (series === undefined) return []
  return series.kind === "vector" ? [0, 1, 2].map(k => series.column + k) : [series.column]
}

/** Tells of a row of a motion whether it is out of the picture in one of the named series. */
function pictureOf(recording: Recording, reference: Recording, names: readonly string[], share = 1) {
  const bounds = names.flatMap(name =>
    columns(recording, name).map(column => ({ column, most: share * farAway * largest(reference, name) })),
  )
  const { data, width } = recording
  return (row: number): boolean =>
    bounds.some(({ column, most }) => !(Math.abs(data[row * width + column]!) <= most))
}

/** Rows of a motion before it leaves the picture, at least one. */
export function rowsInPicture(recording: Recording, reference: Recording): number {
  const outside = pictureOf(
    recording,
    reference,
    recording.series.map(series => series.name),
  )
  let row = 0
  while (row < recording.rows && !outside(row)) row++
  return Math.max(1, row)
}

/** Packed numbers are rounded, and their largest may have been thinned out. */
const pictureRounding = 0.95

/**
 * Whether `b` may have ended because it was cut where it left the picture: the other motion leaves it there too.
 * That this one goes on then says nothing.
 */
function cutTogether(a: Recording, b: Recording, reference: Recording): boolean {
  const end = b.data[(b.rows - 1) * b.width]!
  const after = end + timeRounding * Math.max(1, Math.abs(end))
  if (a.data[(a.rows - 1) * a.width]! <= after) return false
  let next = 0
  while (a.data[next * a.width]! <= after) next++
  const names = b.series.map(series => series.name)
  return pictureOf(a, reference, names, pictureRounding)(next)
}

/** The same between two recordings, for one series; endless where either lacks it. */
export function recordingsUnlike(
  a: Recording | undefined,
  b: Recording | undefined,
  reference: Recording | undefined,
  path: string,
  cutShort = false,
  enough = Number.POSITIVE_INFINITY,
  rowsAreSteps = true,
): number {
  const one = trackOf(a, path)
  const other = trackOf(b, path)
  const measure = trackOf(reference, path)
  if (one === null || other === null || measure === null) return Number.POSITIVE_INFINITY
  const cut = cutShort || cutTogether(a!, b!, reference!)
  return unlikeness(one, other, extentOf(measure, path), cut, enough, rowsAreSteps, measure.values)
}

/** A reference's motions never change, and every answer asks the same of them. */
const changesKnown = new WeakMap<Recording, Map<string, number>>()

/** How far a slip moves a series of the reference. A slip's motion holds only what it moves: the rest is left alone. */
export function changeBySlip(
  slips: Recording | undefined,
  right: Recording | undefined,
  path: string,
): number {
  if (slips === undefined || right === undefined || columnsOf(slips, path) === null) return 0
  let known = changesKnown.get(slips)
  if (known === undefined) changesKnown.set(slips, (known = new Map()))
  const before = known.get(path)
  if (before !== undefined) return before
  const change = recordingsUnlike(slips, right, right, path)
  known.set(path, change)
  return change
}
