import { boxOf } from "../extent.ts"
import type { Track } from "../track.ts"

/** Below this part of the reference's own change nothing has happened. */
const leastActivity = 0.02

/**
 * A rule about what a quantity must not do is kept for nothing by a motion in which nothing happens. False when
 * the reference's quantity changes and the student's does not.
 */
export function acts(student: Track, reference: Track | null): boolean {
  if (reference === null) return true
  const size = (track: Track): number => {
    const { low, high } = boxOf(track)
    return Math.hypot(...low.map((least, k) => high[k]! - least))
  }
  return size(student) >= leastActivity * size(reference)
}
