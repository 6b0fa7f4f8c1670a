import type { Scene, SceneFixture, Spot } from "../../worksheet/contract.ts"
import { round } from "./arrows.ts"
import { around, type Extent, sizeOf, toSpot, union, type View } from "./framing.ts"
import type { BodyColumns } from "./series.ts"
import { labelOf, type Study } from "./study.ts"
import { between, type Moment, momentAt } from "./timeline.ts"
import type { Triple } from "./vectors.ts"

/** How a body is drawn: half sizes in px, and its label ("" for none). */
export interface BodyShape {
  readonly shape: "disc" | "box"
  readonly halfWidth: number
  readonly halfHeight: number
  readonly label: string
}

/** Bodies without a scene block are discs of this radius, px; many of them are smaller. */
const plainRadius = 8
const crowdRadius = 4
const crowd = 8
/** No body is drawn smaller than this half size, px. */
const leastHalf = 2.5
/** The picture follows the reference when the motion reaches further than this many times its size. */
const farOff = 12

export interface Framed {
  readonly extent: Extent
  /** the motion leaves the picture: it reaches too far beyond the reference to show both */
  readonly cut: boolean
}

/** What the picture has to hold: the motion, the reference's, the bodies' sizes, fixed ends and planes near by. */
export function sceneExtent(study: Study, scene: Scene | null, reference: Study | null): Framed {
  const own = study.extent
  const other = reference?.extent ?? null
  const cut = own !== null && other !== null && sizeOf(own) > farOff * (sizeOf(other) || 1)
  let extent = (cut ? grow(other, sizeOf(other) || 1) : union(own, other)) ?? around(0, 0, 1, 1)
  const widest = Math.max(0, ...(scene?.bodies ?? []).map(b => b.width / 2))
  const highest = Math.max(0, ...(scene?.bodies ?? []).map(b => b.height / 2))
  extent = {
    left: extent.left - widest,
    right: extent.right + widest,
    bottom: extent.bottom - highest,
    top: extent.top + highest,
  }
  const reach = sizeOf(extent) || 1
  for (const fixture of scene?.fixtures ?? []) {
    const points = fixture.kind === "plane" ? [nearestOn(fixture, extent)] : [fixture.from, fixture.to]
    for (const point of points) {
      if (typeof point === "string") continue
      const wider = union(extent, around(point[0], point[1], 0, 0)) as Extent
      if (sizeOf(wider) <= 2 * reach) extent = wider
    }
  }
  return { extent: sizeOf(extent) > 0 ? extent : around(extent.left, extent.bottom, 0.5, 0.5), cut }
}

export function bodyShape(scene: Scene | null, body: BodyColumns, view: View, count: number): BodyShape {
  const drawn = scene?.bodies.find(b => b.body === body.name)
  const label = count > crowd ? "" : labelOf(scene, body.name)
  if (!drawn) {
    const radius = count > crowd ? crowdRadius : plainRadius
    return { shape: "disc", halfWidth: radius, halfHeight: radius, label }
  }
  const half = (metres: number) => Math.max(leastHalf, (metres * view.scale) / 2)
  return { shape: drawn.shape, halfWidth: half(drawn.width), halfHeight: half(drawn.height), label }
}

/** Where a body is at a moment, px; null when that is not a number. */
export function spotOf(
  study: Study,
  body: BodyColumns,
  moment: Moment,
  view: View,
): readonly [number, number] | null {
  const [x, y] = toSpot(view, ...placeOf(study, body, moment))
  return Number.isFinite(x) && Number.isFinite(y) ? [x, y] : null
}

/** Where a body is at a moment, m. */
export function placeOf(study: Study, body: BodyColumns, moment: Moment): Triple {
  const { recording } = study
  return [
    between(recording, body.position, moment),
    between(recording, body.position + 1, moment),
    between(recording, body.position + 2, moment),
  ]
}

/** Dots at instants, as path data of strokes without length: round caps make them dots. */
export function dotsPath(study: Study, body: BodyColumns, view: View, instants: readonly number[]): string {
  return instants
    .map(t => spotOf(study, body, momentAt(study.timeline, t), view))
    .filter(spot => spot !== null)
    .map(([x, y]) => `M${round(x)} ${round(y)}h0`)
    .join("")
}

