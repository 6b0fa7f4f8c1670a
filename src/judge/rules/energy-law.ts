import type { CheckRule } from "../../worksheet/contract.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { ladderOf, recordingOf } from "../ladders.ts"
import { capital, percent, seconds, spoken, withUnit } from "../quantity.ts"
import { trackOf } from "../track.ts"
import { acts } from "./activity.ts"
import { type EnergyBook, energyBook } from "./energy-book.ts"
import { listWords } from "./list-words.ts"
import { mayShrink, shrinksAway } from "./shrink.ts"
import { readSystem } from "./system.ts"

type EnergyRule = Extract<CheckRule, { kind: "law"; law: "energy" }>

/**
 * The energy of the bodies changes by the work of the forces that count, within a part of the largest kinetic energy.
 * What a method loses or gains by its step is let through when it goes away as the step shrinks.
 */
export function energyLaw(asked: Asked, rule: EnergyRule): Finding {
  const { check, student, reference } = asked
  const { bodies, tolerance } = rule
  const whose = listWords(bodies)
  const what =
    rule.energy === null ? `the kinetic energy of ${whose}` : `the recorded energy “${rule.energy}”`
  const read = readBook(rule, recordingOf(student, check.cell))
  if ("missing" in read)
    return found({
      met: false,
      departsAt: 0,
      wrong: `Your program does not record ${spoken(read.missing).name}.`,
    })
  const { book, momenta } = read
  if (book === null)
    return found({
      met: false,
      departsAt: 0,
      wrong: `${capital(what)} cannot be found: the position of ${whose} does not move along its momentum.`,
      look: "On the bench, hold the momentum arrow against the path.",
    })
  const ratio = book.size === 0 ? 0 : book.gap / (tolerance * book.size)
  const parts =
    ratio <= 1
      ? []
      : student.runs.flatMap(recordings => {
          const one = readBook(
            rule,
            recordings.find(r => r.cell === check.cell),
          )
          return "missing" in one || one.book === null || one.book.size === 0
            ? []
            : [one.book.gap / one.book.size]
        })
  if (ratio > 1 && !shrinksAway(parts))
    return found({
      met: false,
      undecided: mayShrink(parts),
      departsAt: book.first?.t ?? null,
      wrong: gapWords(rule, what, book),
      look: `On the bench, look at the energy up to ${seconds(book.first?.t ?? 0)}: which force does work that it should not do, or fails to do?`,
      ratio,
    })
  const moved = bodies.some((body, b) =>
    acts(momenta[b]!, ladderOf(reference, check.cell, `${body}.momentum`)?.tracks[0] ?? null),
  )
  if (!moved)
    return found({
      met: false,
      departsAt: 0,
      wrong: `${capital(`the momentum of ${whose}`)} never changes, so there is no energy to be booked.`,
      look: "On the bench, look for the force arrow that should act.",
    })
  return found({
    met: true,
    right:
      rule.energy !== null && rule.work?.length === 0
        ? `${capital(what)} stays what it was at the start.`
        : `${capital(what)} changes by the work of the forces.`,
    ratio: Math.min(ratio, 1),
  })
}

function readBook(rule: EnergyRule, recording: Parameters<typeof readSystem>[0]) {
  const system = readSystem(recording, rule.bodies, rule.work, { positions: true })
  if ("missing" in system) return system
  const energy = rule.energy === null ? null : trackOf(recording, rule.energy)
  if (rule.energy !== null && energy === null) return { missing: rule.energy }
  return {
    book: energyBook(system, rule.bodies, energy?.values ?? null, rule.tolerance),
    momenta: system.momenta,
  }
}

function gapWords(rule: EnergyRule, what: string, { first, size }: EnergyBook): string {
  if (first === null) return `The change of ${what} and the work of the forces do not balance.`
  const amount = `${withUnit(Math.abs(first.gap), "J")}, which is ${percent(Math.abs(first.gap) / size)} of the largest kinetic energy`
  const way = first.gap > 0 ? "more" : "less"
  return rule.energy !== null && rule.work?.length === 0
    ? `At ${seconds(first.t)}, ${what} is ${amount}, ${way} than at the start.`
    : `Up to ${seconds(first.t)}, ${what} has become ${amount}, ${way} than the work of the recorded forces makes it.`
}
