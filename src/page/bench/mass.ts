import type { Recording } from "../../run/contract.ts"
import type { BodyColumns } from "./series.ts"
import type { Timeline } from "./timeline.ts"

/** What a recording says about a body's mass: it holds momentum and motion, and their ratio. */
export type MassFound =
  /** `exact`: one ratio fits all rows to rounding; else to the relative misfit given */
  | { readonly kind: "found"; readonly mass: number; readonly exact: boolean; readonly misfit: number }
  | { readonly kind: "none"; readonly why: "no momentum" | "no motion" | "no common ratio" }

/** Rounding alone, summed over a step's difference of positions, stays well below this. */
const roundingMisfit = 1e-6
/** Beyond this the ratio is not one body's mass: momentum and motion do not belong together. */
const greatestMisfit = 0.02

/**
 * Mass as momentum over velocity, m = sum(p · w) / sum(w · w) with w = Δr/Δt from row to row. The velocity of a step may
 * belong to the momentum at its end (momentum stepped first), at its start, or to their mean; whichever fits best is taken.
 */
export function massOf(recording: Recording, timeline: Timeline, body: BodyColumns): MassFound {
  if (body.momentum === null) return { kind: "none", why: "no momentum" }
  const fits = [0, 1, 0.5].map(old => ratioWith(recording, timeline, body, body.momentum ?? 0, old))
  const best = fits.reduce((a, b) => (b.misfit < a.misfit ? b : a))
  if (best.motion === 0) return { kind: "none", why: "no motion" }
  if (!(best.misfit <= greatestMisfit) || !(best.mass > 0)) return { kind: "none", why: "no common ratio" }
  return { kind: "found", mass: best.mass, exact: best.misfit < roundingMisfit, misfit: best.misfit }
}

/** `old`: the weight of the step's first row in its momentum. */
function ratioWith(
  { data, width, rows }: Recording,
  timeline: Timeline,
  body: BodyColumns,
  momentum: number,
  old: number,
) {
  let [pw, ww, pp] = [0, 0, 0]
  for (let row = 1; row < rows; row++) {
    const step = timeline.at(row) - timeline.at(row - 1)
    if (!(step > 0)) continue
    const at = row * width
    for (let k = 0; k < 3; k++) {
      const r = at + body.position + k
      const q = at + momentum + k
      const w = ((data[r] as number) - (data[r - width] as number)) / step
      const p = (data[q] as number) * (1 - old) + (data[q - width] as number) * old
      pw += p * w
      ww += w * w
      pp += p * p
    }
  }
  const mass = pw / ww
  const misfit = Math.sqrt(Math.max(0, pp - mass * pw) / pp)
  return { mass, misfit: Number.isFinite(misfit) ? misfit : Number.POSITIVE_INFINITY, motion: ww }
}
