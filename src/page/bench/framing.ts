import type { Recording } from "../../run/contract.ts"
import { multiples, niceStep } from "./number.ts"
import type { BodyColumns } from "./series.ts"
import { seenAs, type Turn } from "./turn.ts"
import type { Triple } from "./vectors.ts"

/** A rectangle of the world, m. */
export interface Extent {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/** How the world lies in a picture of `width` by `height` px: one scale both ways, y upwards. */
export interface View {
  readonly width: number
  readonly height: number
  /** px per m */
  readonly scale: number
  /** the world point in the middle of the field */
  readonly centre: readonly [number, number]
  readonly margins: Margins
  /** in space: the world turned about `about`, and then drawn as if seen from the side */
  readonly turned?: { readonly turn: Turn; readonly about: Triple }
}

export interface Margins {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Where the bodies of a recording ever are, sizes left out; null if no position is a number. */
export function motionExtent(recording: Recording, bodies: readonly BodyColumns[]): Extent | null {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity]
  const { data, width, rows } = recording
  for (const body of bodies) {
    for (let row = 0, at = body.position; row < rows; row++, at += width) {
      const x = data[at] as number
      const y = data[at + 1] as number
      if (!Number.isFinite(x) || !Number.isFinite(y)) continue
      if (x < left) left = x
      if (x > right) right = x
      if (y < bottom) bottom = y
      if (y > top) top = y
    }
  }
  return left <= right ? { left, right, bottom, top } : null
}

export function union(a: Extent | null, b: Extent | null): Extent | null {
  if (!a || !b) return a ?? b
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
    top: Math.max(a.top, b.top),
  }
}

export function around(x: number, y: number, halfWidth: number, halfHeight: number): Extent {
  return { left: x - halfWidth, right: x + halfWidth, bottom: y - halfHeight, top: y + halfHeight }
}

/** The longer side, m. */
export function sizeOf(extent: Extent): number {
  return Math.max(extent.right - extent.left, extent.top - extent.bottom)
}

/** The view in which all of `extent` fits between the margins, equally scaled. A point is given 1 m of room. */
export function viewOf(extent: Extent, width: number, height: number, margins: Margins): View {
  const wide = Math.max(1, width - margins.left - margins.right)
  const high = Math.max(1, height - margins.top - margins.bottom)
  const size = sizeOf(extent)
  const least = size > 0 ? size * 1e-9 : 1
  const spanX = Math.max(extent.right - extent.left, least)
  const spanY = Math.max(extent.top - extent.bottom, least)
  const scale = Math.min(wide / spanX, high / spanY)
  return {
    width,
    height,
    scale,
    centre: [(extent.left + extent.right) / 2, (extent.bottom + extent.top) / 2],
    margins,
  }
}

/** The same view, `factor` times as large, about a world point that keeps its place. */
export function zoom(view: View, factor: number, about: readonly [number, number]): View {
  const keep = (c: number, p: number) => p + (c - p) / factor
  return {
    ...view,
    scale: view.scale * factor,
    centre: [keep(view.centre[0], about[0]), keep(view.centre[1], about[1])],
  }
}

export function pan(view: View, dx: number, dy: number): View {
  return { ...view, centre: [view.centre[0] - dx / view.scale, view.centre[1] + dy / view.scale] }
}

export function toX(view: View, x: number): number {
  const middle = (view.margins.left + view.width - view.margins.right) / 2
  return middle + (x - view.centre[0]) * view.scale
}

export function toY(view: View, y: number): number {
  const middle = (view.margins.top + view.height - view.margins.bottom) / 2
  return middle - (y - view.centre[1]) * view.scale
}

/** Where a point of space lies in the picture, px. */
export function toSpot(view: View, x: number, y: number, z: number): readonly [number, number] {
  if (!view.turned) return [toX(view, x), toY(view, y)]
  const { turn, about } = view.turned
  const [right, up] = seenAs(turn, [x - about[0], y - about[1], z - about[2]])
  return [toX(view, right), toY(view, up)]
}

/** How far a point of space lies towards the eye, m; 0 in a picture that is not turned. */
export function nearness(view: View, x: number, y: number, z: number): number {
  if (!view.turned) return 0
  const { turn, about } = view.turned
  return seenAs(turn, [x - about[0], y - about[1], z - about[2]])[2]
}

export function toWorld(view: View, px: number, py: number): readonly [number, number] {
  return [
    view.centre[0] + (px - toX(view, view.centre[0])) / view.scale,
    view.centre[1] - (py - toY(view, view.centre[1])) / view.scale,
  ]
}

/** The world rectangle seen between the margins. */
export function seen(view: View): Extent {
  const [left, top] = toWorld(view, view.margins.left, view.margins.top)
  const [right, bottom] = toWorld(view, view.width - view.margins.right, view.height - view.margins.bottom)
  return { left, right, bottom, top }
}

export interface Ticks {
  readonly step: number
  readonly x: readonly number[]
  readonly y: readonly number[]
}

/** Ticks of both axes at one common step, about every 64 px. */
export function axisTicks(view: View): Ticks {
  const step = niceStep(64 / view.scale, 1)
  const { left, right, bottom, top } = seen(view)
  return { step, x: multiples(left, right, step), y: multiples(bottom, top, step) }
}

/** A round length that takes between a tenth and a quarter of the field, m. */
export function scaleBar(view: View): number {
  const { left, right } = seen(view)
  return niceStep((right - left) / 10, 1)
}
