import type { Recording } from "../../run/contract.ts"
import type { BodyColumns } from "./series.ts"
import type { Timeline } from "./timeline.ts"

type Triple = readonly [number, number, number]

/** The account of a body's angular momentum about a point. */
export interface AngularBooks {
  readonly about: Triple
  /** ∑ (r - a) × F Δt of each force, with the place where the step begins, kg m²/s */
  readonly entries: readonly { readonly force: string; readonly impulse: Triple }[]
  /** of L = (r - a) × p, from the first row to the last */
  readonly change: Triple
}

/** Below this share of its two products their difference is rounding. */
const dust = 1e-11

/** A component of (r - a) × p at a row, kg m²/s. */
export function angularAt(
  { data, width }: Recording,
  body: BodyColumns & { readonly momentum: number },
  about: Triple,
  row: number,
  k: number,
): number {
  const [i, j] = [(k + 1) % 3, (k + 2) % 3]
  const at = row * width
  const r = (n: number) => (data[at + body.position + n] as number) - (about[n] as number)
  const p = (n: number) => data[at + body.momentum + n] as number
  const [one, other] = [r(i) * p(j), r(j) * p(i)]
  const difference = one - other
  // where r lies along p the products cancel, and what is left is rounding
  return Math.abs(difference) < dust * (Math.abs(one) + Math.abs(other)) ? 0 : difference
}

/**
 * Where momentum is stepped first and place after it (r' = r + p' Δt/m), r' × p' = r × p + r × F Δt exactly, since p' × p' is
 * zero: so the books balance to rounding with the place at which the step begins. Other steppers leave a rest that falls with
 * the step.
 */
export function angularBooks(
  recording: Recording,
  timeline: Timeline,
  body: BodyColumns & { readonly momentum: number },
  about: Triple,
  shift: 0 | 1,
): AngularBooks {
  const { data, width, rows } = recording
  const entries = body.forces.map(({ name, column }) => {
    const sum = [0, 0, 0]
    for (let row = 1; row < rows; row++) {
      const step = timeline.at(row) - timeline.at(row - 1)
      const before = (row - 1) * width + body.position
      const force = (row - shift) * width + column
      for (let k = 0; k < 3; k++) {
        const [i, j] = [(k + 1) % 3, (k + 2) % 3]
        const ri = (data[before + i] as number) - (about[i] as number)
        const rj = (data[before + j] as number) - (about[j] as number)
        sum[k] =
          (sum[k] as number) + (ri * (data[force + j] as number) - rj * (data[force + i] as number)) * step
      }
    }
    return { force: name, impulse: sum as unknown as Triple }
  })
  const change = [0, 1, 2].map(
    k => angularAt(recording, body, about, rows - 1, k) - angularAt(recording, body, about, 0, k),
  ) as unknown as Triple
  return { about, entries, change }
}

export const hasMomentum = (body: BodyColumns): body is BodyColumns & { readonly momentum: number } =>
  body.momentum !== null
