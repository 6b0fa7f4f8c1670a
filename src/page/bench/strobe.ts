import { multiples, niceStep } from "./number.ts"
import type { Timeline } from "./timeline.ts"

export interface Strobe {
  /** time between images */
  readonly interval: number
  readonly instants: readonly number[]
}

/** Images at equal, round intervals from the start on: at most `most` of them, the first at the very start. */
export function strobeOf(timeline: Timeline, most = 14): Strobe {
  const span = timeline.end - timeline.start
  if (!(span > 0)) return { interval: 0, instants: [timeline.start] }
  const interval = niceStep(span, Math.max(1, most - 1))
  const instants = multiples(0, span, interval).map(t => timeline.start + t)
  return { interval, instants }
}

/** The same, finer: dots of a trail, a whole number of them between two images. */
export function trailOf(strobe: Strobe, parts = 5, timeline: Timeline): number[] {
  if (strobe.interval === 0) return [timeline.start]
  const step = strobe.interval / parts
  const count = Math.floor((timeline.end - timeline.start) / step + 1e-9)
  return Array.from({ length: count + 1 }, (_, k) => timeline.start + k * step)
}
