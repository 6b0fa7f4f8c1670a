import { boxOf, extentOf } from "../extent.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { ladderOf } from "../ladders.ts"
import { amount, capital, seconds, spoken } from "../quantity.ts"
import type { Track } from "../track.ts"
import { acts } from "./activity.ts"

/** Beyond a bound by less than this part of the extent is rounding. */
const rounding = 1e-9

/** A component never leaves its band, at the time step as given. */
export function stays({ check, student, reference }: Asked): Finding {
  if (check.rule.kind !== "stays") throw new TypeError("A stays rule was expected.")
  const { series, above, below } = check.rule
  const what = spoken(series)
  const mine = ladderOf(student, check.cell, series)
  const theirs = ladderOf(reference, check.cell, series)
  if (mine === null)
    return found({ met: false, departsAt: 0, wrong: `Your program does not record ${what.name}.` })
  const first = mine.tracks[0]!
  const { size } = extentOf(theirs?.tracks[0] ?? first, series)
  const given = excess(first, above, below)
  if (given.most <= rounding * size) {
    if (!acts(first, theirs?.tracks[0] ?? null))
      return found({
        met: false,
        departsAt: first.times[0]!,
        wrong: `${capital(what.name)} stays at ${amount(boxOf(first).low[0]!, what.unit)} all the time: nothing happens that could be checked.`,
        look: "On the bench, look at what should act in this part of the motion.",
      })
    return found({ met: true, right: `${capital(what.name)} stays ${bandWords(above, below, what.unit)}.` })
  }
  return found({
    met: false,
    departsAt: given.since,
    right:
      (given.since ?? 0) > first.times[0]!
        ? `Until ${seconds(given.since ?? 0)}, ${what.name} stays ${bandWords(above, below, what.unit)}.`
        : "",
    wrong: `At ${seconds(given.at)}, ${what.name} is ${amount(given.value, what.unit)}; it should stay ${bandWords(above, below, what.unit)}.`,
    look: `On the bench, go to ${seconds(given.since ?? 0)} and step on from there.`,
    ratio: 1 + given.most / (theirs === null ? size : roomOf(theirs.tracks[0]!, above, below, size)),
  })
}

/** How far the reference itself keeps from the nearest bound, where it does: what an excess is measured by. */
function roomOf({ values }: Track, above: number | null, below: number | null, size: number): number {
  let room = size
  for (const value of values) {
    if (above !== null) room = Math.min(room, value - above)
    if (below !== null) room = Math.min(room, below - value)
  }
  return Math.max(room, rounding * size)
}

interface Excess {
  readonly most: number
  readonly at: number
  readonly value: number
  readonly since: number | null
}

function excess({ times, values }: Track, above: number | null, below: number | null): Excess {
  let most = 0
  let at = 0
  let since: number | null = null
  for (let i = 0; i < times.length; i++) {
    const over = Math.max(above === null ? 0 : above - values[i]!, below === null ? 0 : values[i]! - below)
    if (over > 0 && since === null) since = times[i]!
    if (over > most) {
      most = over
      at = i
    }
  }
  return { most, at: times[at]!, value: values[at]!, since }
}

function bandWords(above: number | null, below: number | null, unit: string): string {
  if (above !== null && below !== null) return `between ${amount(above, unit)} and ${amount(below, unit)}`
  if (above !== null) return above === 0 ? "at or above zero" : `at or above ${amount(above, unit)}`
  return below === 0 ? "at or below zero" : `at or below ${amount(below ?? 0, unit)}`
}
