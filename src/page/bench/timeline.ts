import type { Recording } from "../../run/contract.ts"

/**
 * The recording's axis of play. In order: seconds, as recorded. When the recorded time goes back, stands still
 * throughout or is not a number, rows are counted instead, so that a motion can still be looked at; `fault` says why.
 */
export interface Timeline {
  readonly rows: number
  readonly start: number
  readonly end: number
  /** "s", or "row" when time cannot serve */
  readonly unit: "s" | "row"
  readonly fault: string | null
  readonly at: (row: number) => number
  /** the last row at or before an instant, 0 to rows - 1 */
  readonly rowAt: (instant: number) => number
}

/** A place between two rows: `row + part`, 0 <= part < 1. */
export interface Moment {
  readonly row: number
  readonly part: number
}

export function timelineOf(recording: Recording): Timeline {
  const { data, rows, width } = recording
  const fault = faultOf(recording)
  if (fault !== null || rows === 0) {
    const end = Math.max(0, rows - 1)
    const rowAt = (instant: number) => Math.min(end, Math.max(0, Math.floor(instant + 1e-9)))
    return { rows, start: 0, end, unit: "row", fault, at: row => row, rowAt }
  }
  const at = (row: number) => data[row * width] as number
  return {
    rows,
    start: at(0),
    end: at(rows - 1),
    unit: "s",
    fault: null,
    at,
    rowAt: i => lastAtOrBefore(at, rows, i),
  }
}

/** The row nearest to an instant. */
export function nearestRow(timeline: Timeline, instant: number): number {
  const row = timeline.rowAt(instant)
  const next = Math.min(timeline.rows - 1, row + 1)
  return instant - timeline.at(row) <= timeline.at(next) - instant ? row : next
}

export function momentAt(timeline: Timeline, instant: number): Moment {
  const row = timeline.rowAt(instant)
  if (row >= timeline.rows - 1) return { row: Math.max(0, timeline.rows - 1), part: 0 }
  const here = timeline.at(row)
  const step = timeline.at(row + 1) - here
  const part = step > 0 ? (instant - here) / step : 0
  return { row, part: Math.min(1, Math.max(0, part)) }
}

/** A recorded component between rows, on the straight line from one to the next. */
export function between(recording: Recording, column: number, moment: Moment): number {
  const at = moment.row * recording.width + column
  const here = recording.data[at] ?? Number.NaN
  if (moment.part === 0) return here
  const next = recording.data[at + recording.width] ?? Number.NaN
  return here + (next - here) * moment.part
}

/** The median step is not asked for: the mean serves for counting decimals. */
export function meanStep(timeline: Timeline): number {
  return timeline.rows > 1 ? (timeline.end - timeline.start) / (timeline.rows - 1) : 0
}

function faultOf({ data, rows, width }: Recording): string | null {
  let before = Number.NEGATIVE_INFINITY
  for (let row = 0; row < rows; row++) {
    const t = data[row * width] as number
    if (!Number.isFinite(t)) return `the time of row ${row + 1} is not a number`
    if (t < before) return `time goes back at row ${row + 1}`
    before = t
  }
  if (rows > 1 && data[0] === before) return "time stands still"
  return null
}

function lastAtOrBefore(at: (row: number) => number, rows: number, instant: number): number {
  let low = 0
  let high = rows - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (at(middle) <= instant) low = middle
    else high = middle - 1
  }
  return low
}
