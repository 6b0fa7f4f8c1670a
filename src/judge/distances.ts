import { rowStep } from "./coverage.ts"
import { type Extent, relativeDistance } from "./extent.ts"
import type { Ladder, Limit } from "./limit.ts"
import { hullDistance, steepestChange } from "./steep.ts"
import { sampler, spacingOf, type Track } from "./track.ts"

/** Limits nearer than this part of the extent are the same: rounding of constants, a last partial step. */
export const leastTolerance = 0.002
/** Where only the given step is known, a method's own error must pass. */
export const leastCloseness = 0.01
/** The reference's own uncertainty times this is allowed. */
export const trust = 2
/** Beyond this uncertainty, as part of the extent, the reference says nothing. */
export const horizonUncertainty = 0.05

/** What may lie between two limits at each instant, and the first index past which the reference is unsure. */
export function allowance(
  reference: Limit,
  grid: Float64Array,
  track: Track,
  extent: Extent,
  author: number | null,
  refined: boolean,
): { tolerance: Float64Array; horizon: number } {
  const tolerance = new Float64Array(grid.length)
  let unsure = 0
  let horizon = grid.length
  const close = leastCloseness + (refined ? steepestChange(track, spacingOf(track), extent) : 0)
  for (let i = 0; i < grid.length; i++) {
    if (reference.rungs[i]! > 2) unsure = Math.max(unsure, reference.unsure[i]!)
    if (unsure > horizonUncertainty && horizon === grid.length) horizon = Math.max(i, 2)
    tolerance[i] = author ?? (reference.rungs[i]! > 1 ? Math.max(leastTolerance, trust * unsure) : close)
  }
  return { tolerance, horizon }
}

/** Distance of the limits where both have one; of the motions at the given step where one has not. */
export function distancesOf(
  mine: Limit,
  theirs: Limit,
  grid: Float64Array,
  extent: Extent,
  student: Ladder,
  reference: Ladder,
  tolerance: Float64Array,
  until: number,
): Float64Array {
  const dim = extent.scales.length
  const out = new Float64Array(grid.length)
  const here = new Float64Array(dim)
  const there = new Float64Array(dim)
  const studentAt = sampler(student.tracks[0]!)
  const referenceAt = sampler(reference.tracks[0]!)
  // by which an impact may be early or late
  const window = 2 * rowStep(student.tracks[0]!, reference.tracks[0]!)
  for (let i = 0; i < until; i++) {
    const t = grid[i]!
    const limits = mine.rungs[i]! > 1 && theirs.rungs[i]! > 1
    if (limits) {
      out[i] = relativeDistance(mine.values, i * dim, theirs.values, i * dim, extent)
    } else {
      studentAt(t, here)
      referenceAt(t, there)
      out[i] = relativeDistance(here, 0, there, 0, extent)
      if (reference.tracks.length > 1) tolerance[i] = Math.max(tolerance[i]!, closenessFor(reference, extent))
    }
    if (out[i]! > tolerance[i]!) {
      const finest = limits ? student.tracks[student.tracks.length - 1]! : student.tracks[0]!
      const other = limits ? reference.tracks[reference.tracks.length - 1]! : reference.tracks[0]!
      const hull = hullDistance(finest, other, t, window, extent)
      if (hull !== null) out[i] = Math.min(out[i]!, hull)
    }
  }
  return out
}

const closenessFor = (reference: Ladder, extent: Extent): number =>
  leastCloseness + steepestChange(reference.tracks[0]!, spacingOf(reference.tracks[0]!), extent)

export function distanceAsGiven(
  student: Track,
  reference: Track,
  grid: Float64Array,
  until: number,
  extent: Extent,
): number {
  const here = new Float64Array(extent.scales.length)
  const there = new Float64Array(extent.scales.length)
  const studentAt = sampler(student)
  const referenceAt = sampler(reference)
  let worst = 0
  for (let i = 0; i < until; i++) {
    studentAt(grid[i]!, here)
    referenceAt(grid[i]!, there)
    worst = Math.max(worst, relativeDistance(here, 0, there, 0, extent))
  }
  return worst
}
