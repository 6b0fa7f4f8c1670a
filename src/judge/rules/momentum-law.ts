import { type Asked, type Finding, found } from "../finding.ts"
import { ladderOf, recordingOf } from "../ladders.ts"
import { capital, seconds, spoken, withUnit } from "../quantity.ts"
import { trackOf } from "../track.ts"
import { acts } from "./activity.ts"
import { bookMomentum, type MomentumBook } from "./momentum-book.ts"
import { mayShrink, shrinksAway } from "./shrink.ts"

/**
 * Each step changes the body's momentum by the sum of its recorded forces times the step, to rounding. A method
 * whose recorded force is not exactly the one it used (that of another instant of the step) is let through when
 * the books close as the step shrinks.
 */
export function momentumLaw({ check, student, reference }: Asked): Finding {
  if (check.rule.kind !== "law") throw new TypeError("A law rule was expected.")
  const { body, tolerance } = check.rule
  const path = `${body}.momentum`
  const what = spoken(path).name
  const recording = recordingOf(student, check.cell)
  const momentum = trackOf(recording, path)
  const book = recording === undefined ? null : bookMomentum(recording, body, tolerance)
  if (momentum === null)
    return found({ met: false, departsAt: 0, wrong: `Your program does not record ${what}.` })
  if (book === null)
    return found({
      met: false,
      departsAt: momentum.times[0]!,
      wrong:
        momentum.times.length < 3
          ? `Only ${momentum.times.length === 1 ? "one instant was" : "two instants were"} recorded, so there are no steps to look at.`
          : `Your program records no forces on ${body}, so its momentum cannot be booked.`,
      look: "See how often the line with record is reached.",
    })
  const ratio = book.worstStep / tolerance
  const drifts = ratio <= 1 ? [] : booksOf(student, check.cell, body, tolerance).map(b => b.drift)
  const balanced = ratio <= 1 || shrinksAway(drifts)
  if (!balanced)
    return found({
      met: false,
      undecided: mayShrink(drifts),
      departsAt: book.firstGap?.t ?? null,
      wrong: gapWords(what, book),
      look: `On the bench, go to ${seconds(book.firstGap?.t ?? 0)} and hold the change of the momentum arrow against the force arrows.`,
      ratio,
    })
  if (!acts(momentum, ladderOf(reference, check.cell, path)?.tracks[0] ?? null))
    return found({
      met: false,
      departsAt: momentum.times[0]!,
      wrong: `${capital(what)} never changes, and no recorded force acts that could change it.`,
      look: "On the bench, look for the force arrow that should act.",
    })
  return found({
    met: true,
    right: `In every step ${what} changes by net force times time step.`,
    ratio: Math.min(ratio, 1),
  })
}

function booksOf(student: Asked["student"], cell: string, body: string, tolerance: number): MomentumBook[] {
  return student.runs.flatMap(recordings => {
    const recording = recordings.find(r => r.cell === cell)
    return (recording && bookMomentum(recording, body, tolerance)) ?? []
  })
}

function gapWords(what: string, { firstGap }: MomentumBook): string {
  if (firstGap === null) return `The change of ${what} and the impulse of its forces do not balance.`
  return `In the step that ends at ${seconds(firstGap.t)}, the change of ${what} and the impulse of the recorded forces differ by ${withUnit(firstGap.size, "kg m/s")}.`
}
