import type { Recording } from "../run/contract.ts"
import { type Extent, extentOf } from "./extent.ts"
import { hullDistance } from "./steep.ts"
import { endOf, sample, spacingOf, startOf, type Track, trackOf } from "./track.ts"

/**
 * How far two motions lie apart at one and the same time step, over the time that both cover: the largest distance
 * against the reference's extent or, where a motion has run far out of it, against how far that one has come. A
 * different end in time counts as well, unless one of them was cut short.
 */
export function unlikeness(a: Track, b: Track, extent: Extent, cutShort: boolean): number {
  const from = Math.max(startOf(a), startOf(b))
  const to = Math.min(endOf(a), endOf(b))
  const duration = Math.max(endOf(a), endOf(b)) - from || 1
  const step = Math.max(spacingOf(a), spacingOf(b))
  let worst = cutShort ? 0 : Math.max(0, Math.abs(endOf(a) - endOf(b)) - 2 * step) / duration
  const here = new Float64Array(a.dim)
  const there = new Float64Array(a.dim)
  const run = Float64Array.from(extent.scales)
  const origin = b.values.subarray(0, b.dim)
  const window = 2 * Math.min(spacingOf(a), spacingOf(b))
  for (const t of b.times) {
    if (t < from || t > to) continue
    sample(a, t, here)
    sample(b, t, there)
    let apart = 0
    for (let k = 0; k < run.length; k++) {
      run[k] = Math.max(run[k]!, Math.abs(there[k]! - origin[k]!))
      apart = Math.max(apart, Math.abs(here[k]! - there[k]!) / run[k]!)
    }
    if (apart > 0.02) apart = Math.min(apart, hullDistance(a, b, t, window, extent) ?? apart)
    if (apart > worst) worst = apart
  }
  return to >= from ? worst : Math.max(worst, 1)
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
