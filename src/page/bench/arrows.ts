import { niceStep } from "./number.ts"

/** How a quantity's arrow is drawn, in every picture of the bench alike. */
export type ArrowKind = "force" | "net" | "velocity" | "momentum"

/** One arrow in a picture, px; y downwards. */
export interface Arrow {
  readonly kind: ArrowKind
  readonly name: string
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  /** drawn shorter than its scale says, with a break in the shaft */
  readonly broken: boolean
  /** part along the line of sight: out of the page above zero, into it below; 0 for none worth drawing */
  readonly depth: number
  /** full size with its unit's number, for labels */
  readonly size: number
}

/** A scale common to all arrows of a kind: this many px stand for `value` of the quantity. */
export interface ArrowScale {
  readonly value: number
  readonly px: number
}

/** Shares of its size along the line of sight below this are not drawn. */
const leastDepth = 0.02
/** Arrows shorter than this would be all head. */
const leastLength = 2

/**
 * A round scale at which `typical` (a size that is often reached) takes about `room` px.
 * The stated bar is the round value nearest to half of it.
 */
export function scaleFor(typical: number, room: number): ArrowScale | null {
  if (!(typical > 0) || !Number.isFinite(typical)) return null
  const value = niceStep(typical / 2, 1)
  return { value, px: (room * value) / typical }
}

/** The arrow of a vector at a point, at a scale, broken when longer than `longest` px; null when there is nothing to draw. */
export function arrowOf(
  kind: ArrowKind,
  name: string,
  at: readonly [number, number],
  vector: readonly [number, number, number],
  scale: ArrowScale,
  longest: number,
): Arrow | null {
  const [x, y, z] = vector
  const size = Math.hypot(x, y, z)
  if (!(size > 0) || !Number.isFinite(size)) return null
  const flat = Math.hypot(x, y)
  const full = (flat * scale.px) / scale.value
  const length = Math.min(full, longest)
  const depth = Math.abs(z) > leastDepth * size ? z : 0
  if (length < leastLength && depth === 0) return null
  const to = flat > 0 ? ([at[0] + (x / flat) * length, at[1] - (y / flat) * length] as const) : at
  return { kind, name, from: at, to, broken: full > longest, depth, size }
}

export interface ArrowPaths {
  /** lines to be stroked */
  readonly shaft: string
  /** outline of the head: filled for forces and momentum, stroked open for velocity */
  readonly head: string
  readonly headOpen: boolean
}

const headLength: Record<ArrowKind, number> = { force: 9, net: 12, velocity: 9, momentum: 11 }
const headWidth: Record<ArrowKind, number> = { force: 3.2, net: 5, velocity: 4.5, momentum: 5.5 }
/** half the distance between the two lines of a double shaft, px */
const doubleShaft = 1.8
/** half the width of the break in a shaft, px */
const breakHalf = 4

/** Shaft and head as SVG path data. */
export function arrowPaths(arrow: Arrow): ArrowPaths {
  const [x0, y0] = arrow.from
  const [x1, y1] = arrow.to
  const length = Math.hypot(x1 - x0, y1 - y0)
  if (length < leastLength) return { shaft: "", head: "", headOpen: false }
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length]
  const along = Math.min(headLength[arrow.kind], length * 0.6)
  const across = headWidth[arrow.kind] * (along / headLength[arrow.kind])
  const point = (s: number, n: number) => `${round(x0 + ux * s - uy * n)} ${round(y0 + uy * s + ux * n)}`
  const open = arrow.kind === "velocity"
  const end = open ? length : length - along
  const offsets = arrow.kind === "momentum" ? [-doubleShaft, doubleShaft] : [0]
  const line = (n: number) => {
    if (!arrow.broken) return `M${point(0, n)}L${point(end, n)}`
    const middle = length / 2
    return (
      `M${point(0, n)}L${point(middle - breakHalf, n)}M${point(middle + breakHalf, n)}L${point(end, n)}` +
      [-breakHalf, breakHalf].map(s => `M${point(middle + s - 3, 5)}L${point(middle + s + 3, -5)}`).join("")
    )
  }
  const tip = `M${point(length - along, across)}L${point(length, 0)}L${point(length - along, -across)}`
  return { shaft: offsets.map(line).join(""), head: open ? tip : `${tip}Z`, headOpen: open }
}

/** Radius of the circle that stands for the part along the line of sight, px. */
export function depthRadius(arrow: Arrow, scale: ArrowScale): number {
  return Math.min(12, Math.max(5, (Math.abs(arrow.depth) * scale.px) / scale.value / 4))
}

export function round(px: number): number {
  return Math.round(px * 100) / 100
}
