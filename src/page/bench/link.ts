import type { SceneFixture, SceneView } from "../../worksheet/contract.ts"
import { round } from "./arrows.ts"
import { toSpot, type View } from "./framing.ts"
import { endsOf } from "./picture.ts"
import type { Study } from "./study.ts"
import type { Moment } from "./timeline.ts"
import type { Triple } from "./vectors.ts"

type Rope = Extract<SceneFixture, { kind: "rope" }>
type Strut = Extract<SceneFixture, { kind: "strut" }>

export interface LinkPicture {
  readonly d: string
  /** ends, px */
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  /** a rope that hangs: its ends are nearer than its length */
  readonly slack: boolean
}

/** A rope counts as taut within this part of its length: a stiff spring that stands for it stretches a little. */
const tautness = 1e-3
/** half the width of a strut, px */
const half = 2.5
const points = 16

/**
 * How far a slack rope hangs at its middle. For a shallow parabola length - distance = 8 sag²/(3 distance); this form agrees with
 * that and stays bounded when the ends meet.
 */
export const sagOf = (length: number, distance: number): number =>
  Math.sqrt(3 / 16) * Math.sqrt(Math.max(0, length * length - distance * distance))

/** A rope or a strut at a moment; null where an end is no place. */
export function linkPicture(
  fixture: Rope | Strut,
  study: Study,
  moment: Moment,
  view: View,
  from: SceneView,
): LinkPicture | null {
  const ends = endsOf(fixture, study, moment)
  if (!ends) return null
  const [a, b] = [toSpot(view, ...ends.from), toSpot(view, ...ends.to)]
  if (fixture.kind === "strut") return { d: rod(a, b), from: a, to: b, slack: false }
  const distance = Math.hypot(...ends.to.map((end, k) => end - (ends.from[k] as number)))
  const slack = distance < (1 - tautness) * fixture.length
  if (!slack) return { d: `M${spot(a)}L${spot(b)}`, from: a, to: b, slack }
  const sag = sagOf(fixture.length, distance)
  const hang = (part: number): Triple => {
    const at = ends.from.map(
      (start, k) => start + ((ends.to[k] as number) - start) * part,
    ) as unknown as Triple
    const down = 4 * sag * part * (1 - part)
    // seen from above nothing hangs in the picture: a slack line lies in a bow beside the straight one
    if (from !== "top") return [at[0], at[1] - down, at[2]]
    const [ux, uy] =
      distance > 0 ? [(ends.to[0] - ends.from[0]) / distance, (ends.to[1] - ends.from[1]) / distance] : [1, 0]
    return [at[0] + uy * down, at[1] - ux * down, at[2]]
  }
  const way = Array.from({ length: points + 1 }, (_, k) => spot(toSpot(view, ...hang(k / points))))
  return { d: `M${way.join("L")}`, from: a, to: b, slack }
}

/** Two lines side by side, closed at the ends. */
function rod([x0, y0]: readonly [number, number], [x1, y1]: readonly [number, number]): string {
  const length = Math.hypot(x1 - x0, y1 - y0) || 1
  const [nx, ny] = [(-(y1 - y0) / length) * half, ((x1 - x0) / length) * half]
  const corners = [
    [x0 + nx, y0 + ny],
    [x1 + nx, y1 + ny],
    [x1 - nx, y1 - ny],
    [x0 - nx, y0 - ny],
  ] as const
  return `M${corners.map(spot).join("L")}Z`
}

const spot = ([x, y]: readonly [number, number]): string => `${round(x)} ${round(y)}`
