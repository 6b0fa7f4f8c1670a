import type { Happening } from "../../worksheet/contract.ts"
import { boxOf } from "../extent.ts"
import type { Track } from "../track.ts"

/** A force below this part of its largest is none. */
const leastForce = 1e-9
/** A turn smaller than this part of the motion is a ripple. */
const leastTurn = 0.02
/** A body at rest has at most this part of its largest momentum left. */
const leastMomentum = 1e-3

/** Instants at which an event happens to a series, s, in order. */
export function instantsOf(event: Happening, track: Track): number[] {
  switch (event) {
    case "contact begins":
      return edges(track).begins
    case "contact ends":
      return edges(track).ends
    case "turning":
      return turnings(track)
    case "rest": {
      const from = restFrom(track)
      return from === null ? [] : [from]
    }
  }
}

function sizes({ times, values, dim }: Track): Float64Array {
  return Float64Array.from(times, (_, i) => Math.hypot(...values.subarray(i * dim, (i + 1) * dim)))
}

/**
 * When a force sets in and when it is gone. What acts from the first instant has not begun. A packed motion may
 * have dropped the first rows without force, which lie on a straight line: a force is gone one step after it last acts.
 */
function edges(track: Track): { begins: number[]; ends: number[] } {
  const step = closest(track.times)
  const size = sizes(track)
  const bound = leastForce * size.reduce((most, value) => Math.max(most, value), 0)
  const begins: number[] = []
  const ends: number[] = []
  for (let i = 1; i < size.length; i++) {
    const [before, now] = [size[i - 1]! > bound, size[i]! > bound]
    if (now && !before) begins.push(track.times[i]!)
    if (before && !now) ends.push(Math.min(track.times[i]!, track.times[i - 1]! + step))
  }
  return { begins, ends }
}

/** The shortest time between two rows. */
function closest(times: ArrayLike<number>): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < times.length; i++) least = Math.min(least, times[i]! - times[i - 1]!)
  return least
}

/** Extremes of a component: it has gone one way and then comes back by more than a ripple. */
function turnings(track: Track): number[] {
  const { times, values } = track
  const { low, high } = boxOf(track)
  const ripple = leastTurn * (high[0]! - low[0]!)
  if (!(ripple > 0)) return []
  const out: number[] = []
  let way = 0
  let top = 0
  let bottom = 0
  for (let i = 1; i < times.length; i++) {
    if (values[i]! > values[top]!) top = i
    if (values[i]! < values[bottom]!) bottom = i
    if (way >= 0 && values[top]! - values[i]! > ripple) {
      if (way > 0 || values[top]! - values[0]! > ripple) out.push(vertex(track, top))
      way = -1
      bottom = i
    } else if (way <= 0 && values[i]! - values[bottom]! > ripple) {
      if (way < 0 || values[0]! - values[bottom]! > ripple) out.push(vertex(track, bottom))
      way = 1
      top = i
    }
    if (way > 0) bottom = i
    if (way < 0) top = i
  }
  return out
}

/** The extreme of the parabola through a row and its neighbours. */
function vertex({ times, values }: Track, i: number): number {
  if (i === 0 || i === times.length - 1) return times[i]!
  const [a, b] = [times[i]! - times[i - 1]!, times[i + 1]! - times[i]!]
  const [down, up] = [(values[i]! - values[i - 1]!) / a, (values[i + 1]! - values[i]!) / b]
  const bend = down - up
  if (bend === 0) return times[i]!
  // slopes belong to the middles of the two stretches
  const at = times[i]! - a / 2 + ((a + b) / 2) * (down / bend)
  return Math.min(times[i + 1]!, Math.max(times[i - 1]!, at))
}

/** From when on a momentum is nothing to the end; null for one that is not, or that never was anything. */
function restFrom(track: Track): number | null {
  const size = sizes(track)
  const bound = leastMomentum * size.reduce((most, value) => Math.max(most, value), 0)
  let i = size.length
  while (i > 0 && size[i - 1]! <= bound) i--
  return i === size.length || i === 0 ? null : track.times[i]!
}