/** px that a path must have moved before a point is worth drawing */
const visible = 2.4
/** rows looked at for a path */
const mostRows = 20_000

/** The way of a body as a line, or its shadow on the level `floor`; rows that move it less than a px are left out. */
export function wayPath(study: Study, body: BodyColumns, view: View, floor?: number): string {
  const { recording } = study
  const { data, width, rows } = recording
  const stride = Math.max(1, Math.floor(rows / mostRows))
  const out: string[] = []
  let [lastX, lastY, open] = [Number.NaN, Number.NaN, false]
  for (let row = 0; row < rows; row += stride) {
    const at = row * width + body.position
    const [x, y] = toSpot(view, data[at] as number, floor ?? (data[at + 1] as number), data[at + 2] as number)
    if (!(Math.abs(x) < 1e6 && Math.abs(y) < 1e6)) {
      open = false
      continue
    }
    if (open && Math.abs(x - lastX) + Math.abs(y - lastY) < visible && row + stride < rows) continue
    out.push(`${open ? "L" : "M"}${round(x)} ${round(y)}`)
    ;[lastX, lastY, open] = [x, y, true]
  }
  return out.join("")
}

export interface SpringEnds {
  readonly from: Triple
  readonly to: Triple
}

/** Ends of what joins two places, at a moment; null where one is not a place. */
export function endsOf(
  { from, to }: { readonly from: Spot | string; readonly to: Spot | string },
  study: Study,
  moment: Moment,
): SpringEnds | null {
  const place = (end: Spot | string): Triple | null => {
    if (typeof end !== "string") return [end[0], end[1], end[2] ?? 0]
    const body = study.bodies.find(b => b.name === end)
    return body ? placeOf(study, body, moment) : null
  }
  const [a, b] = [place(from), place(to)]
  return a && b && [...a, ...b].every(Number.isFinite) ? { from: a, to: b } : null
}

/**
 * Ends of a spring in the world at a moment. A spring named like a recorded force of the body it meets, while that force is
 * zero and the body lies beyond the rest length, has let go: it is drawn at rest length from its fixed end.
 */
export function springEnds(
  fixture: Extract<SceneFixture, { kind: "spring" }>,
  study: Study,
  moment: Moment,
): SpringEnds | null {
  const ends = endsOf(fixture, study, moment)
  if (!ends) return null
  const { from, to } = ends
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
  if (length > fixture.restLength && letGo(fixture, study, moment)) {
    const part = fixture.restLength / length
    if (typeof fixture.to === "string" && typeof fixture.from !== "string")
      return { from, to: mix(from, to, part) }
    if (typeof fixture.from === "string" && typeof fixture.to !== "string")
      return { from: mix(to, from, part), to }
  }
  return { from, to }
}

function letGo(fixture: Extract<SceneFixture, { kind: "spring" }>, study: Study, moment: Moment): boolean {
  return study.bodies.some(body => {
    if (body.name !== fixture.from && body.name !== fixture.to) return false
    const force = body.forces.find(f => f.name === fixture.label)
    if (!force) return false
    const at = moment.row * study.recording.width + force.column
    return [0, 1, 2].every(k => study.recording.data[at + k] === 0)
  })
}

function mix(a: Triple, b: Triple, part: number): Triple {
  return [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part, a[2] + (b[2] - a[2]) * part]
}

function grow(extent: Extent | null, by: number): Extent | null {
  if (!extent) return null
  return {
    left: extent.left - by,
    right: extent.right + by,
    bottom: extent.bottom - by,
    top: extent.top + by,
  }
}

/** The point of a plane's line nearest to the middle of an extent. */
function nearestOn(plane: Extract<SceneFixture, { kind: "plane" }>, extent: Extent): [number, number] {
  const [x, y] = [(extent.left + extent.right) / 2, (extent.bottom + extent.top) / 2]
  const [nx, ny] = plane.normal
  const square = nx * nx + ny * ny || 1
  const off = ((x - plane.point[0]) * nx + (y - plane.point[1]) * ny) / square
  return [x - nx * off, y - ny * off]
}
