import type { Track } from "../track.ts"
import { bookings } from "./step-book.ts"
import { within } from "./system.ts"

/** A body's mass as its recorded motion tells it: Δr = p Δt / m in each step. */
export interface FoundMass {
  /** kg */
  readonly mass: number
  /** root mean square of Δr − p Δt / m, as part of that of Δr, for the momentum of the step that fits best */
  readonly misfit: number
}

/** Fits Δr = p Δt / m by least squares; null for a body that does not move. */
export function massOf(position: Track, momentum: Track): FoundMass | null {
  const fits = bookings.map(share => fitted(position, momentum, share)).filter(found => found !== null)
  return fits.reduce<FoundMass | null>(
    (best, other) => (best === null || other.misfit < best.misfit ? other : best),
    null,
  )
}

function fitted({ times, values }: Track, { values: momenta }: Track, share: number): FoundMass | null {
  let pp = 0
  let pr = 0
  let rr = 0
  for (let i = 0; i < times.length - 1; i++) {
    const dt = times[i + 1]! - times[i]!
    for (let k = 0; k < 3; k++) {
      const push = within(momenta, i, k, share) * dt
      const moved = values[(i + 1) * 3 + k]! - values[i * 3 + k]!
      pp += push * push
      pr += push * moved
      rr += moved * moved
    }
  }
  if (!(pp > 0) || !(pr > 0)) return null
  const inverse = pr / pp
  return { mass: 1 / inverse, misfit: Math.sqrt(Math.max(0, rr - inverse * pr) / rr) }
}
