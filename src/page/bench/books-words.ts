import type { SceneView } from "../../worksheet/contract.ts"
import type { Books } from "./books.ts"
import { quantity } from "./number.ts"
import type { Study } from "./study.ts"
import { direction, instantWords } from "./words.ts"
import type { Push } from "./work.ts"

/** Stretches told one by one. */
const mostPushes = 3
/** Work below this part of what was moved is not worth a word: it all came back. */
const allBack = 0.005

/** Who paid: what each force that acts for a while gave to the motion and took from it. */
export function payWords(study: Study, pushes: readonly Push[], the: string): string[] {
  const time = (row: number) => instantWords(study, study.timeline.at(row)).slice(3)
  const told = pushes.slice(0, mostPushes).map(({ force, from, to, gave, took }) => {
    const when = `Between ${time(from - 1)} and ${time(to)}`
    const rest = gave - took
    if (gave === 0 && took === 0) return `${when} ${force} did no work on ${the}.`
    if (gave === 0) return `${when} ${force} took ${quantity(took, "J")} from ${the}.`
    if (took === 0) return `${when} ${force} gave ${quantity(gave, "J")} to ${the}.`
    const back = `${when} ${force} took ${quantity(took, "J")} from ${the} and gave ${quantity(gave, "J")}`
    if (Math.abs(rest) < allBack * Math.max(gave, took)) return `${back}: all of it came back.`
    return rest > 0
      ? `${back}: ${quantity(rest, "J")} appeared while ${force} acted.`
      : `${back}: ${quantity(-rest, "J")} did not come back.`
  })
  const more = pushes.length - told.length
  return more > 0 ? [...told, `${more} more such stretches follow.`] : told
}

/** What the books of a body say, in sentences: whether they balance, where not, and where the mass comes from. */
export function booksWords(study: Study, books: Books, view: SceneView = "side"): string[] {
  return [balance(study, books, view), massWords(books)].filter(text => text !== "")
}

function balance(study: Study, { gap, entries }: Books, view: SceneView): string {
  if (!gap)
    return entries.length === 0
      ? "No force is recorded, and the momentum does not change: the books balance."
      : "The books balance: in every step momentum changes by the recorded forces times the step."
  const from = instantWords(study, gap.from).slice(3)
  const to = instantWords(study, gap.to).slice(3)
  const [x, y, z] = gap.momentum
  const size = Math.hypot(x, y, z)
  const meanwhile = gap.acting.length > 0 ? `, while ${list(gap.acting)} acted` : ""
  if (!Number.isFinite(size))
    return `The books do not balance: between ${from} and ${to} a momentum or force is not a number.`
  const energy =
    gap.energy === null || Math.abs(gap.energy) === 0
      ? ""
      : `; with it ${quantity(Math.abs(gap.energy), "J")} ${gap.energy > 0 ? "appeared" : "went missing"}`
  return (
    `The books do not balance: between ${from} and ${to} the momentum changed by ` +
    `${quantity(size, "N s")} ${direction(x, y, z, view)} that no recorded force accounts for${meanwhile}${energy}.`
  )
}

function massWords({ mass }: Books): string {
  if (mass.kind === "found") {
    const from = "read from the recording as momentum over change of position"
    return mass.exact
      ? `Mass ${quantity(mass.mass, "kg")}, ${from}.`
      : `Mass about ${quantity(mass.mass, "kg", 2)}, ${from}; single rows differ from it by ${quantity(mass.misfit * 100, "%", 1)}, so energies are as rough.`
  }
  switch (mass.why) {
    case "no momentum":
      return "No momentum is recorded, so there is nothing to book."
    case "no motion":
      return "The body does not move, so the recording gives no mass and no energy can be booked."
    case "no common ratio":
      return "Momentum and motion do not belong together: the recorded momentum over the change of position is not one mass throughout, so no energy can be booked. Look at the line that steps the position."
  }
}

function list(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`
}
