import type { Comparison } from "../compare.ts"
import { matchEvents } from "../events.ts"
import { numberWords, seconds } from "../quantity.ts"
import type { Track } from "../track.ts"

/** A departure this part of the time after a contact is put down to it. */
const soonAfter = 0.03
/** Speeds that differ by less than this part are not worth a word. */
const leastDifference = 0.03

/** What happened at the contact where the motions part, if they part at one; "" otherwise. */
export function contactWords(
  { departsAt, referenceEnd }: Comparison,
  student: Track,
  reference: Track,
): string {
  if (departsAt === null || student.dim !== 3) return ""
  const reach = soonAfter * referenceEnd
  const { pairs, missing, extra } = matchEvents(student, reference)
  const here = ({ kind, from, to }: (typeof missing)[number]): boolean =>
    kind === "contact" && departsAt >= from - reach && departsAt <= to + reach
  const pair = pairs.find(({ reference: event }) => here(event))
  if (pair !== undefined) {
    if (Math.abs(pair.faster) < leastDifference) return ""
    return `It parts at the contact at ${seconds(pair.reference.t)}: afterwards it is ${pair.faster > 0 ? "faster" : "slower"} than it should be, ${numberWords(1 + pair.faster, 2)} times the speed.`
  }
  const lost = missing.find(here)
  if (lost !== undefined)
    return `The reference meets something at ${seconds(lost.t)}; your motion goes on as if nothing were there.`
  const surprise = extra.find(here)
  return surprise === undefined
    ? ""
    : `Your motion meets something at ${seconds(surprise.t)} that should not act then.`
}
