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

/** Distances over the time that both recordings cover, at the own recording's rows; null when the reference lacks the body. */
export function distanceOf(
  own: { readonly recording: Recording; readonly timeline: Timeline; readonly body: BodyColumns },
  other: { readonly recording: Recording; readonly timeline: Timeline; readonly body: BodyColumns },
): Distance | null {
  if (own.timeline.unit !== "s" || other.timeline.unit !== "s") return null
  const stride = Math.max(1, Math.floor(own.recording.rows / mostInstants))
  let [greatest, at, atEnd] = [0, own.timeline.start, 0]
  for (let row = 0; row < own.recording.rows; row += stride) {
    const t = own.timeline.at(row)
    if (t < other.timeline.start || t > other.timeline.end) continue
    const moment = momentAt(other.timeline, t)
    let square = 0
    for (let k = 0; k < 3; k++) {
      const here = own.recording.data[row * own.recording.width + own.body.position + k] as number
      square += (here - between(other.recording, other.body.position + k, moment)) ** 2
    }
    atEnd = Math.sqrt(square)
    if (!(atEnd <= greatest)) [greatest, at] = [atEnd, t]
  }
  return { body: own.body.name, greatest, at, atEnd }
}
