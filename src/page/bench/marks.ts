import type { MotionEvent } from "./events.ts"
import { quantity, thinSpace } from "./number.ts"
import type { Study } from "./study.ts"
import { nearestRow } from "./timeline.ts"

/** One mark over the time bar. */
export interface Mark {
  readonly kind: "turn-high" | "turn-low" | "rest" | "departure"
  readonly instant: number
  readonly words: string
}

/** A stretch over the time bar: while a force acts that is at other times zero. */
export interface Stretch {
  readonly from: number
  readonly to: number
  readonly words: string
}

export interface Marks {
  readonly marks: readonly Mark[]
  readonly stretches: readonly Stretch[]
  /** all instants at which something happens, in order, each once: what the keys step to */
  readonly instants: readonly number[]
  /** events that were too many to be marked */
  readonly left: number
}

/** Marks of more bodies, or more marks, would cover the bar. */
const mostBodies = 3
const most = 160

export function marksOf(study: Study, departsAt: number | null, label: (body: string) => string): Marks {
  const told = new Set(study.bodies.slice(0, mostBodies).map(b => b.name))
  const events = study.events.filter(e => told.has(e.body)).slice(0, most)
  const marks = events.flatMap(event => markOf(event, label))
  // a verdict's time is rounded; a mark that is stepped to is a row
  const departed = departsAt === null ? [] : [study.timeline.at(nearestRow(study.timeline, departsAt))]
  for (const instant of departed)
    marks.push({ kind: "departure", instant, words: "leaves the reference motion" })
  const instants = [...events.map(e => e.instant), ...departed]
  return {
    marks,
    stretches: stretchesOf(study, events),
    instants: [...new Set(instants)].sort((a, b) => a - b),
    left: study.events.length - events.length,
  }
}

/** What happens at an instant, in words; "" for nothing. */
export function wordsAt(study: Study, instant: number, label: (body: string) => string): string {
  const here = study.events.filter(e => e.instant === instant).map(e => eventWords(e, label))
  return here.slice(0, 3).join("; ")
}

export function eventWords(event: MotionEvent, label: (body: string) => string): string {
  const body = label(event.body)
  switch (event.kind) {
    case "begins":
      return `${event.force} begins to act on ${body}`
    case "ends":
      return `${event.force} stops acting on ${body}`
    case "rests":
      return `${body} comes to rest`
    case "turns":
      return `${body} turns back: ${event.extreme} ${event.axis}${thinSpace}=${thinSpace}${quantity(event.value, "m")}`
  }
}

function markOf(event: MotionEvent, label: (body: string) => string): Mark[] {
  const words = eventWords(event, label)
  if (event.kind === "turns")
    return [{ kind: event.extreme === "greatest" ? "turn-high" : "turn-low", instant: event.instant, words }]
  if (event.kind === "rests") return [{ kind: "rest", instant: event.instant, words }]
  return []
}

/** From each beginning to its end; a force that acts from the first row on, or to the last, reaches the bar's end. */
function stretchesOf(study: Study, events: readonly MotionEvent[]): Stretch[] {
  const out: Stretch[] = []
  const open = new Map<string, number>()
  for (const event of events) {
    if (event.kind !== "begins" && event.kind !== "ends") continue
    const key = `${event.body} ${event.force}`
    if (event.kind === "begins") open.set(key, event.instant)
    else {
      out.push({
        from: open.get(key) ?? study.timeline.start,
        to: event.instant,
        words: `${event.force} acts`,
      })
      open.delete(key)
    }
  }
  for (const [key, from] of open)
    out.push({ from, to: study.timeline.end, words: `${key.split(" ").at(-1)} acts` })
  return out
}
