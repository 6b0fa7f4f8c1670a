import type { Recording } from "../run/contract.ts"
import { type Extent, extentOf } from "./extent.ts"
import { endOf, sample, spacingOf, startOf, type Track, trackOf } from "./track.ts"

/** Times of a packed motion are rounded to this part. */
const timeRounding = 1e-6

/**
 * How far two motions lie apart at one and the same time step, over the time that both cover: the largest distance
 * against the reference's extent or, where a motion has run far out of it, against how far that one has come. A
 * shift by one step is free, since old and new values within a step make no other law. A different end in time
 * counts as well, unless one of them was cut short.
 */
export function unlikeness(a: Track, b: Track, extent: Extent, cutShort: boolean): number {
  const from = Math.max(startOf(a), startOf(b))
  const to = Math.min(endOf(a), endOf(b))
  const latest = Math.max(endOf(a), endOf(b))
  const duration = latest - from || 1
  const step = Math.max(spacingOf(a), spacingOf(b))
  const rounding = timeRounding * Math.max(1, Math.abs(latest))
  if (to < from - rounding) return 1
  // A motion that has run far away was cut there: that the other goes on says nothing.
  const goesOn = cutShort || (endOf(b) < endOf(a) && farOff(b, extent))
  let worst = goesOn ? 0 : Math.max(0, latest - to - 2 * step) / duration
  const { dim } = a
  const here = new Float64Array(dim)
  const around = [new Float64Array(dim), new Float64Array(dim), new Float64Array(dim)] as const
  const run = Float64Array.from(extent.scales)
  const origin = b.values.subarray(0, dim)
  const shift = spacingOf(a)
  for (const t of b.times) {
    if (t < from - rounding || t > to + rounding) continue
    sample(a, t, here)
    sample(b, Math.max(t - shift, startOf(b)), around[0])
    sample(b, t, around[1])
    sample(b, Math.min(t + shift, endOf(b)), around[2])
    for (let k = 0; k < dim; k++) {
      run[k] = Math.max(run[k]!, Math.abs(around[1][k]! - origin[k]!))
      const low = Math.min(around[0][k]!, around[1][k]!, around[2][k]!)
      const high = Math.max(around[0][k]!, around[1][k]!, around[2][k]!)
      worst = Math.max(worst, (here[k]! - high) / run[k]!, (low - here[k]!) / run[k]!)
    }
  }
  return worst
}

/** So many extents away at its end a motion has left the picture. */
const outOfPicture = 8

function farOff(track: Track, extent: Extent): boolean {
  const last = track.values.length - track.dim
  for (let k = 0; k < track.dim; k++) {
    if (Math.abs(track.values[last + k]! - track.values[k]!) > outOfPicture * extent.size) return true
  }
  return false
}

/** The same between two recordings, for one series; endless where either lacks it. */
export function recordingsUnlike(
  a: Recording | undefined,
  b: Recording | undefined,
  reference: Recording | undefined,
  path: string,
  cutShort = false,
): number {
  const one = trackOf(a, path)
  const other = trackOf(b, path)
  const measure = trackOf(reference, path)
  if (one === null || other === null || measure === null) return Number.POSITIVE_INFINITY
  return unlikeness(one, other, extentOf(measure, path), cutShort)
}
