import type { Comparison } from "../compare.ts"
import { type MotionEvent, matchEvents } from "../events.ts"
import { numberWords, seconds } from "../quantity.ts"
import { sample, type Track } from "../track.ts"

/** A departure this part of the time after a contact is put down to it. */
const soonAfter = 0.03
/** Speeds that differ by less than this part are not worth a word. */
const leastDifference = 0.03

/** A body whose velocity changes by less than this part of its speed meets nothing. */
const leastChange = 0.1

/** The motion goes on evenly through the whole time of an event of the other one. */
function glides(track: Track, { from, to, before }: MotionEvent): boolean {
  const lapse = (to - from) / 10
  const velocity = (t: number): number[] => {
    const [a, b] = [new Float64Array(track.dim), new Float64Array(track.dim)]
    sample(track, t - lapse, a)
    sample(track, t + lapse, b)
    return [...a].map((x, k) => (b[k]! - x) / (2 * lapse))
  }
  const [v, w] = [velocity(from), velocity(to)]
  return lapse > 0 && Math.hypot(...v.map((x, k) => w[k]! - x)) < leastChange * before
}

/** What happened at the contact where the motions part, if they part at one; "" otherwise. */
export function contactWords(
  { departsAt, referenceEnd }: Comparison,
  student: Track,
  reference: Track,
): string {
  if (departsAt === null || student.dim !== 3) return ""
  const reach = soonAfter * referenceEnd
  const { pairs, missing, extra } = matchEvents(student, reference)
  const here = ({ kind, from, to }: MotionEvent): boolean =>
    kind === "contact" && departsAt >= from - reach && departsAt <= to + reach
  const pair = pairs.find(({ reference: event }) => here(event))
  if (pair !== undefined) {
    if (Math.abs(pair.faster) < leastDifference) return ""
    return `It parts at the contact at ${seconds(pair.reference.t)}: afterwards it is ${pair.faster > 0 ? "faster" : "slower"} than it should be, ${numberWords(1 + pair.faster, 2)} times the speed.`
  }
  const lost = missing.find(event => here(event) && glides(student, event))
  if (lost !== undefined)
    return `The reference meets something at ${seconds(lost.t)}; your motion goes on as if nothing were there.`
  const surprise = extra.find(event => here(event) && glides(reference, event))
  return surprise === undefined
    ? ""
    : `Your motion meets something at ${seconds(surprise.t)} that should not act then.`
}
