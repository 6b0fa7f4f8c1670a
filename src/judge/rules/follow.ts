import { sameMethod } from "../coincides.ts"
import { type Comparison, compareLadders, type Instant } from "../compare.ts"
import type { Lack } from "../coverage.ts"
import { boxOf, extentOf } from "../extent.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { countsSteps } from "../grid.ts"
import { isSensitive, ladderOf, recordingOf } from "../ladders.ts"
import { amount, capital, numberWords, type Spoken, seconds, spoken } from "../quantity.ts"
import { trackOf } from "../track.ts"
import { contactWords } from "./contact-words.ts"

/** The series goes to the same limit as the reference's. */
export function follow({ check, student, reference }: Asked): Finding {
  if (check.rule.kind !== "compare") throw new TypeError("A compare rule was expected.")
  const { series, tolerance } = check.rule
  const theirs = ladderOf(reference, check.cell, series)
  const what = spoken(series)
  if (theirs === null) return found({ met: false, wrong: `The reference has no recording of ${what.name}.` })
  const sensitive = isSensitive(reference, check.cell)
  if (!sensitive && !countsSteps(theirs) && sameMethod(student, reference, check.cell, series))
    return found({ met: true, right: fromStartToEnd(what) })
  const mine = ladderOf(student, check.cell, series)
  if (mine === null) {
    const others = recordingOf(student, check.cell)?.series.map(s => s.name) ?? []
    return found({
      met: false,
      departsAt: 0,
      wrong:
        others.length === 0
          ? `Your program records nothing in the cell “${check.cell}”.`
          : `Your program does not record ${what.name}.`,
      look: "See whether the line with record is reached.",
    })
  }
  const sisters = what.quantity === "position" ? largestMotion(reference, check.cell) : 0
  const extent = extentOf(theirs.tracks[0]!, series, sisters)
  const comparison = compareLadders(mine, theirs, extent, tolerance, sensitive)
  const ratio = comparison.distance / comparison.tolerance
  const moment = momentWords(recordingOf(student, check.cell))
  if (comparison.outcome === "same limit") {
    return found({ met: true, right: rightWords(what, comparison, moment), ratio })
  }
  const contact =
    what.quantity === "position" ? contactWords(comparison, mine.tracks[0]!, theirs.tracks[0]!) : ""
  return found({
    met: false,
    undecided: comparison.outcome === "undecided",
    departsAt: comparison.departsAt,
    right: soFarWords(what, comparison, moment),
    wrong: [wrongWords(what, comparison, moment), contact].filter(words => words !== "").join(" "),
    look: lookWords(what, comparison, moment, hasArrows(recordingOf(reference, check.cell), series)),
    onlyReach: comparison.outcome === "does not reach",
    ratio: comparison.outcome === "does not reach" ? Number.POSITIVE_INFINITY : ratio,
  })
}

function largestMotion(reference: Asked["reference"], cell: string): number {
  const recording = recordingOf(reference, cell)
  const tracks = (recording?.series ?? [])
    .filter(series => series.name.split(".").includes("position"))
    .map(series => trackOf(recording, series.name))
  return Math.max(
    0,
    ...tracks.map(track => {
      if (track === null) return 0
      const { low, high } = boxOf(track)
      return Math.hypot(...low.map((least, k) => high[k]! - least))
    }),
  )
}

/** How a moment of the recording is told, and whether it is one of time. */
interface Moment {
  readonly ofTime: boolean
  at(t: number): string
}

/** Where a cell records no body, its first column is a count or another quantity gone through, not a time. */
function momentWords(recording: ReturnType<typeof recordingOf>): Moment {
  const ofTime = recording?.series.some(({ name }) => /\.(position|momentum)$/.test(name)) ?? true
  return { ofTime, at: t => (ofTime ? seconds(t) : `record ${numberWords(t)}`) }
}

const fromStartToEnd = (what: Spoken): string =>
  `${capital(what.name)} follows the reference from start to end.`

function rightWords(
  what: Spoken,
  { basis, countsSteps, horizon, until }: Comparison,
  moment: Moment,
): string {
  const lines = [
    horizon === null
      ? fromStartToEnd(what)
      : `${capital(what.name)} follows the reference up to ${moment.at(until)}; after that the motion is too sensitive to be compared point by point.`,
  ]
  if (basis === "limit" && countsSteps)
    lines.push(
      "The loop counts steps, so with a shorter time step only the first part could be looked at; the rest is close.",
    )
  return lines.join(" ")
}

