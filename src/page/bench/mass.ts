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
  const sums = productsOf(recording, timeline, body, body.momentum)
  if (sums.ww === 0) return { kind: "none", why: "no motion" }
  const fits = [
    ratio(sums.nextW, sums.nextNext, sums.ww),
    ratio(sums.oldW, sums.oldOld, sums.ww),
    ratio((sums.nextW + sums.oldW) / 2, (sums.nextNext + sums.oldOld + 2 * sums.nextOld) / 4, sums.ww),
  ]
  const { mass, misfit } = fits.reduce((a, b) => (b.misfit < a.misfit ? b : a))
  if (!(misfit <= greatestMisfit) || !(mass > 0)) return { kind: "none", why: "no common ratio" }
  return { kind: "found", mass, exact: misfit < roundingMisfit, misfit }
}

/** The ratio that leaves least over, and what it leaves over relative to the momentum. */
function ratio(pw: number, pp: number, ww: number): { readonly mass: number; readonly misfit: number } {
  const mass = pw / ww
  const misfit = Math.sqrt(Math.max(0, pp - mass * pw) / pp)
  return { mass, misfit: Number.isFinite(misfit) ? misfit : Number.POSITIVE_INFINITY }
}

/** Sums over all steps of the products of momentum (at the step's end and start) and change of position over time. */
function productsOf(
  { data, width, rows }: Recording,
  timeline: Timeline,
  body: BodyColumns,
  momentum: number,
) {
  const sums = { ww: 0, nextW: 0, oldW: 0, nextNext: 0, oldOld: 0, nextOld: 0 }
  for (let row = 1; row < rows; row++) {
    const step = timeline.at(row) - timeline.at(row - 1)
    if (!(step > 0)) continue
    const at = row * width
    for (let k = 0; k < 3; k++) {
      const r = at + body.position + k
      const q = at + momentum + k
      const w = ((data[r] as number) - (data[r - width] as number)) / step
      const next = data[q] as number
      const old = data[q - width] as number
      sums.ww += w * w
      sums.nextW += next * w
      sums.oldW += old * w
      sums.nextNext += next * next
      sums.oldOld += old * old
      sums.nextOld += next * old
    }
  }
  return sums
}
