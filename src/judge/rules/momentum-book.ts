import type { Recording } from "../../run/contract.ts"
import { trackOf } from "../track.ts"

/** What the recorded forces make of a body's momentum, against what it was recorded to be. */
export interface MomentumBook {
  /** largest |dp − F Δt| of any step, as part of the largest impulse of a step */
  readonly worstStep: number
  /** first step that is out of balance by more than the tolerance: its end in s, the gap in kg m/s */
  readonly firstGap: { readonly t: number; readonly size: number } | null
  /** largest |p(t) − p(0) − ∑ F Δt|, as part of all impulse that passed */
  readonly drift: number
}

/** Part of a step's force that was recorded with the instant at its end: all of it, none, half. */
const bookings = [1, 0, 0.5] as const

/** Rounding of a sum of a few momenta, in units of the largest. */
const roundings = 64 * Number.EPSILON

/**
 * Books momentum step by step: dp = F Δt, an identity of the stepper at any Δt. The one way of booking that
 * balances best is taken for the whole motion. Null when the body's momentum or forces were not recorded.
 */
export function bookMomentum(recording: Recording, body: string, tolerance: number): MomentumBook | null {
  const momentum = trackOf(recording, `${body}.momentum`)
  const force = forcesOn(recording, body)
  if (momentum === null || force === null || momentum.times.length < 3) return null
  const books = bookings.map(share => book(momentum.times, momentum.values, force, share, tolerance))
  return books.reduce((best, other) => (other.worstStep < best.worstStep ? other : best))
}

function book(
  times: Float64Array,
  p: Float64Array,
  force: Float64Array,
  share: number,
  tolerance: number,
): MomentumBook {
  const steps = times.length - 1
  const gap = new Float64Array(steps * 3)
  let impulse = 0
  let passed = 0
  let largest = 0
  for (let i = 0; i < steps; i++) {
    const dt = times[i + 1]! - times[i]!
    let change = 0
    let pushed = 0
    let size = 0
    for (let k = 0; k < 3; k++) {
      const before = i * 3 + k
      const after = before + 3
      const dp = p[after]! - p[before]!
      const booked = (share * force[after]! + (1 - share) * force[before]!) * dt
      gap[i * 3 + k] = dp - booked
      change += dp * dp
      pushed += booked * booked
      size += p[after]! * p[after]!
    }
    impulse = Math.max(impulse, Math.sqrt(change), Math.sqrt(pushed))
    passed += Math.max(Math.sqrt(change), Math.sqrt(pushed))
    largest = Math.max(largest, Math.sqrt(size))
  }
  const rounding = roundings * largest
  const sum = [0, 0, 0]
  let worstStep = 0
  let drift = 0
  let firstGap: MomentumBook["firstGap"] = null
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < 3; k++) sum[k]! += gap[i * 3 + k]!
    const size = Math.hypot(gap[i * 3]!, gap[i * 3 + 1]!, gap[i * 3 + 2]!)
    const part = Math.max(0, size - rounding) / (impulse || 1)
    worstStep = Math.max(worstStep, part)
    drift = Math.max(drift, Math.hypot(...sum) / (passed || 1))
    if (part > tolerance && firstGap === null) firstGap = { t: times[i + 1]!, size }
  }
  return { worstStep, firstGap, drift }
}

/** Sum of the recorded forces on a body at each instant, rows as trackOf keeps them; null if there is none. */
function forcesOn(recording: Recording, body: string): Float64Array | null {
  const tracks = recording.series
    .filter(series => series.kind === "vector" && series.name.startsWith(`${body}.forces.`))
    .map(series => trackOf(recording, series.name)!)
  const [first] = tracks
  if (first === undefined) return null
  const sum = new Float64Array(first.values.length)
  for (const { values } of tracks) {
    for (let i = 0; i < sum.length; i++) sum[i]! += values[i]!
  }
  return sum
}
