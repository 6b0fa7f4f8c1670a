import type { Track } from "./track.ts"
import { endOf, sample, startOf } from "./track.ts"

/** Magnitude, phase and combined difference of two response histories; each 0 for equal ones. */
export interface SpragueGeers {
  readonly magnitude: number
  /** as part of half a turn: 0.5 for a quarter period */
  readonly phase: number
  readonly combined: number
}

/**
 * The metric of Sprague and Geers, with ψ_xy = ∫ x y dt:
 *   M = √(ψ_cc / ψ_mm) − 1,   P = arccos(ψ_mc / √(ψ_mm ψ_cc)) / π,   C = √(M² + P²).
 * Tells a wrong size from a shift in time, which a pointwise distance cannot. The argument of the arc cosine is
 * kept in [−1, 1]: for equal shapes rounding takes it out.
 *
 * @param measured m, the reference; @param computed c; both scalar series over one span, equally spaced
 * @source L. E. Schwer, Engineering with Computers 23 (2007) 295, doi:10.1007/s00366-007-0070-1
 */
export function spragueGeers(measured: ArrayLike<number>, computed: ArrayLike<number>): SpragueGeers {
  let mm = 0
  let cc = 0
  let mc = 0
  for (let i = 0; i < measured.length; i++) {
    mm += measured[i]! * measured[i]!
    cc += computed[i]! * computed[i]!
    mc += measured[i]! * computed[i]!
  }
  if (mm === 0 || cc === 0) {
    const same = mm === cc
    return {
      magnitude: same ? 0 : cc === 0 ? -1 : Number.POSITIVE_INFINITY,
      phase: 0,
      combined: same ? 0 : cc === 0 ? 1 : Number.POSITIVE_INFINITY,
    }
  }
  const magnitude = Math.sqrt(cc / mm) - 1
  const phase = Math.acos(Math.min(1, Math.max(-1, mc / Math.sqrt(mm * cc)))) / Math.PI
  return { magnitude, phase, combined: Math.hypot(magnitude, phase) }
}

/** A component of a track at `count` equal distances of time, both ends included. */
export function resampled(track: Track, component: number, count: number): Float64Array {
  const out = new Float64Array(count)
  const value = new Float64Array(track.dim)
  const [from, to] = [startOf(track), endOf(track)]
  for (let i = 0; i < count; i++) {
    sample(track, from + ((to - from) * i) / (count - 1), value)
    out[i] = value[component]!
  }
  return out
}
