import type { Recording } from "../run/contract.ts"

/** One recorded quantity over time, ready to be read at any instant. Times strictly increase. */
export interface Track {
  readonly times: Float64Array
  /** row-major, times.length * dim */
  readonly values: Float64Array
  /** 3 for a vector, 1 for a scalar or a component */
  readonly dim: number
  /** time derivative at each row, for the cubic between rows */
  readonly slopes: Float64Array
  /** 1 where the curve has a corner or rows are unevenly spaced: next to it only straight lines are honest */
  readonly corners: Uint8Array
}

const axes = ["x", "y", "z"] as const

/** Columns of a recording that `path` names: a series (`key.position`, `energy`) or a component (`key.position.y`). */
export function columnsOf(recording: Recording, path: string): { column: number; dim: number } | null {
  for (const series of recording.series) {
    if (series.name === path) return { column: series.column, dim: series.kind === "vector" ? 3 : 1 }
    if (series.kind !== "vector" || !path.startsWith(`${series.name}.`)) continue
    const axis = axes.indexOf(path.slice(series.name.length + 1) as (typeof axes)[number])
    if (axis >= 0) return { column: series.column + axis, dim: 1 }
  }
  return null
}

/** Tracks already read; a recording never changes, and one is compared many times. */
const read = new WeakMap<Recording, Map<string, Track | null>>()

/** Reads a series out of a recording; null when it is not there or has no row. Of rows at one instant the last counts. */
export function trackOf(recording: Recording | undefined, path: string): Track | null {
  if (recording === undefined || recording.rows === 0) return null
  let tracks = read.get(recording)
  if (tracks === undefined) read.set(recording, (tracks = new Map()))
  let track = tracks.get(path)
  if (track === undefined) tracks.set(path, (track = readTrack(recording, path)))
  return track
}

function readTrack(recording: Recording, path: string): Track | null {
  const found = columnsOf(recording, path)
  if (found === null) return null
  const { column, dim } = found
  const { width, data } = recording
  const { times, rows, uneven } = instantsOf(recording)
  const values = new Float64Array(times.length * dim)
  for (let i = 0; i < times.length; i++) {
    const from = (rows === null ? i : rows[i]!) * width + column
    for (let k = 0; k < dim; k++) values[i * dim + k] = data[from + k]!
  }
  return trackWith(times, values, dim, uneven)
}

interface Instants {
  readonly times: Float64Array
  /** the row of each instant; null where every row has its own */
  readonly rows: Uint32Array | null
  readonly uneven: Uint8Array
}

/** The instants of a recording are those of all its series. */
const instants = new WeakMap<Recording, Instants>()

function instantsOf(recording: Recording): Instants {
  const known = instants.get(recording)
  if (known !== undefined) return known
  const { rows, width, data } = recording
  const times = new Float64Array(rows)
  const from = new Uint32Array(rows)
  let kept = 0
  for (let row = 0; row < rows; row++) {
    const t = data[row * width]!
    if (kept > 0 && t <= times[kept - 1]!) kept--
    times[kept] = t
    from[kept++] = row
  }
  const own = kept === rows ? times : times.slice(0, kept)
  const read = { times: own, rows: kept === rows ? null : from.slice(0, kept), uneven: unevenRows(own) }
  instants.set(recording, read)
  return read
}

/** @param times strictly increasing; values row-major, times.length * dim */
export function makeTrack(times: Float64Array, values: Float64Array, dim: number): Track {
  return trackWith(times, values, dim, unevenRows(times))
}

function trackWith(times: Float64Array, values: Float64Array, dim: number, uneven: Uint8Array): Track {
  const slopes = new Float64Array(times.length * dim)
  const corners = uneven.slice()
  for (let k = 0; k < dim; k++) bendAndSlope(times, values, dim, k, slopes, corners)
  return { times, values, dim, slopes, corners }
}

/** A second difference this many times its neighbours' is a corner, not a curve. */
const cornerRatio = 4
/** Rows further from equal spacing than this were thinned out, for straight lines between them. */
const evenRatio = 1.5

/** 1 where the rows before and after are unequally far away. */
function unevenRows(times: Float64Array): Uint8Array {
  const uneven = new Uint8Array(times.length)
  for (let i = 1; i < times.length - 1; i++) {
    const before = times[i]! - times[i - 1]!
    const after = times[i + 1]! - times[i]!
    if (after > evenRatio * before || before > evenRatio * after) uneven[i] = 1
  }
  return uneven
}

