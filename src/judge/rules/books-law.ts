import type { CheckRule } from "../../worksheet/contract.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { ladderOf, recordingOf } from "../ladders.ts"
import { capital, seconds, spoken, withUnit } from "../quantity.ts"
import { acts } from "./activity.ts"
import { angularBook } from "./angular-book.ts"
import { listWords } from "./list-words.ts"
import { momentumBook } from "./momentum-book.ts"
import { mayShrink, shrinksAway } from "./shrink.ts"
import type { StepBook } from "./step-book.ts"
import { readSystem, type System } from "./system.ts"

type BooksRule = Extract<CheckRule, { kind: "law"; law: "momentum" | "angular momentum" }>

/**
 * Each step changes the momentum (or angular momentum) of the bodies by the sum of the forces (or torques) that
 * count times the step, to rounding. A method whose recorded force is not exactly the one it used (that of another
 * instant of the step) is let through when the books close as the step shrinks.
 */
export function booksLaw(asked: Asked, rule: BooksRule): Finding {
  const { check, student, reference } = asked
  const { bodies, external, tolerance } = rule
  const whose = listWords(bodies)
  const what = `the ${rule.law} of ${whose}`
  const system = systemOf(rule, recordingOf(student, check.cell))
  if ("missing" in system)
    return found({
      met: false,
      departsAt: 0,
      wrong: `Your program does not record ${spoken(system.missing).name}.`,
    })
  if (system.times.length < 3)
    return found({
      met: false,
      departsAt: system.times[0]!,
      wrong: `Only ${system.times.length === 1 ? "one instant was" : "two instants were"} recorded, so there are no steps to look at.`,
      look: "See how often the line with record is reached.",
    })
  if (external === null && system.forces.length === 0)
    return found({
      met: false,
      departsAt: system.times[0]!,
      wrong: `Your program records no forces on ${whose}, so its ${rule.law} cannot be booked.`,
      look: "See how often the line with record is reached.",
    })
  const book = bookOf(rule, system)
  const ratio = book.worstStep / tolerance
  const drifts =
    ratio <= 1
      ? []
      : student.runs.flatMap(recordings => {
          const one = systemOf(
            rule,
            recordings.find(r => r.cell === check.cell),
          )
          return "missing" in one || one.times.length < 3 ? [] : [bookOf(rule, one).drift]
        })
  if (ratio > 1 && !shrinksAway(drifts))
    return found({
      met: false,
      undecided: mayShrink(drifts),
      departsAt: book.firstGap?.t ?? null,
      wrong: gapWords(rule, what, book),
      look: lookWords(rule, book),
      ratio,
    })
  const moved = bodies.some((body, b) =>
    acts(system.momenta[b]!, ladderOf(reference, check.cell, `${body}.momentum`)?.tracks[0] ?? null),
  )
  if (!moved)
    return found({
      met: false,
      departsAt: system.times[0]!,
      wrong: `${capital(`the momentum of ${whose}`)} never changes, and no recorded force acts that could change it.`,
      look: "On the bench, look for the force arrow that should act.",
    })
  return found({ met: true, right: rightWords(rule, what), ratio: Math.min(ratio, 1) })
}

function systemOf(rule: BooksRule, recording: Parameters<typeof readSystem>[0]) {
  return readSystem(recording, rule.bodies, rule.external, { positions: rule.law === "angular momentum" })
}

function bookOf(rule: BooksRule, system: System): StepBook {
  return rule.law === "momentum"
    ? momentumBook(system, rule.tolerance)
    : angularBook(system, rule.bodies, rule.about, rule.tolerance)
}

function rightWords(rule: BooksRule, what: string): string {
  if (rule.external?.length === 0) return `${capital(what)} stays what it was at the start.`
  return rule.law === "momentum"
    ? `In every step ${what} changes by net force times time step.`
    : `In every step ${what} changes by net torque times time step.`
}

function gapWords(rule: BooksRule, what: string, { firstGap }: StepBook): string {
  const [action, unit] =
    rule.law === "momentum" ? ["impulse", "kg m/s"] : ["turning effect (torque times time step)", "kg m²/s"]
  if (firstGap === null) return `The change of ${what} and the ${action} of the forces on it do not balance.`
  const gap = withUnit(firstGap.size, unit)
  if (rule.external?.length === 0)
    return `In the step that ends at ${seconds(firstGap.t)}, ${what} changes by ${gap}, although nothing acts from outside.`
  return `In the step that ends at ${seconds(firstGap.t)}, the change of ${what} and the ${action} of the recorded forces differ by ${gap}.`
}

function lookWords(rule: BooksRule, { firstGap }: StepBook): string {
  const at = seconds(firstGap?.t ?? 0)
  if (rule.external !== null && rule.bodies.length > 1)
    return `On the bench, go to ${at} and hold the force arrows of ${listWords(rule.bodies)} against each other.`
  return rule.law === "momentum"
    ? `On the bench, go to ${at} and hold the change of the momentum arrow against the force arrows.`
    : `On the bench, go to ${at} and look where each force acts and along which line.`
}
