import { extentOf } from "../extent.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { countsSteps, endOfMotion } from "../grid.ts"
import { ladderOf } from "../ladders.ts"
import { type Ladder, limitOf } from "../limit.ts"
import { amount, capital, seconds, spoken } from "../quantity.ts"
import { sample, spacingOf } from "../track.ts"

/** A value this small beside the extent of its own series is measured by that part of the extent. */
const leastShare = 0.05

/** While halving the step moves the value by this part of what it is off, a shorter one may tell more. */
const unsettled = 0.2

/** A component has a value at an instant, or at the end: the given one, else the reference's own. */
export function value({ check, student, reference }: Asked): Finding {
  if (check.rule.kind !== "value") throw new TypeError("A value rule was expected.")
  const { series, at, tolerance } = check.rule
  const what = spoken(series)
  const mine = ladderOf(student, check.cell, series)
  const theirs = ladderOf(reference, check.cell, series)
  if (mine === null)
    return found({ met: false, departsAt: 0, wrong: `Your program does not record ${what.name}.` })
  if (theirs === null && check.rule.value === null)
    return found({ met: false, wrong: `The reference has no recording of ${what.name}.` })
  const end = endOfMotion(mine)
  if (at !== "end" && at > end + 3 * spacingOf(mine.tracks[0]!))
    return found({
      met: false,
      departsAt: end,
      wrong: `The motion ends at ${seconds(end)}, before ${seconds(at)}.`,
      look: "See which condition ends the loop.",
    })
  const target = check.rule.value ?? valueAt(theirs!, at)[0]!
  const { size } = extentOf((theirs ?? mine).tracks[0]!, series)
  const allowed = tolerance * Math.max(Math.abs(target), leastShare * size)
  // The limit where the step can be shortened; the finest run itself where it is nearer, for an end that is cut short by a step.
  const candidates = valueAt(mine, at)
  const got = candidates.reduce((best, v) => (Math.abs(v - target) < Math.abs(best - target) ? v : best))
  const ratio = Math.abs(got - target) / allowed
  const when = at === "end" ? "At the end" : `At ${seconds(at)}`
  if (ratio <= 1)
    return found({
      met: true,
      right: `${when} ${what.name} is ${amount(got, what.unit)}, as it should be.`,
      ratio,
    })
  const shown = candidates[0]!
  const moved = Math.abs(shown - candidates[candidates.length - 1]!)
  const off = shown - target
  return found({
    met: false,
    undecided: mine.tracks.length === 2 && moved > unsettled * Math.abs(got - target),
    departsAt: at === "end" ? end : at,
    wrong: `${when} ${what.name} is ${amount(shown, what.unit)}: ${amount(Math.abs(off), what.unit)} too ${off > 0 ? "large" : "small"}.`,
    look: `${capital(when === "At the end" ? "on the bench, go to the end" : `on the bench, go to ${seconds(at as number)}`)} and go back from there to where the motion turns out differently from what you expect.`,
    ratio,
  })
}

/** The limit as the step shrinks, then the value of the finest run. */
function valueAt(ladder: Ladder, at: number | "end"): number[] {
  if (at !== "end") {
    const extent = { size: 1, scales: [1] }
    const limit = limitOf(ladder, Float64Array.of(at), extent).values[0]!
    return [limit, finestAt(ladder, at)]
  }
  const ends = ladder.tracks.map(track => track.values[track.values.length - 1]!)
  const finest = ends[ends.length - 1]!
  if (countsSteps(ladder)) return [ends[0]!]
  const before = ends[ends.length - 2]
  return before === undefined ? [finest] : [finest + (finest - before), finest]
}

function finestAt(ladder: Ladder, at: number): number {
  const out = new Float64Array(1)
  sample(ladder.tracks[ladder.tracks.length - 1]!, at, out)
  return out[0]!
}
