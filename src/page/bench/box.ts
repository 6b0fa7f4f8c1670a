import type { Recording } from "../../run/contract.ts"
import type { Scene, SceneFixture } from "../../worksheet/contract.ts"
import { type Extent, sizeOf } from "./framing.ts"
import type { BodyColumns } from "./series.ts"
import type { Study } from "./study.ts"
import type { Turn } from "./turn.ts"
import type { Triple } from "./vectors.ts"

/** A box of the world with edges along the axes, m. */
export interface Box3 {
  readonly low: Triple
  readonly high: Triple
}

/** Where the bodies ever are, in space; null if no position is a number. */
function motionBox(recording: Recording, bodies: readonly BodyColumns[]): Box3 | null {
  const low: [number, number, number] = [Infinity, Infinity, Infinity]
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  const { data, width, rows } = recording
  for (const body of bodies)
    for (let row = 0, at = body.position; row < rows; row++, at += width) {
      const spot = [data[at], data[at + 1], data[at + 2]] as Triple
      if (!spot.every(Number.isFinite)) continue
      for (const k of [0, 1, 2] as const) {
        low[k] = Math.min(low[k], spot[k])
        high[k] = Math.max(high[k], spot[k])
      }
    }
  return low[0] <= high[0] ? { low, high } : null
}

const kept = new WeakMap<Recording, Box3 | null>()

/** The box of a study's motion, worked out once. */
export function boxOf(study: Study): Box3 | null {
  const known = kept.get(study.recording)
  if (known !== undefined) return known
  const box = motionBox(study.recording, study.bodies)
  kept.set(study.recording, box)
  return box
}

/** Whether a motion leaves the plane x, y by more than rounding. Asked of every new run, so it looks at z alone. */
export function hasDepth({ recording, bodies, extent }: Study): boolean {
  if (!extent) return false
  const most = 1e-6 * Math.max(sizeOf(extent), 1e-9)
  const { data, width, rows } = recording
  return bodies.some(body => {
    for (let row = 0, at = body.position + 2; row < rows; row++, at += width) {
      const z = Math.abs(data[at] as number)
      if (z > most && z < Infinity) return true
    }
    return false
  })
}

/** All that a picture in space keeps in view: motion, reference, fixed ends of springs near by, and the bodies' own sizes. */
export function sceneBox(study: Study, scene: Scene | null, reference: Study | null): Box3 {
  const boxes = [boxOf(study), reference && boxOf(reference)].filter(box => box !== null)
  let box = boxes.length > 0 ? boxes.reduce(joined) : { low: [0, 0, 0] as Triple, high: [0, 0, 0] as Triple }
  const reach = longest(box) || 1
  for (const fixture of scene?.fixtures ?? []) {
    const ends = fixture.kind === "plane" ? [nearestOn(fixture, middleOf(box))] : [fixture.from, fixture.to]
    for (const end of ends) {
      if (typeof end === "string") continue
      const spot: Triple = [end[0], end[1], end[2] ?? 0]
      const wider = joined(box, { low: spot, high: spot })
      if (longest(wider) <= 2 * reach) box = wider
    }
  }
  const half = Math.max(0, ...(scene?.bodies ?? []).map(b => Math.max(b.width, b.height) / 2))
  const by = longest(box) > 0 ? Math.min(half, longest(box)) : half || 0.5
  return {
    low: [box.low[0] - by, box.low[1] - by, box.low[2] - by],
    high: [box.high[0] + by, box.high[1] + by, box.high[2] + by],
  }
}

/** The rectangle, in the picture's own axes about the middle of a box, that holds the box as it is seen. */
export function seenExtent(box: Box3, turn: Turn): Extent {
  const side = sides(box)
  const half = (unit: Triple) =>
    (Math.abs(unit[0]) * side[0] + Math.abs(unit[1]) * side[1] + Math.abs(unit[2]) * side[2]) / 2
  const [across, high] = [half(turn[0]), half(turn[1])]
  return { left: -across, right: across, bottom: -high, top: high }
}

export function middleOf({ low, high }: Box3): Triple {
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2]
}

function nearestOn(plane: Extract<SceneFixture, { kind: "plane" }>, from: Triple): Triple {
  const normal: Triple = [plane.normal[0], plane.normal[1], plane.normal[2] ?? 0]
  const point: Triple = [plane.point[0], plane.point[1], plane.point[2] ?? 0]
  const square = normal[0] ** 2 + normal[1] ** 2 + normal[2] ** 2 || 1
  const off =
    ((from[0] - point[0]) * normal[0] + (from[1] - point[1]) * normal[1] + (from[2] - point[2]) * normal[2]) /
    square
  return [from[0] - normal[0] * off, from[1] - normal[1] * off, from[2] - normal[2] * off]
}

function sides({ low, high }: Box3): Triple {
  return [high[0] - low[0], high[1] - low[1], high[2] - low[2]]
}

function longest(box: Box3): number {
  return Math.max(...sides(box))
}

function joined(a: Box3, b: Box3): Box3 {
  const each = (f: (x: number, y: number) => number, p: Triple, q: Triple): Triple => [
    f(p[0], q[0]),
    f(p[1], q[1]),
    f(p[2], q[2]),
  ]
  return { low: each(Math.min, a.low, b.low), high: each(Math.max, a.high, b.high) }
}
