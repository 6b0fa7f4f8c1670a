import { sizeAt } from "./size-at.ts"

/** What acted in each step against what changed in it. */
export interface StepBook {
  /** largest gap of any step, as part of the largest change or action of a step */
  readonly worstStep: number
  /** first step that is out of balance by more than the tolerance: its end in s, the gap in the quantity's unit */
  readonly firstGap: { readonly t: number; readonly size: number } | null
  /** largest gap that has gathered since the start, as part of all that passed */
  readonly drift: number
}

/** Rounding of a sum of a few terms, in units of the largest. */
const roundings = 64 * Number.EPSILON

/**
 * Books a vector quantity step by step.
 *
 * @param times instants, s
 * @param quantity three numbers an instant
 * @param booked three numbers a step: what should have changed in it
 * @param acted one number a step: size of all that acted in it, what cancels included
 * @param largest size of the terms that the quantity is made of, for its rounding
 */
export function bookSteps(
  times: Float64Array,
  quantity: Float64Array,
  booked: Float64Array,
  acted: Float64Array,
  largest: number,
  tolerance: number,
): StepBook {
  const steps = times.length - 1
  const gap = new Float64Array(steps * 3)
  let action = 0
  let passed = 0
  for (let i = 0; i < steps; i++) {
    let change = 0
    let pushed = 0
    for (let k = 0; k < 3; k++) {
      const at = i * 3 + k
      const moved = quantity[at + 3]! - quantity[at]!
      gap[at] = moved - booked[at]!
      change += moved * moved
      pushed += booked[at]! * booked[at]!
    }
    const most = Math.max(Math.sqrt(change), Math.sqrt(pushed), acted[i]!)
    action = Math.max(action, most)
    passed += most
  }
  const rounding = roundings * largest
  const sum = [0, 0, 0]
  let worstStep = 0
  let drift = 0
  let firstGap: StepBook["firstGap"] = null
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < 3; k++) sum[k]! += gap[i * 3 + k]!
    const size = sizeAt(gap, i)
    const part = Math.max(0, size - rounding) / (action || 1)
    worstStep = Math.max(worstStep, part)
    drift = Math.max(drift, Math.max(0, sizeAt(sum, 0) - rounding * (i + 1)) / (passed || 1))
    if (part > tolerance && firstGap === null) firstGap = { t: times[i + 1]!, size }
  }
  return { worstStep, firstGap, drift }
}

/** The book by the way of booking that balances best; the first that balances to the last bit ends the search. */
export function bestBook<Way>(ways: readonly Way[], bookBy: (way: Way) => StepBook): StepBook {
  const [first, ...others] = ways
  let best = bookBy(first!)
  for (const way of others) {
    if (best.worstStep === 0) break
    const book = bookBy(way)
    if (book.worstStep < best.worstStep) best = book
  }
  return best
}

/** Part of a step's quantity that was recorded with the instant at its end: all of it, none, half. */
export const bookings = [1, 0, 0.5] as const
