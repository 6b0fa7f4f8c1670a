import type { Recording } from "../../run/contract.ts"
import type { Scene } from "../../worksheet/contract.ts"
import { eventsOf, type MotionEvent } from "./events.ts"
import { type Extent, motionExtent } from "./framing.ts"
import { type BodyColumns, bodiesOf, leastForceSquare } from "./series.ts"
import { type Timeline, timelineOf } from "./timeline.ts"

/** A recording with what the whole bench needs of it, worked out once. */
export interface Study {
  readonly recording: Recording
  readonly timeline: Timeline
  readonly bodies: readonly BodyColumns[]
  readonly extent: Extent | null
  /** square of the size that a force must have to act at all, N² */
  readonly leastForceSquare: number
  readonly events: readonly MotionEvent[]
}

const kept = new WeakMap<Recording, Study>()

/** The study of a recording; the same object for the same recording. */
export function studyOf(recording: Recording): Study {
  const known = kept.get(recording)
  if (known) return known
  const timeline = timelineOf(recording)
  const bodies = bodiesOf(recording)
  const least = leastForceSquare(recording, bodies)
  const study: Study = {
    recording,
    timeline,
    bodies,
    extent: motionExtent(recording, bodies),
    leastForceSquare: least,
    events: eventsOf(recording, timeline, bodies, least),
  }
  kept.set(recording, study)
  return study
}

/** A body as it stands in a sentence: "the buoy" by its label, else "body float1", by the name that the program gives it. */
export function inSentence(scene: Scene | null, body: string): string {
  const label = scene?.bodies.find(b => b.body === body)?.label
  if (!label || /^[A-Z]$/.test(label)) return `body ${label || body}`
  return /^(the|a|an) /i.test(label) ? label : `the ${label}`
}

/** What a body is called: the scene's label, else the name it is recorded under. */
export function labelOf(scene: Scene | null, body: string): string {
  return scene?.bodies.find(b => b.body === body)?.label || body
}
