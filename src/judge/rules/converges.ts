import type { CheckRule } from "../../worksheet/contract.ts"
import { compareLadders } from "../compare.ts"
import { type Extent, extentOf, relativeDistance } from "../extent.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { commonSpan, countsSteps, gridOf } from "../grid.ts"
import { isSensitive, ladderOf } from "../ladders.ts"
import type { Ladder } from "../limit.ts"
import { capital, numberWords, seconds, spoken } from "../quantity.ts"
import { sample } from "../track.ts"

type ConvergesRule = Extract<CheckRule, { kind: "converges" }>

/** A measured order may lie this much below the stated one: at a finite step it is never met exactly. */
const orderSlack = 0.3
/** Changes below this part of the extent are rounding, of the motion and of its recording. */
const rounding = 1e-9

/**
 * The series goes to the reference's limit, and what it still changes from one halving of the step to the next
 * falls by 2^order or more. Two runs show no order, so a third is asked for.
 */
export function converges({ check, student, reference }: Asked, { series, order }: ConvergesRule): Finding {
  const what = spoken(series)
  const mine = ladderOf(student, check.cell, series)
  const theirs = ladderOf(reference, check.cell, series)
  if (theirs === null) return found({ met: false, wrong: `The reference has no recording of ${what.name}.` })
  if (mine === null)
    return found({ met: false, departsAt: 0, wrong: `Your program does not record ${what.name}.` })
  if (mine.tracks.length < 2 || countsSteps(mine))
    return found({
      met: false,
      departsAt: 0,
      wrong: "The motion could not be computed with shorter time steps, so it shows no order.",
      look: "Let the loop run until a time, not for a number of steps.",
    })
  if (mine.tracks.length < 3)
    return found({
      met: false,
      undecided: true,
      departsAt: 0,
      wrong: `With two time steps alone ${what.name} shows no order.`,
    })
  const extent = extentOf(theirs.tracks[0]!, series)
  const limits = compareLadders(mine, theirs, extent, null, isSensitive(reference, check.cell))
  if (limits.outcome !== "same limit")
    return found({
      met: false,
      undecided: limits.outcome === "undecided",
      departsAt: limits.departsAt,
      wrong: `As the time step shrinks, ${what.name} does not go where the reference goes, so its order does not count.`,
      look: `On the bench, go to ${seconds(limits.departsAt ?? 0)} and look at the force arrows.`,
      ratio: limits.distance / limits.tolerance,
    })
  const seen = orderOf(mine, extent, limits.until)
  if (seen === null)
    return found({ met: true, right: `${capital(what.name)} is right at any time step.`, ratio: 0 })
  const words = `when the time step is halved, its error falls to ${numberWords(2 ** -seen, 2)} of what it was`
  const ratio = order / Math.max(seen, 0.1)
  if (seen >= order - orderSlack)
    return found({
      met: true,
      right: `${capital(what.name)} closes on its limit: ${words}.`,
      ratio: Math.min(1, ratio),
    })
  return found({
    met: false,
    departsAt: 0,
    right: `${capital(what.name)} goes to the right limit.`,
    wrong: `Yet ${words}; a method of order ${order} leaves ${numberWords(2 ** -order, 2)}.`,
    look: "See which momentum and which force each line of a step takes: those of its start, its end or its middle.",
    ratio,
  })
}

/** log₂ of the ratio of the changes between the last three runs; null where the last changes are rounding. */
function orderOf(ladder: Ladder, extent: Extent, until: number): number | null {
  const tracks = ladder.tracks.slice(-3)
  const [coarse, middle, fine] = tracks
  if (coarse === undefined || middle === undefined || fine === undefined) return null
  const grid = gridOf(coarse, commonSpan(ladder, ladder))
  const dim = extent.scales.length
  const [a, b, c] = [new Float64Array(dim), new Float64Array(dim), new Float64Array(dim)]
  let first = 0
  let second = 0
  for (const t of grid) {
    if (t > until) break
    sample(coarse, t, a)
    sample(middle, t, b)
    sample(fine, t, c)
    first += relativeDistance(a, 0, b, 0, extent) ** 2
    second += relativeDistance(b, 0, c, 0, extent) ** 2
  }
  if (Math.sqrt(second / grid.length) < rounding) return null
  return 0.5 * Math.log2(first / second)
}
