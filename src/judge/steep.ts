import type { Extent } from "./extent.ts"
import { endOf, rowBefore, sample, startOf, type Track } from "./track.ts"

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

/** Bounds of the curve from `t - window` to `t + window`: its values at both ends and at the rows between them. */
function boundsWithin(track: Track, t: number, window: number): { low: number[]; high: number[] } {
  const { times, values, dim } = track
  const from = Math.max(t - window, startOf(track))
  const to = Math.min(t + window, endOf(track))
  const here = new Float64Array(dim)
  sample(track, from, here)
  const low = [...here]
  const high = [...here]
  const take = (at: ArrayLike<number>, offset: number): void => {
    for (let k = 0; k < dim; k++) {
      low[k] = Math.min(low[k]!, at[offset + k]!)
      high[k] = Math.max(high[k]!, at[offset + k]!)
    }
  }
  sample(track, to, here)
  take(here, 0)
  for (let i = rowBefore(times, from); i < times.length && times[i]! < to; i++)
    if (times[i]! > from) take(values, i * dim)
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
