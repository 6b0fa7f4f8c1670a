import type { Recording } from "../../run/contract.ts"
import type { BodyColumns } from "./series.ts"
import { between, momentAt, type Timeline } from "./timeline.ts"

/** How far a body is from the author's, at equal times. */
export interface Distance {
  readonly body: string
  /** greatest distance and when, m and s */
  readonly greatest: number
  readonly at: number
  /** distance at the last instant that both recordings have, m */
  readonly atEnd: number
}

/** Instants compared: enough for any picture, few enough for each drag of a slider. */
const mostInstants = 4000

/**
 * Distances over the time that both recordings cover; null when one of them counts rows. At the rows of the coarser one:
 * the reference is thinned, and a straight line between its rows would be off where the motion bends.
 */
export function distanceOf(
  own: { readonly recording: Recording; readonly timeline: Timeline; readonly body: BodyColumns },
  other: { readonly recording: Recording; readonly timeline: Timeline; readonly body: BodyColumns },
): Distance | null {
  if (own.timeline.unit !== "s" || other.timeline.unit !== "s") return null
  const coarser = other.recording.rows < own.recording.rows ? other : own
  const { rows } = coarser.recording
  const stride = Math.max(1, Math.floor(rows / mostInstants))
  let [greatest, at, atEnd] = [0, own.timeline.start, 0]
  const [from, to] = [
    Math.max(own.timeline.start, other.timeline.start),
    Math.min(own.timeline.end, other.timeline.end),
  ]
  for (let row = 0; row < rows; row += stride) {
    const t = coarser.timeline.at(row)
    if (t < from || t > to) continue
    const [mine, theirs] = [momentAt(own.timeline, t), momentAt(other.timeline, t)]
    let square = 0
    for (let k = 0; k < 3; k++)
      square +=
        (between(own.recording, own.body.position + k, mine) -
          between(other.recording, other.body.position + k, theirs)) **
        2
    atEnd = Math.sqrt(square)
    if (!(atEnd <= greatest)) [greatest, at] = [atEnd, t]
  }
  return { body: own.body.name, greatest, at, atEnd }
}
