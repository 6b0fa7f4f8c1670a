import type { Extent } from "./extent.ts"
import { relativeDistance } from "./extent.ts"
import { endOf, sampler, spacingOf, startOf, type Track } from "./track.ts"

/** One series at several step factors, descending (1, 1/2, 1/4 …). */
export interface Ladder {
  readonly factors: readonly number[]
  readonly tracks: readonly Track[]
}

/**
 * Where a ladder goes as the step shrinks, at each instant of a grid (Richardson's extrapolation to the limit).
 * `rungs[i]` says how many step sizes reach that far: 3 or 2 give a limit, 1 only the motion at the given step.
 */
export interface Limit {
  readonly values: Float64Array
  /** the limit as it was foretold without the finest step; the values themselves where there are fewer than three */
  readonly before: Float64Array
  /** how far the limit moved when the finest step was added, against the extent */
  readonly unsure: Float64Array
  readonly rungs: Uint8Array
  /** 1 or 2, as seen from the ladder itself */
  readonly order: 1 | 2
  /** differences shrink from rung to rung */
  readonly converges: boolean
}

/** Ratio of successive differences below which the ladder is taken to be of second order (1/4), else first (1/2). */
const secondOrderBelow = 0.35
/** Above this ratio of successive differences a ladder does not close on anything. */
const closesBelow = 0.75
/** A ladder whose differences are below this part of the extent stands still. */
const stillBelow = 1e-9

/** Puts the rungs that reach an instant into `reaching`, the finest three of them at most, and says how many they are. */
function reach({ tracks }: Ladder): (t: number, reaching: Uint8Array) => number {
  const rungs = tracks.map(track => ({
    from: startOf(track),
    to: endOf(track),
    two: 2 * spacingOf(track),
  }))
  const coarsest = 2 * spacingOf(tracks[0]!)
  return (t, reaching) => {
    let count = 0
    for (let i = rungs.length - 1; i >= 0 && count < 3; i--) {
      const { from, to, two } = rungs[i]!
      const slack = 1e-9 * Math.max(1, Math.abs(t)) + two
      if (t <= to + slack && t >= from - slack - coarsest) reaching[count++] = i
    }
    return count
  }
}

let shelf = [new Float64Array(0), new Float64Array(0), new Float64Array(0)] as const

/** Three arrays of zeros, at least of this length; the same ones at every call. */
function scratch(length: number): typeof shelf {
  if (shelf[0].length < length)
    shelf = [new Float64Array(length), new Float64Array(length), new Float64Array(length)]
  else for (const array of shelf) array.fill(0, 0, length)
  return shelf
}

export function limitOf(ladder: Ladder, grid: Float64Array, extent: Extent): Limit {
  const dim = extent.scales.length
  const n = grid.length
  const samples = scratch(n * dim)
  const rungs = new Uint8Array(n)
  const samplers = ladder.tracks.map(sampler)
  const reachingAt = reach(ladder)
  const reaching = new Uint8Array(3)
  let coarse = 0
  let fine = 0
  for (let i = 0; i < n; i++) {
    const count = reachingAt(grid[i]!, reaching)
    rungs[i] = count
    for (let j = 0; j < count; j++) samplers[reaching[j]!]!(grid[i]!, samples[2 - j]!, i * dim)
    if (count < 3) continue
    coarse += relativeDistance(samples[0], i * dim, samples[1], i * dim, extent) ** 2
    fine += relativeDistance(samples[1], i * dim, samples[2], i * dim, extent) ** 2
  }
  const ratio = coarse > stillBelow * stillBelow * n ? Math.sqrt(fine / coarse) : 0.5
  const still = coarse <= stillBelow * stillBelow * n && fine <= stillBelow * stillBelow * n
  const order = ratio < secondOrderBelow ? 2 : 1
  const step = order === 2 ? 1 / 3 : 1
  const [first, second, third] = samples
  const values = new Float64Array(n * dim)
  const before = new Float64Array(n * dim)
  const unsure = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const rung = rungs[i]!
    for (let k = 0; k < dim; k++) {
      const at = i * dim + k
      const finest = third[at]!
      values[at] = rung < 2 ? finest : finest + (finest - second[at]!) * step
      before[at] =
        rung < 2 ? values[at]! : rung === 2 ? finest : second[at]! + (second[at]! - first[at]!) * step
      unsure[i] = Math.max(unsure[i]!, Math.abs(values[at]! - before[at]!) / extent.scales[k]!)
    }
  }
  return { values, before, unsure, rungs, order, converges: still || ratio < closesBelow }
}
