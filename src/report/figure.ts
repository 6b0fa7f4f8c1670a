import type { Check } from "../worksheet/contract.ts"
import { seriesOf } from "../worksheet/series.ts"
import type { Curve, Motion } from "./contract.ts"
import { escaped } from "./text.ts"
import { axisNumber, ticksOf } from "./ticks.ts"

/** px; a figure is drawn for a column of about this width and scales with it. */
const width = 340
const panelHeight = 128
const left = 48
const right = 10
const top = 18
const bottom = 8
const axisBelow = 14
const mostPanels = 3
/** A motion that runs away is cut this many reference spans beyond the reference. */
const roomAround = 0.75
const roomAfter = 1.4

interface Panel {
  readonly path: string
  readonly student: Drawn | null
  readonly reference: Drawn | null
}

interface Drawn {
  readonly times: readonly number[]
  readonly values: readonly number[]
}

/** The name under which figures of the same curves are known; null for a check that reads none. */
export function figureKey(check: Check): string | null {
  const names = seriesOf(check.rule).map(series => series.name)
  return names.length === 0 ? null : [check.cell, ...names].join(" ")
}

/**
 * The curves that a check reads, over time: the answer's in ink, the reference's in long dashes, and the instant at
 * which they part. "" where there is nothing to draw.
 *
 * @param departsAt s; null where it is not known
 */
export function overlay(
  check: Check,
  student: readonly Motion[],
  reference: readonly Motion[],
  departsAt: number | null,
): string {
  const panels = panelsOf(check, student, reference)
  if (panels.length === 0) return ""
  const ends = panels.flatMap(panel => [panel.reference?.times.at(-1), panel.student?.times.at(-1)])
  const referenceEnd = Math.max(0, ...panels.map(panel => panel.reference?.times.at(-1) ?? 0))
  const longest = Math.max(0, ...ends.map(end => end ?? 0))
  const end = (referenceEnd > 0 ? Math.min(longest, roomAfter * referenceEnd) : longest) || 1
  const height = panels.length * panelHeight + axisBelow
  const cutTimes = longest > end
  const x = (t: number): number => left + (t / end) * (width - left - right)
  const drawn = panels.map((panel, i) => drawPanel(panel, i * panelHeight, x, end, departsAt))
  const missing = panels.every(panel => panel.student === null)
  const ofTime = [...reference, ...student].find(motion => motion.cell === check.cell)?.ofTime ?? true
  const kept = panels.every(panel => panel.reference === null)
  const said = [
    `${panels.map(panel => panel.path).join(" and ")} ${ofTime ? "over time" : "record by record"}.`,
    missing ? "This answer recorded nothing." : "Solid: this answer.",
    kept ? "" : "Dashes: the reference.",
    departsAt === null || missing
      ? ""
      : `They part at ${ofTime ? `${axisNumber(departsAt)} s` : `record ${axisNumber(departsAt)}`}.`,
  ]
  const timeAxis = ticksOf(0, end, 5)
    .filter(t => x(t) < width - right - 40)
    .map(
      t =>
        `<text class="tick" x="${one(x(t))}" y="${panels.length * panelHeight + 8}" text-anchor="middle">${axisNumber(t)}</text>`,
    )
    .join("")
  return `<figure class="overlay"><svg viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(said.filter(Boolean).join(" "))}">${drawn.map(panel => panel.svg).join("")}${timeAxis}<text class="tick" x="${width - right}" y="${panels.length * panelHeight + 8}" text-anchor="end">${ofTime ? "t in s" : "record"}</text></svg><figcaption>${caption(missing, kept, inkOf(panels[0]!.path), cutTimes || drawn.some(panel => panel.cut))}</figcaption></figure>`
}

function caption(missing: boolean, kept: boolean, ink: string, cut: boolean): string {
  const sample = (kind: string): string =>
    `<svg class="sample" viewBox="0 0 34 8" width="34" height="8" aria-hidden="true"><line class="${kind}" x1="1" y1="4" x2="33" y2="4"/></svg>`
  return [
    missing ? "Nothing was recorded by this answer." : `${sample(`own ${ink}`)} this answer`,
    ...(kept ? [] : [`${sample("reference")} reference`]),
    ...(cut && !missing ? ["the motion goes on outside the picture"] : []),
  ].join(" · ")
}

