import type { Track } from "./track.ts"

/** What distances of one series are measured against. */
export interface Extent {
  /** diagonal of the box that the reference moves in (or its largest value), in the unit of the series; > 0 */
  readonly size: number
  /** the same for each component, not less than a tenth of `size`, so that a drop beside a long flight counts */
  readonly scales: readonly number[]
}

/** A component counts as at least this part of the whole. */
const leastShare = 0.1
/** Where nothing moves, a thousandth of what moves elsewhere in the recording is the measure. */
const shareOfOthers = 1e-3
/** Differences below this part of the values are rounding. */
const roundingShare = 1e-9

/**
 * Positions are measured by how far they move, since their origin means nothing; all other quantities
 * (momenta, forces, energies) have a zero of their own and are measured by their largest value.
 *
 * @param others largest size of sister series (other positions of the recording), for one that stays at rest
 */
export function extentOf(track: Track, path: string, others = 0): Extent {
  const { low, high } = boxOf(track)
  const place = path.split(".").includes("position")
  const spans = low.map((least, k) => {
    const most = high[k]!
    return place ? most - least : Math.max(Math.abs(least), Math.abs(most), most - least)
  })
  const largest = Math.max(...low.map(Math.abs), ...high.map(Math.abs))
  const moved = Math.hypot(...spans)
  const size = Math.max(moved, shareOfOthers * others, roundingShare * largest) || 1
  return { size, scales: spans.map(span => Math.max(span, leastShare * size)) }
}

interface Box {
  readonly low: readonly number[]
  readonly high: readonly number[]
}

/** A track never changes, and a reference's are asked for with every answer. */
const boxes = new WeakMap<Track, Box>()

export function boxOf(track: Track): Box {
  const known = boxes.get(track)
  if (known !== undefined) return known
  const made = makeBox(track)
  boxes.set(track, made)
  return made
}

function makeBox(track: Track): Box {
  const low = Array.from({ length: track.dim }, () => Number.POSITIVE_INFINITY)
  const high = Array.from({ length: track.dim }, () => Number.NEGATIVE_INFINITY)
  for (let i = 0; i < track.values.length; i++) {
    const k = i % track.dim
    low[k] = Math.min(low[k]!, track.values[i]!)
    high[k] = Math.max(high[k]!, track.values[i]!)
  }
  return { low, high }
}

/** Largest component of a difference, each against its own scale. */
export function relativeDistance(
  a: Float64Array,
  i: number,
  b: Float64Array,
  j: number,
  extent: Extent,
): number {
  let worst = 0
  for (let k = 0; k < extent.scales.length; k++) {
    const d = Math.abs(a[i + k]! - b[j + k]!) / extent.scales[k]!
    if (!(d <= worst)) worst = Number.isNaN(d) ? Number.POSITIVE_INFINITY : d
  }
  return worst
}