/** Second differences of the component at work; longer than needed, and kept from call to call. */
let bends = new Float64Array(0)

function bendAndSlope(
  times: Float64Array,
  values: Float64Array,
  dim: number,
  k: number,
  slopes: Float64Array,
  corners: Uint8Array,
): void {
  const n = times.length
  // a component at rest has no slope and no bend
  if (n < 2 || stands(values, dim, k)) return
  if (bends.length < n) bends = new Float64Array(2 * n)
  let largest = 0
  let t = times[1]!
  let value = values[dim + k]!
  let before = t - times[0]!
  let chord = (value - values[k]!) / before
  const first = chord
  for (let i = 1; i < n - 1; i++) {
    const nextTime = times[i + 1]!
    const next = values[(i + 1) * dim + k]!
    const after = nextTime - t
    const nextChord = (next - value) / after
    const bend = (nextChord - chord) / (nextTime - times[i - 1]!)
    bends[i] = bend
    largest = Math.max(largest, Math.abs(bend))
    slopes[i * dim + k] = (chord * after + nextChord * before) / (before + after)
    t = nextTime
    value = next
    before = after
    chord = nextChord
  }
  bends[0] = n > 2 ? bends[1]! : 0
  bends[n - 1] = n > 2 ? bends[n - 2]! : 0
  for (let i = 1; i < n - 1; i++) {
    const bend = Math.abs(bends[i]!)
    const around = Math.max(Math.abs(bends[i - 1]!), Math.abs(bends[i + 1]!))
    if (bend > cornerRatio * around && bend > 1e-3 * largest) corners[i] = 1
  }
  slopes[k] = n > 2 ? 2 * first - slopes[dim + k]! : first
  slopes[(n - 1) * dim + k] = n > 2 ? 2 * chord - slopes[(n - 2) * dim + k]! : chord
}

/** A component that never changes, such as the third of a motion in a plane. */
function stands(values: Float64Array, dim: number, k: number): boolean {
  for (let i = k + dim; i < values.length; i += dim) if (values[i] !== values[k]) return false
  return true
}

/** Index of the last row at or before `t`, clamped to the rows that have a next one. */
export function rowBefore(times: Float64Array, t: number): number {
  let low = 0
  let high = times.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (times[middle]! <= t) low = middle
    else high = middle
  }
  return low
}

/**
 * `sample` for instants that come in ascending order, as those of a grid do: the row is looked for from where the
 * last one was found. The same numbers, to the bit.
 */
export function sampler(track: Track): (t: number, out: Float64Array, at?: number) => void {
  const { times } = track
  let row = 0
  return (t, out, at = 0) => {
    if (times[row]! > t) row = rowBefore(times, t)
    else while (row < times.length - 2 && times[row + 1]! <= t) row++
    between(track, row, t, out, at)
  }
}

/**
 * Value at `t`, into `out` from `at`: the cubic through both rows and their slopes, of order 3 for a smooth
 * curve, and the straight line beside a corner (error at most h² max|a| / 8). Outside the track the
 * end's straight line goes on.
 */
export function sample(track: Track, t: number, out: Float64Array, at = 0): void {
  between(track, rowBefore(track.times, t), t, out, at)
}

/** @param i the last row at or before `t`, or the nearest that has a next one */
function between(track: Track, i: number, t: number, out: Float64Array, at: number): void {
  const { times, values, dim, slopes, corners } = track
  if (times.length === 1) {
    for (let k = 0; k < dim; k++) out[at + k] = values[k]!
    return
  }
  const h = times[i + 1]! - times[i]!
  const s = (t - times[i]!) / h
  const straight = corners[i] === 1 || corners[i + 1] === 1 || s < 0 || s > 1
  for (let k = 0; k < dim; k++) {
    const a = values[i * dim + k]!
    const b = values[(i + 1) * dim + k]!
    if (straight) {
      out[at + k] = s === 1 ? b : a + (b - a) * s
    } else {
      const da = slopes[i * dim + k]! * h
      const db = slopes[(i + 1) * dim + k]! * h
      out[at + k] = a + s * (da + s * (3 * (b - a) - 2 * da - db + s * (2 * (a - b) + da + db)))
    }
  }
}

export const startOf = (track: Track): number => track.times[0]!
export const endOf = (track: Track): number => track.times[track.times.length - 1]!

/** Typical distance of rows in time, s; 0 for a single row. */
export const spacingOf = (track: Track): number =>
  track.times.length < 2 ? 0 : (endOf(track) - startOf(track)) / (track.times.length - 1)