/** Components that move in either motion; of several the ones that a reader needs first. */
function panelsOf(check: Check, student: readonly Motion[], reference: readonly Motion[]): Panel[] {
  const own = student.find(motion => motion.cell === check.cell)
  const right = reference.find(motion => motion.cell === check.cell)
  const names = seriesOf(check.rule).map(series => series.name)
  const paths = [...(right?.curves ?? []), ...(own?.curves ?? [])]
    .map(curve => curve.path)
    .filter(path => names.some(name => path === name || path.startsWith(`${name}.`)))
  const all = [...new Set(paths)].map(path => ({
    path,
    student: drawnOf(own, path),
    reference: drawnOf(right, path),
  }))
  const moving = all.filter(panel => moves(panel.student) || moves(panel.reference))
  return (moving.length > 0 ? moving : all.slice(0, 1)).slice(0, mostPanels)
}

function drawnOf(motion: Motion | undefined, path: string): Drawn | null {
  const curve: Curve | undefined = motion?.curves.find(candidate => candidate.path === path)
  return motion && curve && curve.values.length > 0 ? { times: motion.times, values: curve.values } : null
}

const moves = (drawn: Drawn | null): boolean =>
  drawn?.values.some(value => value !== drawn.values[0]) ?? false

function drawPanel(
  panel: Panel,
  offset: number,
  x: (t: number) => number,
  end: number,
  departsAt: number | null,
): { svg: string; cut: boolean } {
  const { low, high, cut } = rangeOf(panel)
  const from = offset + top
  const to = offset + panelHeight - bottom
  const y = (value: number): number => to - ((value - low) / (high - low)) * (to - from)
  const line = (drawn: Drawn | null, kind: string): string => {
    if (drawn === null) return ""
    const points = drawn.times.map((t, i) => `${one(x(t))},${one(clamp(y(drawn.values[i]!), from, to))}`)
    return drawn.times.length === 1
      ? `<circle class="${kind}" cx="${points[0]!.split(",")[0]}" cy="${points[0]!.split(",")[1]}" r="2"/>`
      : `<polyline class="${kind}" points="${points.join(" ")}"/>`
  }
  const grid = ticksOf(low, high, 4)
    .map(
      value =>
        `<line class="grid" x1="${left}" y1="${one(y(value))}" x2="${width - right}" y2="${one(y(value))}"/><text class="tick" x="${left - 6}" y="${one(y(value) + 4)}" text-anchor="end">${axisNumber(value)}</text>`,
    )
    .join("")
  const parting =
    departsAt === null || departsAt > end || panel.student === null
      ? ""
      : `<line class="parting" x1="${one(x(departsAt))}" y1="${from}" x2="${one(x(departsAt))}" y2="${to}"/>`
  // a nested picture cuts what runs out of the panel, without names that a page would have to keep apart
  const inner = `<svg x="${left}" y="${from}" width="${width - left - right}" height="${to - from}" viewBox="${left} ${from} ${width - left - right} ${to - from}" overflow="hidden">${line(panel.reference, "reference")}${line(panel.student, `own ${inkOf(panel.path)}`)}</svg>`
  return {
    svg: `<text class="name" x="0" y="${offset + 10}">${escaped(panel.path)}${unitOf(panel.path)}</text>${grid}${parting}${inner}`,
    cut,
  }
}

/** What the panel shows: the reference with room around it, and of the answer what fits. */
function rangeOf({ student, reference }: Panel): { low: number; high: number; cut: boolean } {
  const right = extentOf(reference)
  const own = extentOf(student)
  const base = right ?? own ?? { low: 0, high: 1 }
  const span = base.high - base.low || Math.abs(base.high) || 1
  // where the reference does not move, its value alone says nothing about a fitting scale
  const room = base.high > base.low || own === null ? roomAround * span : Number.POSITIVE_INFINITY
  const low = Math.min(base.low, Math.max(own?.low ?? base.low, base.low - room))
  const high = Math.max(base.high, Math.min(own?.high ?? base.high, base.high + room))
  const cut = own !== null && (own.low < low || own.high > high)
  const air = 0.04 * (high - low || span)
  return { low: low - air, high: high + air, cut }
}

function extentOf(drawn: Drawn | null): { low: number; high: number } | null {
  if (drawn === null) return null
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const value of drawn.values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  return { low, high }
}

/** Recorded positions, momenta and forces are in SI units by contract; of other series only the author knows. */
function unitOf(path: string): string {
  if (/\.position(\.[xyz])?$/.test(path)) return " in m"
  if (/\.momentum(\.[xyz])?$/.test(path)) return " in kg m/s"
  return /\.forces\.[^.]+(\.[xyz])?$/.test(path) ? " in N" : ""
}

function inkOf(path: string): string {
  const kind = /\.(position|momentum|forces)(\.|$)/.exec(path)?.[1]
  return kind === undefined ? "" : `of-${kind}`
}

const one = (value: number): string => String(Math.round(value * 10) / 10)
/** Far outside is outside: keeps numbers short where a motion runs away. */
const clamp = (value: number, from: number, to: number): number =>
  Math.min(to + 400, Math.max(from - 400, value))
