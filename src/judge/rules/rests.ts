import { type Asked, type Finding, found } from "../finding.ts"
import { ladderOf } from "../ladders.ts"
import { capital, seconds, spoken, withUnit } from "../quantity.ts"
import { endOf } from "../track.ts"
import { acts } from "./activity.ts"
import { sizeAt } from "./size-at.ts"

/**
 * The smallest number with all its digits (IEEE 754-2019, binary64: 2^-1022). What is below it has too few of them to be used up
 * by a force that is worked out from it, so there a right line can come to a stand before zero.
 */
const leastMomentum = 2 ** -1022

const moves = (values: Float64Array, i: number): boolean => sizeAt(values, i) >= leastMomentum

/** From an instant on the body's momentum is zero: not small, since what jitters or creeps has not come to rest. */
export function rests({ check, student, reference }: Asked): Finding {
  if (check.rule.kind !== "rests") throw new TypeError("A rests rule was expected.")
  const { body, from } = check.rule
  const path = `${body}.momentum`
  const what = spoken(path).name
  const track = ladderOf(student, check.cell, path)?.tracks[0]
  if (track === undefined)
    return found({ met: false, departsAt: 0, wrong: `Your program does not record ${what}.` })
  const { times, values } = track
  const last = times.length - 1
  let moving = -1
  for (let i = last; i >= 0 && moving < 0; i--) {
    if ((times[i]! >= from || i === last) && moves(values, i)) moving = i
    if (times[i]! < from) break
  }
  if (moving >= 0) {
    let first = moving
    while (first > 0 && times[first - 1]! >= from && moves(values, first - 1)) first--
    const short = endOf(track) < from
    return found({
      met: false,
      departsAt: times[first]!,
      wrong: short
        ? `The motion ends at ${seconds(endOf(track))}, and ${body} still moves then: ${what} is ${withUnit(sizeAt(values, last), "kg m/s")}.`
        : `From ${seconds(from)} on ${body} should be at rest, but at ${seconds(times[moving]!)} ${what} is ${withUnit(sizeAt(values, moving), "kg m/s")}.`,
      look: `On the bench, go to ${seconds(times[first]!)} and look at the force arrows in single steps: which of them still acts?`,
      ratio: 2,
    })
  }
  if (!acts(track, ladderOf(reference, check.cell, path)?.tracks[0] ?? null))
    return found({
      met: false,
      departsAt: times[0]!,
      wrong: `${capital(what)} is zero all the time: ${body} never moves, so it cannot come to rest.`,
      look: "On the bench, look at the first steps: what should set the body in motion?",
    })
  return found({ met: true, right: `${capital(body)} comes to rest and stays there.` })
}
