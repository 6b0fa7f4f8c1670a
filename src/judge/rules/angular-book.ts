import { sizeAt } from "./size-at.ts"
import { bestBook, bookings, bookSteps, type StepBook } from "./step-book.ts"
import { largestOf, type System, within } from "./system.ts"

/**
 * Books the angular momentum of a system about a point: Δ∑(r − a) × p = ∑(r − a) × F Δt. With momentum first this
 * is an identity of the stepper (the position moves along the momentum), with the arm and the force of the
 * step's start; of the ways to take arm and force within a step the one that balances best counts.
 */
export function angularBook(
  system: System,
  bodies: readonly string[],
  about: readonly [number, number, number],
  tolerance: number,
): StepBook {
  const { times, momenta, positions, forces, all } = system
  const steps = times.length - 1
  const arms = positions.map(({ values }) => ({ values: values.map((x, i) => x - about[i % 3]!) }))
  const armOf = (body: string): Float64Array | undefined => arms[bodies.indexOf(body)]?.values

  const total = new Float64Array(times.length * 3)
  arms.forEach(({ values: r }, b) => {
    const p = momenta[b]!.values
    for (let i = 0; i < total.length; i += 3)
      addCross(total, i, r[i]!, r[i + 1]!, r[i + 2]!, p[i]!, p[i + 1]!, p[i + 2]!)
  })
  const acted = new Float64Array(steps)
  for (const { body, values } of all) {
    const r = armOf(body)
    if (r === undefined) continue
    for (let i = 0; i < steps; i++)
      acted[i]! += sizeAt(r, i) * sizeAt(values, i) * (times[i + 1]! - times[i]!)
  }
  const largest = largestOf(arms) * largestOf(momenta)
  const ways = bookings.flatMap(arm => bookings.map(share => ({ arm, share })))
  return bestBook(ways, ({ arm, share }) => {
    const booked = new Float64Array(steps * 3)
    for (const { body, values: F } of forces) {
      const r = armOf(body)
      if (r === undefined) continue
      for (let i = 0; i < steps; i++) {
        const dt = times[i + 1]! - times[i]!
        addCross(
          booked,
          i * 3,
          within(r, i, 0, arm),
          within(r, i, 1, arm),
          within(r, i, 2, arm),
          within(F, i, 0, share) * dt,
          within(F, i, 1, share) * dt,
          within(F, i, 2, share) * dt,
        )
      }
    }
    return bookSteps(times, total, booked, acted, largest, tolerance)
  })
}

/** Adds (ax, ay, az) × (bx, by, bz) to three numbers from `at`. */
function addCross(
  out: Float64Array,
  at: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): void {
  out[at]! += ay * bz - az * by
  out[at + 1]! += az * bx - ax * bz
  out[at + 2]! += ax * by - ay * bx
}