/** A motion that follows for at least this part of the time has done something right. */
const worthSaying = 0.05

const followsAtFirst = ({ departsAt, referenceEnd, onlyAsGiven }: Comparison): boolean =>
  !onlyAsGiven && departsAt !== null && departsAt >= worthSaying * referenceEnd

const soFarWords = (what: Spoken, comparison: Comparison, moment: Moment): string =>
  followsAtFirst(comparison)
    ? `Up to ${moment.at(comparison.departsAt!)} ${what.name} follows the reference.`
    : ""

function wrongWords(what: Spoken, c: Comparison, { ofTime, at }: Moment): string {
  if (c.onlyAsGiven)
    return `With the time step as given ${what.name} is right, but not when the time step is made shorter: somewhere your lines hold a number that should follow the time step.`
  if (c.outcome === "does not reach" && c.lack !== null)
    return lackWords(c.lack, c.referenceStart, c.referenceEnd, { ofTime, at })
  if (c.seenAt === null) return `${capital(what.name)} does not follow the reference.`
  const gap = gapWords(what, c.seenAt)
  return followsAtFirst(c)
    ? `At ${at(c.seenAt.t)} it is ${gap}.`
    : `From the start, ${what.name} leaves the reference; at ${at(c.seenAt.t)} it is ${gap}.`
}

function lackWords({ kind, at, shorter }: Lack, start: number, end: number, moment: Moment): string {
  const where = shorter ? "With a shorter time step the" : "The"
  return kind === "ends early"
    ? `${where} ${moment.ofTime ? "motion" : "recording"} ends at ${moment.at(at)}; the reference goes on until ${moment.at(end)}.`
    : `${where} recording begins only at ${moment.at(at)}; the reference begins at ${moment.at(start)}.`
}

/** The difference along the axis that shows it best, in words. */
function gapWords(what: Spoken, { student, reference }: Instant): string {
  const gaps = student.map((value, k) => value - reference[k]!)
  let k = 0
  gaps.forEach((gap, i) => {
    if (Math.abs(gap) > Math.abs(gaps[k]!)) k = i
  })
  const gap = gaps[k]!
  if (gaps.length === 1) return `${amount(Math.abs(gap), what.unit)} too ${gap > 0 ? "large" : "small"}`
  const axis = "xyz"[k]!
  if (what.quantity !== "position") return `off by ${amount(gap, what.unit)} along ${axis}`
  const direction =
    axis === "y"
      ? gap > 0
        ? "too high"
        : "too low"
      : axis === "x"
        ? gap > 0
          ? "too far right"
          : "too far left"
        : "off"
  return `${amount(Math.abs(gap), what.unit)} ${direction} (along ${axis})`
}

/**
 * Whether a series belongs to a body that the bench draws arrows for. A packed reference holds only what checks read, so a
 * body of which no check reads momentum or force gets words without arrows, which are as true.
 */
function hasArrows(reference: ReturnType<typeof recordingOf>, series: string): boolean {
  const body = series.split(/\.(?:position|momentum|forces)\b/)[0]!
  return (
    reference?.series.some(({ name }) => name === `${body}.momentum` || name.startsWith(`${body}.forces.`)) ??
    false
  )
}

function lookWords(
  what: Spoken,
  { departsAt, referenceEnd, outcome, lack }: Comparison,
  { ofTime, at }: Moment,
  arrowsDrawn: boolean,
): string {
  if (outcome === "does not reach")
    return lack?.kind === "begins late"
      ? "See which line keeps the first steps from being recorded."
      : "Up to there it is right. See what ends the loop: its condition, or a line that leaves it. It may stand in another blank."
  if (!ofTime)
    return departsAt === null
      ? ""
      : `On the bench, compare the plot with the reference from ${at(departsAt)} on.`
  const arrows = what.quantity === "force" ? "the force arrows" : "the arrows of force and momentum"
  if (departsAt !== null && departsAt >= worthSaying * referenceEnd)
    return arrowsDrawn
      ? `On the bench, go to ${seconds(departsAt)} and look at ${arrows} just before and just after.`
      : `On the bench, go to ${seconds(departsAt)} and compare with the reference just before and just after.`
  return arrowsDrawn
    ? `On the bench, take the first few steps one by one and look at ${arrows}.`
    : "On the bench, take the first few steps one by one and compare with the reference."
}
