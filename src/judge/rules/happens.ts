import type { CheckRule, Happening } from "../../worksheet/contract.ts"
import { rowStep } from "../coverage.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { countsSteps, endOfMotion } from "../grid.ts"
import { ladderOf } from "../ladders.ts"
import type { Ladder } from "../limit.ts"
import { capital, seconds, spoken, withUnit } from "../quantity.ts"
import { startOf } from "../track.ts"
import { instantsOf } from "./instants.ts"

type HappensRule = Extract<CheckRule, { kind: "happens" }>

/** Where the author gives no tolerance, this part of the reference's time is allowed … */
const allowedShare = 0.01
/** … and no less than so many steps, since an event falls on a step. */
const allowedSteps = 2
/** While halving the step moves the time by this part of what it is off, a shorter one may tell more. */
const unsettled = 0.2

/** An event happens at a time, in the limit of a short step or at the finest one: the given time, else the reference's own. */
export function happens({ check, student, reference }: Asked, rule: HappensRule): Finding {
  const { event, of, count } = rule
  const path = event === "rest" ? `${of}.momentum` : of
  const mine = ladderOf(student, check.cell, path)
  const theirs = ladderOf(reference, check.cell, path)
  if (mine === null)
    return found({ met: false, departsAt: 0, wrong: `Your program does not record ${spoken(path).name}.` })
  const whole = theirs ?? mine
  const allowed =
    rule.within ??
    Math.max(
      allowedShare * (endOfMotion(whole) - startOf(whole.tracks[0]!)),
      allowedSteps * rowStep(mine.tracks[0]!, whole.tracks[0]!),
    )
  const wanted = theirs === null ? [] : timesOf(theirs, event, count)
  const target = rule.at ?? wanted[0]
  if (target === undefined)
    return found({ met: false, wrong: `In the reference motion ${eventWords(event, of, count)} nowhere.` })
  const got = timesOf(mine, event, count)
  if (got.length === 0) {
    const seen = instantsOf(event, mine.tracks[0]!).length
    return found({
      met: false,
      departsAt: Math.min(target, endOfMotion(mine)),
      wrong:
        seen === 0
          ? `${capital(subject(event, of))} never ${verb(event)}.`
          : `${capital(subject(event, of))} ${verb(event)} only ${seen === 1 ? "once" : `${seen} times`}.`,
      look: `On the bench, go to ${seconds(Math.min(target, endOfMotion(mine)))} and look at the force arrows.`,
    })
  }
  const best = got.reduce((a, b) => (Math.abs(b - target) < Math.abs(a - target) ? b : a))
  const ratio = Math.abs(best - target) / allowed
  if (ratio <= 1)
    return found({
      met: true,
      right: `${capital(subject(event, of))} ${verb(event)} at ${seconds(best)}, as it should.`,
      ratio,
    })
  const shown = got[0]!
  const moved = Math.abs(shown - got[got.length - 1]!)
  return found({
    met: false,
    undecided: mine.tracks.length === 2 && moved > unsettled * Math.abs(best - target),
    departsAt: Math.min(shown, target),
    wrong: `${capital(subject(event, of))} ${verb(event)} at ${seconds(shown)}, ${withUnit(Math.abs(shown - target), "s", 2)} too ${shown > target ? "late" : "early"}.`,
    look: `On the bench, go to ${seconds(Math.min(shown, target))} and look at the force arrows before it.`,
    ratio,
  })
}

/** When the event happens as the step shrinks, then at the finest step; nothing where it does not. */
function timesOf(ladder: Ladder, event: Happening, count: number): number[] {
  const tracks = countsSteps(ladder) ? ladder.tracks.slice(0, 1) : ladder.tracks
  const times = tracks.map(track => instantsOf(event, track)[count - 1])
  const finest = times[times.length - 1]
  if (finest === undefined) return []
  const before = times[times.length - 2]
  return before === undefined ? [finest] : [finest + (finest - before), finest]
}

function subject(event: Happening, of: string): string {
  if (event === "rest") return of
  const what = spoken(of)
  return event === "turning" ? what.name : `the contact with ${what.name}`
}

function verb(event: Happening): string {
  switch (event) {
    case "contact begins":
      return "begins"
    case "contact ends":
      return "ends"
    case "turning":
      return "turns round"
    case "rest":
      return "comes to rest"
  }
}

const eventWords = (event: Happening, of: string, count: number): string =>
  `${subject(event, of)} ${verb(event)}${count > 1 ? ` for time number ${count}` : ""}`
