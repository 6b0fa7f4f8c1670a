import type { SceneView } from "../../worksheet/contract.ts"
import type { Distance } from "./compare.ts"
import { type Departure, departsFrom } from "./departures.ts"
import { rangeOf } from "./events.ts"
import { sizeOf } from "./framing.ts"
import { decimalsFor, fixed, quantity, thinSpace, trueMinus } from "./number.ts"
import { type BodyColumns, squareAt, valueAt } from "./series.ts"
import type { Study } from "./study.ts"
import { meanStep, type Timeline } from "./timeline.ts"

/** What the words need besides the recording. */
export interface Telling {
  /** as it stands in a sentence: "the buoy", or "body float1" for one without a label */
  readonly label: (body: string) => string
  /** from the comparison with the author's motion, where it may be shown */
  readonly distances: readonly Distance[]
  readonly departures: readonly Departure[]
  /** from where the scene is seen; "side" if left out */
  readonly view?: SceneView
}

/** More bodies than this are told together. */
const mostTold = 3
/** Pushes of one force beyond this are counted, not told one by one. */
const mostPushes = 4
/** Distances below this part of the motion's extent are not told: the numbers that come with the page are rounded. */
const followsWithin = 1e-5

/** The motion in sentences, from the recording alone: start, turning points, pushes, rest, end, and how it compares. */
export function describe(study: Study, telling: Telling): string[] {
  const { bodies, timeline } = study
  if (timeline.rows === 0) return ["Nothing is recorded."]
  const out: string[] = []
  if (timeline.fault)
    out.push(
      `${capital(timeline.fault)}, so rows stand in for seconds here. Look at the line that advances t.`,
    )
  if (bodies.length === 0)
    out.push(`${timeline.rows} rows are recorded, and no body: no series ends in position.`)
  if (bodies.length > mostTold)
    out.push(`${bodies.length} bodies move; the first ${mostTold} are told one by one.`)
  for (const body of bodies.slice(0, mostTold)) out.push(...tellBody(study, body, telling))
  out.push(`The recording ends ${instantWords(study, timeline.end)}, after ${rowsWords(timeline.rows)}.`)
  out.push(...comparison(study, telling))
  return out
}

/** A time as it is said: `at 0.420 s`, or `at row 12`. */
export function instantWords({ timeline }: Study, instant: number): string {
  if (timeline.unit === "row") return `at row ${instant + 1}`
  return `at ${fixed(instant, timeDecimals(timeline))}${thinSpace}s`
}

/** Decimals that tell a thousandth of the whole apart, or the rows if they lie wider, 0 to 6. */
export function timeDecimals(timeline: Timeline): number {
  const span = timeline.end - timeline.start
  if (!(span > 0)) return 3
  return Math.min(decimalsFor(meanStep(timeline)), Math.max(1, 3 - Math.floor(Math.log10(span) + 1e-9)), 6)
}

/**
 * "up", "down and to the right", "out of the page"; "" for no direction worth a word. Seen from above nothing in the picture
 * is up or down: there directions are told by the axes, and z is the height.
 */
export function direction(x: number, y: number, z: number, view: SceneView = "side"): string {
  const size = Math.hypot(x, y, z)
  const counts = (part: number) => Math.abs(part) > 0.1 * size
  if (view === "top") {
    const towards = (name: string, part: number) =>
      counts(part) ? `${part > 0 ? "+" : trueMinus}${name}` : ""
    const along = [towards("x", x), towards("y", y)].filter(text => text !== "")
    const over = along.length > 0 ? [`towards ${along.join(" and ")}`] : []
    return size > 0
      ? [...over, counts(z) ? (z > 0 ? "up" : "down") : ""].filter(w => w !== "").join(" and ")
      : ""
  }
  const words = [
    counts(y) ? (y > 0 ? "up" : "down") : "",
    counts(x) ? (x > 0 ? "to the right" : "to the left") : "",
    counts(z) ? (z > 0 ? "out of the page" : "into the page") : "",
  ]
  return size > 0 ? words.filter(w => w !== "").join(" and ") : ""
}

function tellBody(study: Study, body: BodyColumns, telling: Telling): string[] {
  const the = telling.label(body.name)
  const broken = firstBroken(study, body)
  const last = study.recording.rows - 1
  if (broken === 0) return [`The position of ${the} is not a number from the first row on.`]
  const out = [`${capital(the)} starts at ${place(study, body, 0)}${going(study, body, 0, telling.view)}.`]
  out.push(...turning(study, body, the, telling.view), ...pushes(study, body, the))
  if (broken > 0)
    return [
      ...out,
      `From ${instantWords(study, study.timeline.at(broken)).slice(3)} on its position is not a number.`,
    ]
  const rest = study.events.find(e => e.kind === "rests" && e.body === body.name)
  if (rest)
    out.push(`It comes to rest ${instantWords(study, rest.instant)} at ${place(study, body, rest.row)}.`)
  else if (stays(study, body)) out.push(`It stays there throughout.`)
  else out.push(`At the end it is at ${place(study, body, last)}${going(study, body, last, telling.view)}.`)
  return out
}

