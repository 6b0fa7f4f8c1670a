import { boxOf } from "./extent.ts"
import { endOf, makeTrack, sample, spacingOf, startOf, type Track } from "./track.ts"

/** Something that happens to a body at an instant: its path turns round, or it meets something. */
export interface MotionEvent {
  readonly kind: "turning point" | "contact"
  /** instant, s; for a contact its middle */
  readonly t: number
  /** first and last instant, s; both `t` for a turning point */
  readonly from: number
  readonly to: number
  /** position at `t`, m */
  readonly place: readonly number[]
  /** speed before and after, m/s; equal for a turning point */
  readonly before: number
  readonly after: number
}

/** A turn smaller than this part of the motion is a ripple. */
const leastTurn = 0.02
/** A contact changes velocity this many times as fast as the motion does on the whole … */
const contactRatio = 6
/** … changes it by at least this part of the largest speed, and lasts no longer than this part of the time. */
const leastKick = 0.1
const longestContact = 0.2

/** Instants at which a motion is looked at: rows of a packed one are too uneven to tell a contact by. */
const lookedAt = 500

function even(track: Track): Track {
  const [from, to] = [startOf(track), endOf(track)]
  const times = Float64Array.from({ length: lookedAt }, (_, i) => from + ((to - from) * i) / (lookedAt - 1))
  const values = new Float64Array(lookedAt * track.dim)
  times.forEach((t, i) => {
    sample(track, t, values, i * track.dim)
  })
  return makeTrack(times, values, track.dim)
}

/** Contacts and turning points of a position, in the order of time. */
export function eventsOf(position: Track): MotionEvent[] {
  if (position.times.length < 5) return []
  const track = even(position)
  return [...contactsOf(track), ...turningPointsOf(track)].sort((a, b) => a.t - b.t)
}

const velocityAt = ({ slopes, dim }: Track, i: number): number[] => [
  ...slopes.subarray(i * dim, (i + 1) * dim),
]
const placeAt = ({ values, dim }: Track, i: number): number[] => [...values.subarray(i * dim, (i + 1) * dim)]
const size = (v: readonly number[]): number => Math.hypot(...v)
const difference = (a: readonly number[], b: readonly number[]): number => size(a.map((x, k) => x - b[k]!))

function contactsOf(track: Track): MotionEvent[] {
  const { times } = track
  const n = times.length
  let fastest = 0
  const rates = new Float64Array(n)
  for (let i = 0; i < n; i++) fastest = Math.max(fastest, size(velocityAt(track, i)))
  for (let i = 1; i < n - 1; i++)
    rates[i] =
      difference(velocityAt(track, i + 1), velocityAt(track, i - 1)) / (times[i + 1]! - times[i - 1]!)
  const usual = [...rates].sort((a, b) => a - b)[n >> 1]!
  const bound = Math.max(
    contactRatio * usual,
    (leastKick * fastest) / (longestContact * (endOf(track) - startOf(track))),
  )
  const events: MotionEvent[] = []
  for (let i = 1; i < n - 1; i++) {
    if (!(rates[i]! > bound)) continue
    const first = i
    while (i < n - 1 && rates[i]! > bound) i++
    const [a, b] = [Math.max(0, first - 1), Math.min(n - 1, i)]
    const [v, w] = [velocityAt(track, a), velocityAt(track, b)]
    const short = times[b]! - times[a]! <= longestContact * (endOf(track) - startOf(track))
    if (!short || difference(v, w) < leastKick * fastest) continue
    const middle = (a + b) >> 1
    events.push({
      kind: "contact",
      t: (times[a]! + times[b]!) / 2,
      from: times[a]!,
      to: times[b]!,
      place: placeAt(track, middle),
      before: size(v),
      after: size(w),
    })
  }
  return events
}

function turningPointsOf(track: Track): MotionEvent[] {
  const { times, values, slopes, dim } = track
  const { low, high } = boxOf(track)
  const extent = Math.max(...low.map((least, k) => high[k]! - least))
  const events: MotionEvent[] = []
  for (let k = 0; k < dim; k++) {
    let last = values[k]!
    for (let i = 1; i < times.length; i++) {
      const [s, u] = [slopes[(i - 1) * dim + k]!, slopes[i * dim + k]!]
      if (!(s * u < 0)) continue
      const part = s / (s - u)
      const t = times[i - 1]! + part * (times[i]! - times[i - 1]!)
      const place = placeAt(track, part < 0.5 ? i - 1 : i)
      if (Math.abs(place[k]! - last) < leastTurn * extent) continue
      last = place[k]!
      const speed = size(velocityAt(track, part < 0.5 ? i - 1 : i))
      events.push({ kind: "turning point", t, from: t, to: t, place, before: speed, after: speed })
    }
  }
  return events
}

export interface EventPair {
  readonly student: MotionEvent
  readonly reference: MotionEvent
  /** how much later the student's comes, s */
  readonly late: number
  /** how far apart the two places are, m */
  readonly apart: number
  /** speed after a contact over the reference's, less 1; 0 for a turning point */
  readonly faster: number
}

/** Two events of the same kind belong together when no further apart in time than this part of the whole. */
const sameEvent = 0.1

/** Events of both motions, kind by kind and in order; those without a partner are left out of the pairs. */
export function matchEvents(
  student: Track,
  reference: Track,
): {
  readonly pairs: readonly EventPair[]
  readonly missing: readonly MotionEvent[]
  readonly extra: readonly MotionEvent[]
} {
  const theirs = eventsOf(reference)
  const mine = eventsOf(student)
  const window = sameEvent * (endOf(reference) - startOf(reference)) + 2 * spacingOf(reference)
  const taken = new Set<MotionEvent>()
  const missing: MotionEvent[] = []
  const pairs = theirs.flatMap((event): EventPair[] => {
    const near = mine
      .filter(
        other => other.kind === event.kind && !taken.has(other) && Math.abs(other.t - event.t) <= window,
      )
      .sort((a, b) => Math.abs(a.t - event.t) - Math.abs(b.t - event.t))[0]
    if (near === undefined) {
      missing.push(event)
      return []
    }
    taken.add(near)
    return [
      {
        student: near,
        reference: event,
        late: near.t - event.t,
        apart: difference(near.place, event.place),
        faster: event.kind === "contact" && event.after > 0 ? near.after / event.after - 1 : 0,
      },
    ]
  })
  return { pairs, missing, extra: mine.filter(event => !taken.has(event)) }
}
