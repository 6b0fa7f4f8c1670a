import { multiples, niceStep } from "./number.ts"
import { nearestRow, type Timeline } from "./timeline.ts"

/** Speeds of play, against real time: powers of two from 1/32 to 8. */
export const speeds: readonly number[] = [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8]

/** The player as plain data. */
export interface Clock {
  readonly instant: number
  readonly playing: boolean
  readonly speed: number
  readonly loop: boolean
}

/**
 * Recorded seconds that pass in a second at speed 1: real time where a recording lasts from a fifth of a second to two minutes,
 * else the power of ten that brings it to 3 to 30 s (a month of the Moon, a click of a latch). Rows pass at 60 a second.
 */
export function paceOf(timeline: Timeline): number {
  const span = timeline.end - timeline.start
  if (timeline.unit === "row") return 60
  if (!(span > 0) || (span >= 0.2 && span <= 120)) return 1
  return 10 ** Math.floor(Math.log10(span / 3) + 1e-9)
}

/** The speed to begin with: the whole takes two seconds at least, and twenty at most where the scale reaches that. */
export function firstSpeed(timeline: Timeline): number {
  const span = (timeline.end - timeline.start) / paceOf(timeline)
  const fits = speeds.filter(s => span / s >= 2 && span / s <= 20)
  return fits.includes(1) ? 1 : (fits.find(s => s > 1) ?? fits.at(-1) ?? 1)
}

/** The clock `seconds` of real time later: at the end it stops, or begins again when it loops. */
export function advance(clock: Clock, timeline: Timeline, seconds: number): Clock {
  if (!clock.playing) return clock
  const instant = clock.instant + seconds * clock.speed * paceOf(timeline)
  if (instant < timeline.end) return { ...clock, instant }
  const span = timeline.end - timeline.start
  if (clock.loop && span > 0)
    return { ...clock, instant: timeline.start + ((instant - timeline.start) % span) }
  return { ...clock, instant: timeline.end, playing: false }
}

/** Pressing play at the end begins again at the start. */
export function togglePlay(clock: Clock, timeline: Timeline): Clock {
  if (clock.playing) return seekRow(clock, timeline, clock.instant)
  const instant = clock.instant >= timeline.end ? timeline.start : clock.instant
  return { ...clock, instant, playing: timeline.end > timeline.start }
}

/** To the next recorded row, or the one before: off a row, the nearest one that way. Stops play. */
export function stepRows(clock: Clock, timeline: Timeline, by: number): Clock {
  const row = timeline.rowAt(clock.instant)
  const onRow = timeline.at(row) === clock.instant
  const from = by < 0 && !onRow ? row + 1 : row
  const to = Math.min(timeline.rows - 1, Math.max(0, from + by))
  return { ...clock, instant: timeline.at(to), playing: false }
}

/** To the next of some instants, or the last one before; stays when there is none. Stops play. */
export function stepTo(clock: Clock, instants: readonly number[], way: 1 | -1): Clock {
  const ahead = instants.filter(t => (way > 0 ? t > clock.instant : t < clock.instant))
  if (ahead.length === 0) return { ...clock, playing: false }
  return { ...clock, instant: way > 0 ? Math.min(...ahead) : Math.max(...ahead), playing: false }
}

/** A quicker or slower speed of the scale. */
export function changeSpeed(clock: Clock, by: number): Clock {
  const at = speeds.indexOf(clock.speed) + by
  return { ...clock, speed: speeds[Math.min(speeds.length - 1, Math.max(0, at))] ?? clock.speed }
}

export function seek(clock: Clock, timeline: Timeline, instant: number): Clock {
  return { ...clock, instant: Math.min(timeline.end, Math.max(timeline.start, instant)) }
}

/** To the recorded row nearest to an instant. Stops play: what stands still is a row, with its own time and values. */
export function seekRow(clock: Clock, timeline: Timeline, instant: number): Clock {
  return { ...clock, instant: timeline.at(nearestRow(timeline, instant)), playing: false }
}

/** A stretch of time on or back, and one row at least. Stops play. */
export function pageBy(clock: Clock, timeline: Timeline, seconds: number): Clock {
  const there = seekRow(clock, timeline, clock.instant + seconds)
  return there.instant === clock.instant ? stepRows(clock, timeline, Math.sign(seconds)) : there
}

/** The instant of the row shown: the last one at or before the clock's. While playing only positions run ahead of it. */
export function shownInstant({ instant }: Clock, timeline: Timeline): number {
  return timeline.rows > 0 ? timeline.at(timeline.rowAt(instant)) : instant
}

/** "1/4", "2": as engraved on the scale. */
export function speedText(speed: number): string {
  return speed >= 1 ? String(speed) : `1/${Math.round(1 / speed)}`
}

export interface Ruler {
  readonly major: readonly number[]
  readonly minor: readonly number[]
  readonly step: number
}

/** Ticks of the time bar: numbered ones at least `room` px apart, and fifths or halves between. */
export function ruler(timeline: Timeline, width: number, room = 58): Ruler {
  const span = timeline.end - timeline.start
  if (!(span > 0)) return { major: [timeline.start], minor: [], step: 1 }
  const step = niceStep(span, Math.max(1, width / room))
  const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9)
  const fine = Math.round(lead) === 2 ? step / 4 : step / 5
  return {
    major: multiples(timeline.start, timeline.end, step),
    minor: multiples(timeline.start, timeline.end, fine),
    step,
  }
}