function turning(study: Study, body: BodyColumns, the: string, view: SceneView = "side"): string[] {
  const turns = study.events.filter(e => e.kind === "turns" && e.body === body.name)
  const top = turns
    .filter(e => view !== "top" && e.kind === "turns" && e.axis === "y" && e.extreme === "greatest")
    .reduce<(typeof turns)[number] | null>((a, b) => (a === null || y(b) > y(a) ? b : a), null)
  // A thing that starts or ends higher is not highest where it turns.
  const ends = [0, study.recording.rows - 1].map(row => valueAt(study.recording, row, body.position + 1))
  const highest = top !== null && ends.every(end => y(top) >= end) ? top : null
  function y(e: (typeof turns)[number]) {
    return e.kind === "turns" ? e.value : 0
  }
  const out: string[] = []
  if (highest)
    out.push(
      `${capital(the)} is highest ${instantWords(study, highest.instant)}, at y${thinSpace}=${thinSpace}${quantity(y(highest), "m")}.`,
    )
  for (const axis of ["x", "y", "z"] as const) {
    const along = turns.filter(e => e.kind === "turns" && e.axis === axis && e !== highest)
    if (along.length === 0) continue
    const [first] = along
    if (along.length === 1 && first?.kind === "turns") {
      const where = `${axis}${thinSpace}=${thinSpace}${quantity(first.value, "m")}`
      out.push(`It turns back along ${axis} ${instantWords(study, first.instant)}, at ${where}.`)
    } else out.push(`It turns back along ${axis} ${along.length} times.`)
  }
  return out
}

function pushes(study: Study, body: BodyColumns, the: string): string[] {
  return body.forces.flatMap(force => {
    const stretches = actingStretches(study, force.column)
    const whole =
      stretches.length === 1 &&
      (stretches[0]?.from ?? 0) <= 1 &&
      stretches[0]?.to === study.recording.rows - 1
    if (stretches.length === 0) return [`The force ${force.name} on ${the} is zero throughout.`]
    if (whole) return []
    const told = stretches.slice(0, mostPushes).map(s => {
      const from = instantWords(study, study.timeline.at(s.from)).slice(3)
      const to = instantWords(study, study.timeline.at(s.to)).slice(3)
      return `from ${from} to ${to} (at most ${quantity(s.most, "N")})`
    })
    const more = stretches.length - told.length
    const times = stretches.length === 1 ? "" : ` ${stretches.length} times:`
    return [`The force ${force.name} acts${times} ${told.join(", ")}${more > 0 ? " and so on" : ""}.`]
  })
}

function actingStretches({ recording, leastForceSquare: least }: Study, column: number) {
  const out: { from: number; to: number; most: number }[] = []
  let open: { from: number; to: number; most: number } | null = null
  for (let row = 0; row < recording.rows; row++) {
    const square = squareAt(recording, row, column)
    if (square <= least) {
      open = null
      continue
    }
    const size = Math.sqrt(square)
    if (!open) out.push((open = { from: row, to: row, most: 0 }))
    open.to = row
    if (!(size <= open.most)) open.most = size
  }
  return out
}

function comparison(study: Study, { distances, departures, label }: Telling): string[] {
  const near = study.extent ? followsWithin * sizeOf(study.extent) : 0
  return distances.slice(0, mostTold).map(d => {
    const the = label(d.body)
    if (d.greatest === 0) return `${capital(the)} lies on the reference motion in every row.`
    const departsAt = departsFrom(departures, d.body)
    if (departsAt === null && d.greatest <= near) return `${capital(the)} follows the reference motion.`
    if (departsAt === null)
      return `${capital(the)} is never further than ${quantity(d.greatest, "m", 2)} from the reference motion.`
    return `${capital(the)} leaves the reference motion ${instantWords(study, departsAt)}; at the end it is ${quantity(d.atEnd, "m", 2)} away from it.`
  })
}

function place({ recording }: Study, body: BodyColumns, row: number): string {
  const [x, y, z] = [0, 1, 2].map(k => valueAt(recording, row, body.position + k)) as [number, number, number]
  const eq = (name: string, value: number) => `${name}${thinSpace}=${thinSpace}${quantity(value, "m")}`
  return [eq("x", x), eq("y", y), ...(z === 0 ? [] : [eq("z", z)])].join(", ")
}

function going({ recording }: Study, body: BodyColumns, row: number, view: SceneView = "side"): string {
  if (body.momentum === null) return ""
  const [x, y, z] = [0, 1, 2].map(k => valueAt(recording, row, (body.momentum ?? 0) + k)) as [
    number,
    number,
    number,
  ]
  const size = Math.hypot(x, y, z)
  if (size === 0) return ", with no momentum"
  return `, with momentum ${quantity(size, "kg m/s")} ${direction(x, y, z, view)}`.trimEnd()
}

function stays({ recording }: Study, body: BodyColumns): boolean {
  return [0, 1, 2].every(k => rangeOf(recording, body.position + k) === 0)
}

/** First row with a position that is not a number; -1 for none. */
function firstBroken({ recording: { data, width, rows } }: Study, body: BodyColumns): number {
  for (let row = 0, at = body.position; row < rows; row++, at += width)
    if (!Number.isFinite((data[at] as number) + (data[at + 1] as number) + (data[at + 2] as number)))
      return row
  return -1
}

function rowsWords(rows: number): string {
  return rows === 1 ? "1 row" : `${fixed(rows, 0)} rows`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
