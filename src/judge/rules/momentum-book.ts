import { sizeAt } from "./size-at.ts"
import { bestBook, bookings, bookSteps, type StepBook } from "./step-book.ts"
import { largestOf, type System, totalOf, within } from "./system.ts"

/**
 * Books the momentum of a system step by step: Δ∑p = ∑F Δt, an identity of the stepper at any Δt.
 * The one way of booking that balances best is taken for the whole motion.
 */
export function momentumBook(system: System, tolerance: number): StepBook {
  const { times, momenta, forces, all } = system
  const total = totalOf(momenta)
  const largest = largestOf(momenta)
  const acted = new Float64Array(times.length - 1)
  for (let i = 0; i < acted.length; i++)
    for (const { values } of all) acted[i]! += sizeAt(values, i) * (times[i + 1]! - times[i]!)
  return bestBook(bookings, share => {
    const booked = new Float64Array((times.length - 1) * 3)
    for (let i = 0; i < times.length - 1; i++) {
      const dt = times[i + 1]! - times[i]!
      for (const { values } of forces)
        for (let k = 0; k < 3; k++) booked[i * 3 + k]! += within(values, i, k, share) * dt
    }
    return bookSteps(times, total, booked, acted, largest, tolerance)
  })
}
