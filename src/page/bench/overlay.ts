import type { DataBlock } from "../../worksheet/contract.ts"
import type { PlotModel } from "./plot-model.ts"
import type { Quantity } from "./quantities.ts"
import type { Study } from "./study.ts"
import { momentAt } from "./timeline.ts"

/** A column of the worksheet's data over its column of time: points to be laid over a plot. */
export interface Overlay {
  /** "film, y" */
  readonly label: string
  readonly data: string
  readonly column: string
  readonly unit: string
  readonly points: readonly (readonly [t: number, value: number])[]
}

/** What of the worksheet's data can stand in a plot over time: every column beside one named t. */
export function overlaysOf(data: readonly DataBlock[]): Overlay[] {
  return data.flatMap(block => {
    const time = block.columns.findIndex(column => column.name === "t")
    if (time < 0) return []
    return block.columns.flatMap((column, at) =>
      at === time
        ? []
        : [
            {
              label: `${block.name}, ${column.name}`,
              data: block.name,
              column: column.name,
              unit: column.unit,
              points: block.rows.map(row => [row[time] as number, row[at] as number] as const),
            },
          ],
    )
  })
}

/** The overlay that a plot gets without being asked: the column that its first line is named after, in the same unit. */
export function usualOverlay(
  overlays: readonly Overlay[],
  x: string,
  y: readonly string[],
  unit: string,
): Overlay | null {
  const [first] = y
  if (x !== "t" || first === undefined) return null
  // a motion that the program itself made from the data is there already
  if (overlays.some(({ data }) => y.some(id => id.startsWith(`${data}.`)))) return null
  return (
    overlays.find(
      ({ column, unit: own }) => own === unit && (first === column || first.endsWith(`.${column}`)),
    ) ?? null
  )
}

export interface Residual {
  /** what is taken from what: "own − reference" */
  readonly label: string
  readonly unit: string
  readonly x: Float64Array
  readonly y: Float64Array
  /** single points rather than a line */
  readonly points: boolean
  /** root of the mean square of what is left */
  readonly rms: number
}

/** A quantity between rows, on the straight line from one to the next. */
export function readAt({ timeline }: Study, quantity: Quantity, t: number): number {
  if (t < timeline.start || t > timeline.end) return Number.NaN
  const { row, part } = momentAt(timeline, t)
  const here = quantity.read(row)
  return part === 0 ? here : here + (quantity.read(row + 1) - here) * part
}

/** Measured less the plot's first line, at each measured time; null where they share no time. */
export function residualOf(study: Study, model: PlotModel, overlay: Overlay): Residual | null {
  const [line] = model.lines
  if (!line || model.x.id !== "t" || study.timeline.unit !== "s") return null
  const left = overlay.points
    .map(([t, value]) => [t, value - readAt(study, line.quantity, t)] as const)
    .filter(([, difference]) => Number.isFinite(difference))
  return residual(left, `${overlay.label} less ${line.quantity.label}`, line.quantity.unit, true)
}

/** The first line less the reference's, at the rows that are drawn. */
export function departureOf(
  study: Study,
  model: PlotModel,
  other: { readonly study: Study; readonly model: PlotModel },
): Residual | null {
  const [line] = model.lines
  const theirs = other.model.lines.find(one => one.quantity.id === line?.quantity.id)
  if (!line || !theirs || model.x.id !== "t" || study.timeline.unit !== "s") return null
  const left = Array.from(
    line.points.x,
    (t, k) => [t, (line.points.y[k] as number) - readAt(other.study, theirs.quantity, t)] as const,
  ).filter(([, difference]) => Number.isFinite(difference))
  return residual(left, `${line.quantity.label} less the reference's`, line.quantity.unit, false)
}

function residual(
  left: readonly (readonly [number, number])[],
  label: string,
  unit: string,
  points: boolean,
): Residual | null {
  if (left.length === 0) return null
  const mean = left.reduce((sum, [, difference]) => sum + difference * difference, 0) / left.length
  return {
    label,
    unit,
    x: Float64Array.from(left, ([t]) => t),
    y: Float64Array.from(left, ([, difference]) => difference),
    points,
    rms: Math.sqrt(mean),
  }
}
