import { type Decimated, decimate } from "./decimate.ts"
import { type Constant, quantityFor } from "./expression.ts"
import { unitText } from "./number.ts"
import type { Ink, Quantity } from "./quantities.ts"
import type { Study } from "./study.ts"

/** A plot as asked for: one quantity across, some upwards; each a name of what is recorded, or an expression of such names. */
export interface PlotWish {
  readonly x: string
  readonly y: readonly string[]
  readonly caption: string
}

/** One line of a plot, ready to be drawn. */
export interface PlotLine {
  readonly quantity: Quantity
  readonly points: Decimated
  /** stroke pattern within its ink, so that lines of one quantity differ without colour */
  readonly dash: string
}

export interface PlotModel {
  readonly x: Quantity
  readonly lines: readonly PlotLine[]
  readonly xLabel: string
  readonly yLabel: string
  /** names that were asked for and are not recorded */
  readonly missing: readonly string[]
}

/** Own lines are never long-dashed: that is the reference's pattern. */
const dashes = ["none", "1.5 3", "6 2 1.5 2", "3 2"]

/** What to draw for a wish, about two stretches a px; null when nothing it names is recorded. */
export function plotModel(
  study: Study,
  quantities: readonly Quantity[],
  wish: PlotWish,
  width: number,
  constants: readonly Constant[] = [],
): PlotModel | null {
  const named = (text: string) => quantityFor(text, quantities, constants)
  const x = named(wish.x)
  const found = wish.y.map(named).filter(q => q !== null)
  const missing = [wish.x, ...wish.y].filter(text => named(text) === null)
  if (!x || found.length === 0) return null
  const used = new Map<Ink, number>()
  const lines = found.map(quantity => {
    const count = used.get(quantity.ink) ?? 0
    used.set(quantity.ink, count + 1)
    const points = decimate(study.recording.rows, x.read, quantity.read, Math.max(40, Math.round(width / 2)))
    return { quantity, points, dash: dashes[count % dashes.length] as string }
  })
  return { x, lines, xLabel: axisLabel([x]), yLabel: axisLabel(found), missing }
}

/** "position of key, y (m)"; lines of one vector share its name, others are named in turn. */
function axisLabel(quantities: readonly Quantity[]): string {
  const stem = (q: Quantity) => (quantities.length > 1 ? q.label.replace(/, [xyz]$/, "") : q.label)
  const labels = quantities.map(q =>
    q.unit === "" || q.unit === "1" ? stem(q) : `${stem(q)} (${unitText(q.unit)})`,
  )
  return [...new Set(labels)].join("; ")
}

/** The recorded row whose point lies nearest to a place in the plot; for a plot over time that is the nearest in time. */
export function nearestRow(
  study: Study,
  model: PlotModel,
  px: number,
  py: number,
  toPx: { readonly x: (value: number) => number; readonly y: (value: number) => number },
): number {
  const stride = Math.max(1, Math.floor(study.recording.rows / 20_000))
  const line = model.lines[0]
  let [best, bestRow] = [Number.POSITIVE_INFINITY, 0]
  for (let row = 0; row < study.recording.rows; row += stride) {
    const dx = toPx.x(model.x.read(row)) - px
    const dy = model.x.id === "t" || !line ? 0 : toPx.y(line.quantity.read(row)) - py
    const far = dx * dx + dy * dy
    if (far < best) [best, bestRow] = [far, row]
  }
  return bestRow
}
