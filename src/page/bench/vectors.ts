import { type Arrow, type ArrowScale, arrowOf, scaleFor } from "./arrows.ts"
import { type BodyColumns, valueAt } from "./series.ts"
import type { Study } from "./study.ts"
import { seenAs, type Turn } from "./turn.ts"

export type Triple = readonly [number, number, number]

/** Which arrows are wanted. */
export interface ArrowChoice {
  readonly forces: boolean
  readonly net: boolean
  readonly velocity: boolean
  readonly momentum: boolean
}

/** One scale a quantity for the whole recording, so that arrows of different instants and bodies compare. */
export interface ArrowScales {
  readonly force: ArrowScale | null
  readonly velocity: ArrowScale | null
  readonly momentum: ArrowScale | null
}

/** px that an arrow of a usual size takes in the scene */
export const arrowRoom = 72
/** rows looked at for a scale */
const sampled = 600
/** px that an arrow of collinear companions is moved aside */
const aside = 7

export function vectorAt(study: Study, row: number, column: number): Triple {
  const { recording } = study
  return [
    valueAt(recording, row, column),
    valueAt(recording, row, column + 1),
    valueAt(recording, row, column + 2),
  ]
}

/** Sum of the recorded forces on a body, N. */
export function netForceAt(study: Study, body: BodyColumns, row: number): Triple {
  const sum: [number, number, number] = [0, 0, 0]
  for (const force of body.forces)
    for (let k = 0; k < 3; k++) sum[k] = (sum[k] ?? 0) + valueAt(study.recording, row, force.column + k)
  return sum
}

/** Change of recorded position over the step that ends at a row (that begins there, for the first), m/s. */
export function velocityAt(study: Study, body: BodyColumns, row: number): Triple {
  if (study.timeline.unit !== "s" || study.recording.rows < 2) return [0, 0, 0]
  const to = Math.max(1, row)
  const step = study.timeline.at(to) - study.timeline.at(to - 1)
  if (!(step > 0)) return [0, 0, 0]
  const [a, b] = [vectorAt(study, to - 1, body.position), vectorAt(study, to, body.position)]
  return [(b[0] - a[0]) / step, (b[1] - a[1]) / step, (b[2] - a[2]) / step]
}

/** Scales at which the sizes that are usual in this recording take about `room` px. */
export function arrowScales(study: Study, room: number): ArrowScales {
  const { bodies } = study
  const forces = bodies.flatMap(b => b.forces.map(f => sizesOf(study, row => vectorAt(study, row, f.column))))
  const velocities = bodies.map(b => sizesOf(study, row => velocityAt(study, b, row)))
  const momenta = bodies.flatMap(({ momentum }) =>
    momentum === null ? [] : [sizesOf(study, row => vectorAt(study, row, momentum))],
  )
  return {
    force: scaleFor(typical(forces), room),
    velocity: scaleFor(typical(velocities), room),
    momentum: scaleFor(typical(momenta), room),
  }
}

/** A scale for the forces on one body, for its free-body diagram. */
export function forceScale(study: Study, body: BodyColumns, room: number): ArrowScale | null {
  return scaleFor(typical(body.forces.map(f => sizesOf(study, row => vectorAt(study, row, f.column)))), room)
}

/** In a picture in space, an arrow is marked as pointing at the eye or away when this part of it lies along the line of sight. */
const alongSight = 0.985

/** A vector as a turned picture draws it; as it is in a picture that is not turned. */
function drawnAs(turn: Turn | undefined, vector: Triple): Triple {
  if (!turn) return vector
  const [right, up, out] = seenAs(turn, vector)
  return [right, up, Math.abs(out) > alongSight * size(vector) ? out : 0]
}

/** The arrows of one body at a recorded row, from its centre in the picture. */
export function arrowsOf(
  study: Study,
  body: BodyColumns,
  row: number,
  at: readonly [number, number],
  scales: ArrowScales,
  choice: ArrowChoice,
  longest: number,
  turn?: Turn,
): Arrow[] {
  const out: Arrow[] = []
  const forces = body.forces.map(f => ({
    name: f.name,
    vector: drawnAs(turn, vectorAt(study, row, f.column)),
  }))
  const add = (arrow: Arrow | null) => arrow && out.push(arrow)
  if (choice.forces && scales.force)
    for (const f of forces) add(arrowOf("force", f.name, at, f.vector, scales.force, longest))
  if (choice.net && scales.force && (forces.length > 1 || !choice.forces)) {
    const net = drawnAs(turn, netForceAt(study, body, row))
    const beside = choice.forces && forces.some(f => sameWay(f.vector, net)) ? moved(at, net, aside) : at
    add(arrowOf("net", "net", beside, net, scales.force, longest))
  }
  const velocity = drawnAs(turn, velocityAt(study, body, row))
  if (choice.velocity && scales.velocity)
    add(arrowOf("velocity", "v", at, velocity, scales.velocity, longest))
  if (choice.momentum && scales.momentum && body.momentum !== null) {
    const momentum = drawnAs(turn, vectorAt(study, row, body.momentum))
    const beside = choice.velocity ? moved(at, momentum, -aside) : at
    add(arrowOf("momentum", "p", beside, momentum, scales.momentum, longest))
  }
  return out
}

/** Sizes of a vector over the recording, sorted; those that are not numbers left out. */
function sizesOf(study: Study, vector: (row: number) => Triple): Float64Array {
  const stride = Math.max(1, Math.floor(study.recording.rows / sampled))
  const sizes: number[] = []
  for (let row = 0; row < study.recording.rows; row += stride) sizes.push(size(vector(row)))
  return Float64Array.from(sizes.filter(Number.isFinite)).sort()
}

/**
 * The size to give full room: the greatest, unless brief pushes stand out threefold over what acts most of the time. Then
 * the geometric mean of both, so that a weight can still be seen beside an impact; the longest arrows are drawn broken.
 */
function typical(vectors: readonly Float64Array[]): number {
  const greatest = Math.max(0, ...vectors.map(sizes => sizes.at(-1) ?? 0))
  const lasting = Math.max(0, ...vectors.map(sizes => sizes[Math.floor(sizes.length / 2)] ?? 0))
  return lasting > 0 && greatest > 3 * lasting ? Math.sqrt(greatest * lasting) : greatest
}

function moved(at: readonly [number, number], along: Triple, by: number): readonly [number, number] {
  const length = Math.hypot(along[0], along[1])
  return length > 0 ? [at[0] + (along[1] / length) * by, at[1] + (along[0] / length) * by] : at
}

function sameWay(a: Triple, b: Triple): boolean {
  const cross = Math.abs(a[0] * b[1] - a[1] * b[0])
  return a[0] * b[0] + a[1] * b[1] > 0 && cross < 0.1 * size(a) * size(b)
}

function size(v: Triple): number {
  return Math.hypot(v[0], v[1], v[2])
}
