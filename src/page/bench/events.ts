import type { Recording } from "../../run/contract.ts"
import { type BodyColumns, squareAt, zeroAt } from "./series.ts"
import type { Timeline } from "./timeline.ts"

/** Something that happens, found in the recording alone. */
export type MotionEvent =
  | {
      /** a recorded force leaves zero, or is zero again */
      readonly kind: "begins" | "ends"
      readonly row: number
      readonly instant: number
      readonly body: string
      readonly force: string
    }
  | {
      /** a coordinate is greatest or least: the motion along it turns */
      readonly kind: "turns"
      readonly row: number
      readonly instant: number
      readonly body: string
      readonly axis: Axis
      readonly extreme: "greatest" | "least"
      readonly value: number
    }
  | {
      /** from here to the end the position stays, and the momentum, if recorded, is zero */
      readonly kind: "rests"
      readonly row: number
      readonly instant: number
      readonly body: string
    }

export type Axis = "x" | "y" | "z"
const axes: readonly Axis[] = ["x", "y", "z"]

/** Turns smaller than this part of the coordinate's range are taken for noise. */
const leastSwing = 0.01
/** Rest must last at least this part of the recording, so that a last row alone is no rest. */
const leastRest = 0.01

/** Row 0 is often recorded before any step, with forces still zero: they are watched from the first step on. */
const firstStep = 1

/**
 * All events of all bodies, in order of time.
 *
 * @param least square of the size that a force must have to act, N²
 */
export function eventsOf(
  recording: Recording,
  timeline: Timeline,
  bodies: readonly BodyColumns[],
  least: number,
): MotionEvent[] {
  const found = bodies.flatMap(body => [
    ...contactEvents(recording, timeline, body, least),
    ...turnEvents(recording, timeline, body),
    ...restEvents(recording, timeline, body),
  ])
  return found.sort((a, b) => a.row - b.row)
}

function contactEvents(
  recording: Recording,
  timeline: Timeline,
  body: BodyColumns,
  least: number,
): MotionEvent[] {
  const out: MotionEvent[] = []
  for (const force of body.forces) {
    // a force that is not a number counts as acting
    const acts = (row: number) => !(squareAt(recording, row, force.column) <= least)
    let acting = acts(firstStep)
    for (let row = firstStep + 1; row < recording.rows; row++) {
      const now = acts(row)
      if (now === acting) continue
      acting = now
      const kind = now ? "begins" : "ends"
      out.push({ kind, row, instant: timeline.at(row), body: body.name, force: force.name })
    }
  }
  return out
}

/** Turning points with a dead band: one counts when the motion has come back from it by a hundredth of the whole range. */
function turnEvents(recording: Recording, timeline: Timeline, body: BodyColumns): MotionEvent[] {
  const out: MotionEvent[] = []
  const { data, width, rows } = recording
  for (const [k, axis] of axes.entries()) {
    const column = body.position + k
    const range = rangeOf(recording, column)
    if (!(range > 0)) continue
    const band = range * leastSwing
    let way: 0 | 1 | -1 = 0
    let [high, highRow, low, lowRow] = [-Infinity, 0, Infinity, 0]
    for (let row = 0, at = column; row < rows; row++, at += width) {
      const value = data[at] as number
      if (value > high) [high, highRow] = [value, row]
      if (value < low) [low, lowRow] = [value, row]
      if (way >= 0 && value < high - band) {
        if (way === 1) out.push(turn(timeline, body.name, axis, "greatest", highRow, high))
        way = -1
        ;[low, lowRow] = [value, row]
      } else if (way <= 0 && value > low + band) {
        if (way === -1) out.push(turn(timeline, body.name, axis, "least", lowRow, low))
        way = 1
        ;[high, highRow] = [value, row]
      }
    }
  }
  return out
}

function turn(
  timeline: Timeline,
  body: string,
  axis: Axis,
  extreme: "greatest" | "least",
  row: number,
  value: number,
): MotionEvent {
  return { kind: "turns", row, instant: timeline.at(row), body, axis, extreme, value }
}

function restEvents(recording: Recording, timeline: Timeline, body: BodyColumns): MotionEvent[] {
  const { data, width, rows } = recording
  const last = rows - 1
  const tiny = axes.map((_, k) => rangeOf(recording, body.position + k) * 1e-9)
  const still = (row: number) =>
    axes.every((_, k) => {
      const gap = (data[row * width + body.position + k] ?? 0) - (data[last * width + body.position + k] ?? 0)
      return Math.abs(gap) <= (tiny[k] ?? 0)
    }) &&
    (body.momentum === null || zeroAt(recording, row, body.momentum))
  let row = last
  while (row > 0 && still(row - 1)) row--
  const lasts = timeline.end - timeline.at(row)
  if (row === 0 || !still(last) || !(lasts > (timeline.end - timeline.start) * leastRest)) return []
  return [{ kind: "rests", row, instant: timeline.at(row), body: body.name }]
}

/** Greatest less least value of a column; below zero when none is a number. */
export function rangeOf({ data, width, rows }: Recording, column: number): number {
  let [low, high] = [Infinity, -Infinity]
  for (let row = 0, at = column; row < rows; row++, at += width) {
    const value = data[at] as number
    if (value < low) low = value
    if (value > high) high = value
  }
  return high - low
}
