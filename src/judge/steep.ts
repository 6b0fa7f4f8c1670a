import type { Extent } from "./extent.ts"
import { rowBefore, type Track } from "./track.ts"

/** A change of this part of the extent within the window makes a stretch steep: a contact, a force that switches. */
const steepShare = 0.2

/**
 * Distance of the student's value at `t` from all values that the other track takes within `window` of it, for
 * steep stretches: an impact some steps late is late, not wrong. Null where the curve is not steep.
 */
export function hullDistance(
  student: Track,
  other: Track,
  t: number,
  window: number,
  extent: Extent,
): number | null {
  const a = boundsWithin(other, t, window)
  const change = Math.max(...extent.scales.map((scale, k) => (a.high[k]! - a.low[k]!) / scale))
  if (change < steepShare) return null
  const b = boundsWithin(student, t, window)
  return Math.max(
    ...extent.scales.map((scale, k) => Math.max(0, b.low[k]! - a.high[k]!, a.low[k]! - b.high[k]!) / scale),
  )
}

function boundsWithin(track: Track, t: number, window: number): { low: number[]; high: number[] } {
  const { times, values, dim } = track
  const low = Array.from({ length: dim }, () => Number.POSITIVE_INFINITY)
  const high = Array.from({ length: dim }, () => Number.NEGATIVE_INFINITY)
  let i = rowBefore(times, t - window)
  for (; i < times.length; i++) {
    for (let k = 0; k < dim; k++) {
      low[k] = Math.min(low[k]!, values[i * dim + k]!)
      high[k] = Math.max(high[k]!, values[i * dim + k]!)
    }
    if (times[i]! >= t + window) break
  }
  return { low, high }
}

/** A shift by one step is allowed up to this part of the extent. */
const mostShift = 0.03

/** Largest change over a time `lapse`, as part of the extent: what a shift by that much may do (|v| h). */
export function steepestChange(track: Track, lapse: number, extent: Extent): number {
  const { slopes, dim } = track
  let worst = 0
  for (let i = 0; i < slopes.length; i++)
    worst = Math.max(worst, Math.abs(slopes[i]!) / extent.scales[i % dim]!)
  return Math.min(mostShift, worst * lapse)
}
