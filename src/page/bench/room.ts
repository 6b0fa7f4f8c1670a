import type { SceneFixture } from "../../worksheet/contract.ts"
import type { Box3 } from "./box.ts"
import { toSpot, type View } from "./framing.ts"
import { multiples, niceStep } from "./number.ts"
import type { Triple } from "./vectors.ts"

/** The axes of a picture in space: the floor of the motion's box as a grid, and three edges that carry the numbers. */
export interface Room {
  readonly step: number
  /** lines of the floor, path data */
  readonly grid: string
  readonly axes: readonly RoomAxis[]
}

export interface RoomAxis {
  readonly name: "x" | "y" | "z"
  readonly line: string
  readonly ticks: readonly { readonly value: number; readonly at: readonly [number, number] }[]
  /** where the axis' name stands: beyond the numbers, at the middle */
  readonly titleAt: readonly [number, number]
  /** px from a tick to its number: away from the middle of the room */
  readonly aside: readonly [number, number]
  readonly anchor: "start" | "middle" | "end"
}

/** px between two numbers, at least */
const apart = 34
/** an axis shorter than this in the picture carries no numbers, px */
const leastAxis = 46

/** Grid and axes of a box as the turned view shows them. */
export function roomOf(view: View, box: Box3): Room {
  const step = niceStep(Math.max(apart / view.scale, longestSide(box) / 8), 1)
  const { low, high } = box
  const line = (a: Triple, b: Triple) => {
    const [p, q] = [toSpot(view, ...a), toSpot(view, ...b)]
    return `M${place(p)}L${place(q)}`
  }
  const floor = low[1]
  const xs = multiples(low[0], high[0], step)
  const zs = multiples(low[2], high[2], step)
  const grid =
    xs.map(x => line([x, floor, low[2]], [x, floor, high[2]])).join("") +
    zs.map(z => line([low[0], floor, z], [high[0], floor, z])).join("")
  const out = view.turned?.turn[2] ?? [0, 0, 1]
  const nearX = out[0] >= 0 ? high[0] : low[0]
  const nearZ = out[2] >= 0 ? high[2] : low[2]
  const centre = toSpot(view, (low[0] + high[0]) / 2, (floor + high[1]) / 2, (low[2] + high[2]) / 2)
  const corners: Triple[] = [low[0], high[0]].flatMap(x =>
    [low[2], high[2]].map((z): Triple => [x, floor, z]),
  )
  const [left = corners[0] as Triple] = corners.sort((a, b) => toSpot(view, ...a)[0] - toSpot(view, ...b)[0])
  const axis = (
    name: RoomAxis["name"],
    a: Triple,
    b: Triple,
    values: number[],
    on: (v: number) => Triple,
  ) => {
    const [p, q] = [toSpot(view, ...a), toSpot(view, ...b)]
    const long = Math.hypot(q[0] - p[0], q[1] - p[1])
    const every = Math.max(1, Math.ceil((apart * Math.max(1, values.length - 1)) / Math.max(long, 1)))
    const [dx, dy] = [(q[0] - p[0]) / (long || 1), (q[1] - p[1]) / (long || 1)]
    const middle = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2] as const
    const outward = (middle[0] - centre[0]) * -dy + (middle[1] - centre[1]) * dx < 0 ? -1 : 1
    const [nx, ny] = [-dy * outward, dx * outward]
    return {
      name,
      line: line(a, b),
      ticks:
        long < leastAxis
          ? []
          : values.filter((_, k) => k % every === 0).map(v => ({ value: v, at: toSpot(view, ...on(v)) })),
      titleAt: [middle[0] + nx * 36, middle[1] + ny * 36 + 4] as const,
      aside: [nx * 9, ny * 12 + 4] as const,
      anchor: Math.abs(nx) < 0.4 ? ("middle" as const) : nx < 0 ? ("end" as const) : ("start" as const),
    }
  }
  return {
    step,
    grid,
    axes: [
      axis("x", [low[0], floor, nearZ], [high[0], floor, nearZ], xs, v => [v, floor, nearZ]),
      axis("z", [nearX, floor, low[2]], [nearX, floor, high[2]], zs, v => [nearX, floor, v]),
      axis(
        "y",
        [left[0], floor, left[2]],
        [left[0], high[1], left[2]],
        multiples(floor, high[1], step),
        v => [left[0], v, left[2]],
      ),
    ],
  }
}

/** A plane inside a box, as the outline of the piece that the box cuts out of it; null when it does not meet the box. */
export function planeOutline(
  view: View,
  box: Box3,
  plane: Extract<SceneFixture, { kind: "plane" }>,
): { readonly d: string; readonly label: readonly [number, number] } | null {
  const normal: Triple = [plane.normal[0], plane.normal[1], plane.normal[2] ?? 0]
  const point: Triple = [plane.point[0], plane.point[1], plane.point[2] ?? 0]
  const by = longestSide(box) * 0.02
  const corners = cornersOf({
    low: [box.low[0] - by, box.low[1] - by, box.low[2] - by],
    high: [box.high[0] + by, box.high[1] + by, box.high[2] + by],
  })
  const side = (c: Triple) =>
    (c[0] - point[0]) * normal[0] + (c[1] - point[1]) * normal[1] + (c[2] - point[2]) * normal[2]
  const cuts: (readonly [number, number])[] = []
  for (let a = 0; a < 8; a++)
    for (const bit of [1, 2, 4]) {
      const b = a | bit
      if (b === a) continue
      const [p, q] = [corners[a] as Triple, corners[b] as Triple]
      const [s, t] = [side(p), side(q)]
      if (s * t > 0 || s === t) continue
      const part = s / (s - t)
      cuts.push(
        toSpot(view, p[0] + (q[0] - p[0]) * part, p[1] + (q[1] - p[1]) * part, p[2] + (q[2] - p[2]) * part),
      )
    }
  if (cuts.length < 3) return null
  const middle = cuts.reduce(([x, y], [a, b]) => [x + a / cuts.length, y + b / cuts.length], [0, 0])
  const angle = ([x, y]: readonly [number, number]) => Math.atan2(y - (middle[1] ?? 0), x - (middle[0] ?? 0))
  const outline = cuts.sort((a, b) => angle(a) - angle(b))
  const label = outline.reduce((best, spot) => (spot[0] > best[0] ? spot : best))
  return { d: `M${outline.map(place).join("L")}Z`, label }
}

/** The eight corners; bit 1 is x, bit 2 y, bit 4 z. */
function cornersOf({ low, high }: Box3): Triple[] {
  return Array.from({ length: 8 }, (_, k) => [
    k & 1 ? high[0] : low[0],
    k & 2 ? high[1] : low[1],
    k & 4 ? high[2] : low[2],
  ])
}

function longestSide({ low, high }: Box3): number {
  return Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]) || 1
}

function place([x, y]: readonly [number, number]): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`
}
