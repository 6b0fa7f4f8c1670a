import { massOf } from "./mass.ts"
import { bookings } from "./step-book.ts"
import { type System, within } from "./system.ts"

/** The energy of a system against the work of forces. */
export interface EnergyBook {
  /** largest |E(t) − E(0) − ∑ W|, J */
  readonly gap: number
  /** largest kinetic energy of the system, or largest energy where that is unknown, J: what the gap is measured by */
  readonly size: number
  /** first instant at which the gap is larger than `tolerance` times `size`; the gap there with its sign, J */
  readonly first: { readonly t: number; readonly gap: number } | null
}

/** Δr that does not go along p tells no mass. */
const worstMisfit = 0.2

/**
 * Books energy: E(t) = E(0) + ∑ F·Δr, the work of the forces that count, each taken at the start, the end or the middle of
 * the step, whichever balances best over the whole motion.
 *
 * @param energy recorded energy an instant; null for the kinetic energy ∑ p²/2m with the masses that the motion
 *   itself tells
 * @returns null where the kinetic energy is asked for and a mass cannot be told
 */
export function energyBook(
  system: System,
  bodies: readonly string[],
  energy: Float64Array | null,
  tolerance: number,
): EnergyBook | null {
  const kinetic = kineticEnergy(system)
  const quantity = energy ?? kinetic
  if (quantity === null) return null
  const measure = kinetic ?? quantity
  let size = 0
  for (const value of measure) size = Math.max(size, Math.abs(value))
  const { times, positions, forces } = system
  const books = bookings.map((share): EnergyBook => {
    let work = 0
    let gap = 0
    let first: EnergyBook["first"] = null
    for (let i = 0; i < times.length - 1; i++) {
      for (const { body, values } of forces) {
        const place = positions[bodies.indexOf(body)]?.values
        if (place === undefined) continue
        for (let k = 0; k < 3; k++)
          work += within(values, i, k, share) * (place[(i + 1) * 3 + k]! - place[i * 3 + k]!)
      }
      const off = quantity[i + 1]! - quantity[0]! - work
      gap = Math.max(gap, Math.abs(off))
      if (first === null && Math.abs(off) > tolerance * size) first = { t: times[i + 1]!, gap: off }
    }
    return { gap, size, first }
  })
  return books.reduce((best, other) => (other.gap < best.gap ? other : best))
}

/** ∑ p²/2m an instant; null where a body's mass cannot be told. */
function kineticEnergy({ times, momenta, positions }: System): Float64Array | null {
  const out = new Float64Array(times.length)
  for (const [b, { values }] of momenta.entries()) {
    const still = values.every(value => value === 0)
    const found = massOf(positions[b]!, momenta[b]!)
    if (!still && (found === null || found.misfit > worstMisfit)) return null
    if (found === null) continue
    for (let i = 0; i < times.length; i++)
      out[i]! += (values[i * 3]! ** 2 + values[i * 3 + 1]! ** 2 + values[i * 3 + 2]! ** 2) / (2 * found.mass)
  }
  return out
}
