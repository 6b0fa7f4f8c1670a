import { type Extent, relativeDistance } from "./extent.ts"
import type { Ladder, Limit } from "./limit.ts"
import { finestFactor } from "./tools.ts"
import { sampler } from "./track.ts"

/** A distance below this part of the extent is none. */
const rounding = 2e-4
/** In a ladder that closes on the reference, each halving leaves at most this part of the distance … */
const closingRatio = 0.75
/** … down to at most this part of the extent … */
const closingDistance = 0.1
/** A foretold limit that came nearer by this factor is still on its way. */
const drawingNear = 0.6
/** A ladder whose distance grows by this factor with each halving leads elsewhere. */
const runningRatio = 1.5
/** A limit that is foretold nearer than this part of the last run's distance is one still on its way. */
const stillMoving = 0.8
/** … and the distance of the extrapolated limits is at most this part of the last one. */
const vanishing = 0.35

/** No method of first or second order falls faster with a halving than to this part; what does is breaking down. */
const steepestFall = 0.2

/** Whether a distance that falls as steadily as it has so far is still more than the whole extent at the finest step. */
function outOfReach(factor: number, fine: number, middle: number, coarse: number): boolean {
  const fall = Math.max(fine / middle, steepestFall)
  const steady = fine > steepestFall * middle && middle > steepestFall * coarse
  return steady && fine * fall ** Math.log2(factor / finestFactor) > 1
}

export interface Approach {
  /** each of the last two halvings brings it nearer, towards nothing */
  readonly closing: boolean
  /** shorter steps still bring the motions together */
  readonly onItsWay: boolean
  /** each halving takes it further off instead, or so little nearer that the finest step would not bring it there */
  readonly runsAway: boolean
}

/** How the student's motion moves towards the reference's limit, or does not, as the step shrinks. */
export function approachOf(
  student: Ladder,
  mine: Limit,
  theirs: Limit,
  grid: Float64Array,
  distances: Float64Array,
  until: number,
  extent: Extent,
): Approach {
  const dim = extent.scales.length
  const here = new Float64Array(dim)
  const gaps = student.tracks.slice(-3).map(track => {
    let worst = 0
    const studentAt = sampler(track)
    for (let i = 0; i < until; i++) {
      if (mine.rungs[i]! < 3) continue
      studentAt(grid[i]!, here)
      worst = Math.max(worst, relativeDistance(here, 0, theirs.values, i * dim, extent))
    }
    return worst
  })
  const [fine = 0, middle = 0, coarse = 0] = gaps.reverse()
  let now = 0
  let before = 0
  for (let i = 0; i < until; i++) {
    if (mine.rungs[i]! < 3) continue
    now = Math.max(now, distances[i]!)
    before = Math.max(before, relativeDistance(mine.before, i * dim, theirs.values, i * dim, extent))
  }
  const shrinks = gaps.length > 2 && fine <= closingRatio * middle
  const drawsNear = now < drawingNear * before
  const left = fine > rounding ? now / fine : 1
  return {
    closing:
      shrinks && middle <= closingRatio * coarse && fine <= closingDistance && drawsNear && left <= vanishing,
    onItsWay: drawsNear || (shrinks && left < stillMoving),
    runsAway:
      gaps.length > 2 &&
      fine > closingDistance &&
      ((fine >= runningRatio * middle && middle >= runningRatio * coarse) ||
        outOfReach(student.factors[student.factors.length - 1]!, fine, middle, coarse)),
  }
}
