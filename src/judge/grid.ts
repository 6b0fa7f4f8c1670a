import type { Ladder } from "./limit.ts"
import { endOf, spacingOf, startOf, type Track } from "./track.ts"

/** Instants at which two motions are compared, in s. */
export const gridPoints = 600

/** A rung that ends before this part of the first one is of a loop with a fixed number of steps. */
const shrunkenBelow = 0.9

export interface Span {
  readonly from: number
  readonly to: number
}

/** A ladder covers less time the shorter its step: its loop counts steps instead of time. */
export function countsSteps(ladder: Ladder): boolean {
  const first = ladder.tracks[0]!
  const last = ladder.tracks[ladder.tracks.length - 1]!
  const factor = ladder.factors[ladder.factors.length - 1]! / ladder.factors[0]!
  if (factor > shrunkenBelow || endOf(first) <= 0) return false
  const part = endOf(last) / endOf(first)
  return part < shrunkenBelow && Math.abs(part - factor) < 0.2 * factor
}

/** Where the motion ends as the step shrinks; where it ended at the given step if its loop counts steps. */
export function endOfMotion(ladder: Ladder): number {
  const ends = ladder.tracks.map(endOf)
  return countsSteps(ladder) ? ends[0]! : ends[ends.length - 1]!
}

/** Time that both ladders cover, leaving out rungs that only count fewer steps. */
export function commonSpan(a: Ladder, b: Ladder): Span {
  const ends = [a, b].flatMap(ladder =>
    countsSteps(ladder) ? [endOf(ladder.tracks[0]!)] : ladder.tracks.map(endOf),
  )
  return {
    from: Math.max(startOf(a.tracks[0]!), startOf(b.tracks[0]!)),
    to: Math.min(...ends),
  }
}

/**
 * The reference's own rows inside the span, thinned to gridPoints, and both ends. Rows are dense where the
 * reference bends, so contacts get their share.
 */
export function gridOf(reference: Track, span: Span): Float64Array {
  const inside: number[] = []
  const { times } = reference
  for (let i = 0; i < times.length; i++)
    if (times[i]! > span.from && times[i]! < span.to) inside.push(times[i]!)
  const stride = Math.max(1, Math.ceil(inside.length / gridPoints))
  const out = [span.from]
  for (let i = stride - 1; i < inside.length; i += stride) out.push(inside[i]!)
  const even = gridPoints / 4
  const width = (span.to - span.from) / even
  if (width > 2 * spacingOf(reference)) {
    for (let i = 1; i < even; i++) out.push(span.from + i * width)
    out.sort((p, q) => p - q)
  }
  if (span.to > out[out.length - 1]!) out.push(span.to)
  return Float64Array.from(out)
}
