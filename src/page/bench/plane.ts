import type { Scene, Spot } from "../../worksheet/contract.ts"
import { round } from "./arrows.ts"
import { toX, toY, type View } from "./framing.ts"
import type { Box } from "./labels.ts"

export interface PlanePicture {
  readonly surface: string
  /** short strokes on the solid side */
  readonly hatching: string
  /** where a label stands: on the solid side, near the right or lower end, px */
  readonly label: readonly [number, number]
  readonly anchor: "start" | "end"
}

/** px between strokes and their length */
const pitch = 9
const stroke = 8

/**
 * A plane seen from the side: its line across the whole picture, hatched on the side that the normal points away from.
 * Null when the line does not cross the picture.
 */
export function planePicture(view: View, point: Spot, normal: Spot): PlanePicture | null {
  const size = Math.hypot(normal[0], normal[1])
  if (!(size > 0)) return null
  const [nx, ny] = [normal[0] / size, -normal[1] / size]
  const [dx, dy] = [-ny, nx]
  const at = [toX(view, point[0]), toY(view, point[1])] as const
  const range = clip(at, [dx, dy], view)
  if (!range) return null
  const on = (s: number) => [at[0] + dx * s, at[1] + dy * s] as const
  const hatching: string[] = []
  for (let k = Math.ceil(range[0] / pitch); k * pitch <= range[1]; k++) {
    const [x, y] = on(k * pitch)
    hatching.push(
      `M${round(x)} ${round(y)}l${round((-nx - dx * 0.7) * stroke)} ${round((-ny - dy * 0.7) * stroke)}`,
    )
  }
  const [a, b] = [on(range[0]), on(range[1])]
  const end = a[0] > b[0] || (a[0] === b[0] && a[1] > b[1]) ? a : b
  /** a wall has its label beside it, a floor below its end */
  const steep = Math.abs(nx) > 0.7
  const inward = end === a ? 1 : -1
  // beside a wall the label stands clear of the numbers of the axis below
  const aside = steep ? 26 : 14
  return {
    surface: `M${round(a[0])} ${round(a[1])}L${round(b[0])} ${round(b[1])}`,
    hatching: hatching.join(""),
    label: [end[0] + inward * dx * aside - nx * 22, end[1] + inward * dy * aside - ny * 22],
    anchor: (steep ? nx > 0 : end[0] > view.width / 2) ? "end" : "start",
  }
}

/** px between the boxes that stand for a hatched line, where no name should stand */
const boxPitch = 12

/** The surfaces of a scene with their hatching and labels, as boxes that names keep clear of. */
export function hatchedBoxes(scene: Scene | null, view: View): Box[] {
  return (scene?.fixtures ?? []).flatMap(fixture => {
    if (fixture.kind !== "plane") return []
    const size = Math.hypot(fixture.normal[0], fixture.normal[1])
    if (!(size > 0)) return []
    const [nx, ny] = [fixture.normal[0] / size, -fixture.normal[1] / size]
    const at = [toX(view, fixture.point[0]), toY(view, fixture.point[1])] as const
    const range = clip(at, [-ny, nx], view)
    if (!range) return []
    const boxes: Box[] = []
    for (let s = range[0]; s <= range[1]; s += boxPitch) {
      const [x, y] = [at[0] - ny * s - (nx * stroke) / 2, at[1] + nx * s - (ny * stroke) / 2]
      boxes.push({ left: x - 6, right: x + 6, top: y - 6, bottom: y + 6 })
    }
    return boxes
  })
}

/** The stretch of a line inside the picture (Liang and Barsky's parameters), px along the direction. */
function clip(
  at: readonly [number, number],
  direction: readonly [number, number],
  view: View,
): readonly [number, number] | null {
  let [from, to] = [-Infinity, Infinity]
  const bounds = [
    [view.margins.left, view.width - view.margins.right],
    [view.margins.top, view.height - view.margins.bottom],
  ] as const
  for (const k of [0, 1] as const) {
    const [low, high] = bounds[k]
    if (Math.abs(direction[k]) < 1e-12) {
      if (at[k] < low || at[k] > high) return null
      continue
    }
    const [s, t] = [(low - at[k]) / direction[k], (high - at[k]) / direction[k]]
    from = Math.max(from, Math.min(s, t))
    to = Math.min(to, Math.max(s, t))
  }
  return from < to ? [from, to] : null
}
