import { unitText } from "./number.ts"
import type { Overlay, Residual } from "./overlay.ts"
import type { PlotLine, PlotModel } from "./plot-model.ts"
import type { Ink } from "./quantities.ts"

/** Where a drawn plot puts values, px. */
export interface Drawn {
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  readonly top: number
  readonly bottom: number
  /** least and greatest of the axis across */
  readonly domain: readonly [number, number]
}

export const inkOf: Record<Ink, string> = {
  position: "var(--q-position)",
  velocity: "var(--q-velocity)",
  momentum: "var(--q-momentum)",
  force: "var(--q-force)",
  net: "var(--q-net-force)",
  energy: "var(--q-energy)",
  scalar: "var(--ink)",
}

const margins = { marginLeft: 54, marginRight: 14, marginTop: 22, marginBottom: 34 }

/** A span below this part of the values is rounding: drawn large it would look like a motion. */
const level = 1e-9

/** An axis for values that stay the same: around them, not into their last bits. Nothing for values that do change. */
export function levelDomain(
  model: PlotModel,
  other: PlotModel | null,
  overlay: Overlay | null,
): { readonly domain?: readonly [number, number] } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const see = (value: number) => {
    if (value < low) low = value
    if (value > high) high = value
  }
  for (const { points } of [...model.lines, ...(other?.lines ?? [])]) points.y.forEach(see)
  for (const [, value] of overlay?.points ?? []) see(value)
  const size = Math.max(Math.abs(low), Math.abs(high))
  if (!(high >= low) || !Number.isFinite(size) || high - low > level * size) return {}
  return { domain: size === 0 ? [-1, 1] : [Math.min(0, 1.5 * low), Math.max(0, 1.5 * high)] }
}

/** Observable Plot comes with the first plot, not with the page. */
export async function draw(
  model: PlotModel,
  other: PlotModel | null,
  overlay: Overlay | null,
  width: number,
  height: number,
) {
  const plot = await import("@observablehq/plot")
  const line = ({ points, dash, quantity: q }: PlotLine) =>
    plot.line(
      { length: points.x.length },
      {
        x: points.x,
        y: points.y,
        stroke: inkOf[q.ink],
        strokeWidth: 1.5,
        strokeDasharray: dash,
      },
    )
  const theirs = (other?.lines ?? []).map(({ points }) =>
    plot.line(
      { length: points.x.length },
      {
        x: points.x,
        y: points.y,
        stroke: "var(--q-reference)",
        strokeWidth: 1.5,
        strokeDasharray: "9 5",
      },
    ),
  )
  const element = plot.plot({
    width,
    height,
    ...margins,
    className: "bn-plot-svg",
    ariaLabel: `${model.yLabel || model.lines.map(l => l.quantity.label).join(", ")} against ${model.xLabel}`,
    x: { label: model.xLabel, labelArrow: "none", ticks: Math.max(3, Math.floor(width / 90)), tickSize: 5 },
    y: {
      label: model.yLabel,
      labelArrow: "none",
      ticks: Math.max(3, Math.floor(height / 38)),
      tickSize: 5,
      nice: true,
      ...levelDomain(model, other, overlay),
    },
    marks: [
      plot.axisX({ anchor: "bottom", label: model.xLabel, labelArrow: "none", tickSize: 5 }),
      plot.axisY({ anchor: "left", label: model.yLabel, labelArrow: "none", tickSize: 5 }),
      plot.ruleY([0], { stroke: "var(--plate-hair)" }),
      ...theirs,
      ...model.lines.map(line),
      ...(overlay
        ? [plot.dot(overlay.points, { symbol: "times", r: 2.6, stroke: "var(--ink)", strokeWidth: 1.1 })]
        : []),
    ],
  })
  element.setAttribute("role", "img")
  for (const part of element.querySelectorAll("g[aria-label]")) part.removeAttribute("aria-label")
  const [x, y] = [element.scale("x"), element.scale("y")]
  const [from, to] = (x?.domain ?? [0, 1]) as [number, number]
  const scales: Drawn = {
    domain: [from, to],
    x: value => Number(x?.apply(value)),
    y: value => Number(y?.apply(value)),
    top: margins.marginTop,
    bottom: height - margins.marginBottom,
  }
  return { element, scales }
}

/** What is left between a plot's first line and what it is compared with, in a strip on the same axis of time. */
export async function drawResidual(left: Residual, domain: readonly [number, number], width: number) {
  const plot = await import("@observablehq/plot")
  const shared = { x: left.x, y: left.y, stroke: "var(--q-difference)" }
  const element = plot.plot({
    width,
    height: 96,
    ...margins,
    className: "bn-plot-svg",
    ariaLabel: left.label,
    x: { domain: [...domain], axis: null },
    y: { label: "left over", labelArrow: "none", ticks: 3, tickSize: 5, nice: true },
    marks: [
      plot.axisY({
        anchor: "left",
        label: `left over${unitOf(left.unit)}`,
        labelArrow: "none",
        tickSize: 5,
        ticks: 3,
      }),
      plot.ruleY([0], { stroke: "var(--ink-grey)" }),
      left.points
        ? plot.dot({ length: left.x.length }, { ...shared, symbol: "times", r: 2.2, strokeWidth: 1.1 })
        : plot.line({ length: left.x.length }, { ...shared, strokeWidth: 1.5, strokeDasharray: "2 2" }),
    ],
  })
  element.setAttribute("role", "img")
  for (const part of element.querySelectorAll("g[aria-label]")) part.removeAttribute("aria-label")
  return element
}

const unitOf = (unit: string): string => (unit === "" || unit === "1" ? "" : ` (${unitText(unit)})`)
