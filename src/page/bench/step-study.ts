import type { Recording } from "../../run/contract.ts"
import { type BodyColumns, valueAt } from "./series.ts"
import { type Study, studyOf } from "./study.ts"
import { between, momentAt } from "./timeline.ts"

/** The parts of the time step that are run. */
export const stepFactors = [1, 1 / 2, 1 / 4] as const

/** What one quantity comes to at dt, dt/2 and dt/4. */
export interface StepRow {
  readonly quantity: string
  readonly unit: string
  readonly values: readonly [number, number, number]
  /** how far apart two runs are: dt and dt/2, dt/2 and dt/4. Of a position this is a distance */
  readonly changes: readonly [number, number]
  readonly order: Order
}

export type Order =
  /** the changes fall by 2 to this power when the step is halved */
  | { readonly kind: "order"; readonly order: number }
  /** no change beyond rounding */
  | { readonly kind: "exact" }
  /** changes that do not fall, or fall as no one power does */
  | { readonly kind: "none" }

export interface StepStudy {
  /** the instant that the end values belong to, s: the last that all three runs have */
  readonly at: number
  /** of each body its place at that instant, and how far the runs are apart there */
  readonly places: readonly (StepRow & { readonly body: string })[]
  readonly others: readonly StepRow[]
  /** of the body that changes most: what the run at dt is off its limit by, m; null where the changes show no order */
  readonly off: { readonly body: string; readonly distance: number; readonly share: number } | null
}

/** Changes below this part of the quantity's size are rounding. */
const rounding = 1e-9
/** An order is read off only between these; beyond them the runs are not yet near the limit, or leave it. */
const orders = [0.4, 6] as const

/**
 * The order that three runs show: with error C dtᵖ the changes are C dtᵖ (1 - 2⁻ᵖ) and 2⁻ᵖ times that, so that
 * p = log₂(first change / second change).
 * After P. J. Roache, Verification and Validation in Computational Science and Engineering (1998), from memory.
 */
export function orderOf([first, second]: readonly [number, number], size: number): Order {
  if (!Number.isFinite(first) || !Number.isFinite(second)) return { kind: "none" }
  const least = rounding * size
  if (first <= least && second <= least) return { kind: "exact" }
  const order = Math.log2(first / second)
  return order >= orders[0] && order <= orders[1] ? { kind: "order", order } : { kind: "none" }
}

/** What changes between runs of one cell at dt, dt/2 and dt/4; null when they have no common instant or body. */
export function stepStudy(recordings: readonly [Recording, Recording, Recording]): StepStudy | null {
  const studies = recordings.map(studyOf) as [Study, Study, Study]
  if (studies.some(({ timeline }) => timeline.unit !== "s" || timeline.rows < 2)) return null
  const at = commonInstant(studies)
  if (at === null) return null
  const bodies = studies[0].bodies.filter(body =>
    studies.every(study => study.bodies.some(other => other.name === body.name)),
  )
  const places = bodies.map(body => placeRow(studies, body.name, at))
  const others = [
    ...bodies.flatMap(body => highestRow(studies, body.name)),
    ...studies[0].recording.series
      .filter(series => series.kind === "scalar")
      .flatMap(series => scalarRow(studies, series.name, at)),
    endRow(studies),
  ]
  const [most] = [...places].sort((a, b) => b.changes[0] - a.changes[0])
  const size = Math.max(...studies.map(study => reachOf(study)))
  const off =
    most?.order.kind === "order"
      ? {
          body: most.body,
          // the limit lies beyond the finest run by its last change over 2ᵖ - 1; the run at dt lies 4ᵖ times as far
          distance: (most.changes[1] * 4 ** most.order.order) / (2 ** most.order.order - 1),
          share:
            size > 0 ? (most.changes[1] * 4 ** most.order.order) / (2 ** most.order.order - 1) / size : 0,
        }
      : null
  return { at, places, others, off }
}

/** The last recorded instant of the first run that the others have as a row too; else the earliest of the ends. */
function commonInstant(studies: readonly [Study, Study, Study]): number | null {
  const [{ timeline: coarse }, ...finer] = studies
  const has = ({ timeline }: Study, t: number): boolean => {
    const row = timeline.rowAt(t + 1e-9 * Math.max(1, Math.abs(t)))
    return Math.abs(timeline.at(row) - t) <= 1e-9 * Math.max(1, Math.abs(t))
  }
  for (let row = coarse.rows - 1; row >= Math.max(0, coarse.rows - 50); row--) {
    const t = coarse.at(row)
    if (finer.every(study => has(study, t))) return t
  }
  const end = Math.min(...studies.map(({ timeline }) => timeline.end))
  return studies.every(({ timeline }) => timeline.start <= end) ? end : null
}

type Three = readonly [number, number, number]

const bodyNamed = (study: Study, name: string): BodyColumns => study.bodies.find(b => b.name === name)!
const distance = (a: Three, b: Three): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** Rows of equal time differ in the last bits of t: the nearest row is taken, so that nothing is interpolated without need. */
function positionAt(study: Study, name: string, t: number): Three {
  const { timeline, recording } = study
  const { position } = bodyNamed(study, name)
  const row = timeline.rowAt(t + 1e-9 * Math.max(1, Math.abs(t)))
  const close = Math.abs(timeline.at(row) - t) <= 1e-9 * Math.max(1, Math.abs(t))
  const moment = close ? { row, part: 0 } : momentAt(timeline, t)
  return [0, 1, 2].map(k => between(recording, position + k, moment)) as unknown as Three
}

function placeRow(studies: readonly [Study, Study, Study], body: string, t: number) {
  const [a, b, c] = studies.map(study => positionAt(study, body, t)) as [Three, Three, Three]
  const changes = [distance(a, b), distance(b, c)] as const
  const size = Math.max(...studies.map(reachOf))
  return {
    body,
    quantity: "place",
    unit: "m",
    values: [0, distance(a, b), distance(a, c)] as const,
    changes,
    order: orderOf(changes, size),
  }
}

/** How far the motion reaches: what is small is small beside that. */
function reachOf({ extent }: Study): number {
  return extent ? Math.hypot(extent.right - extent.left, extent.top - extent.bottom) : 0
}

function rowOf(quantity: string, unit: string, values: Three): StepRow {
  const changes = [Math.abs(values[0] - values[1]), Math.abs(values[1] - values[2])] as const
  return { quantity, unit, values, changes, order: orderOf(changes, Math.max(...values.map(Math.abs))) }
}

/** Only where a body rises: else its highest point is where it began, or where it ends. */
function highestRow(studies: readonly [Study, Study, Study], body: string): StepRow[] {
  const found = studies.map(study => {
    const { position } = bodyNamed(study, body)
    const { recording } = study
    let [best, row] = [Number.NEGATIVE_INFINITY, 0]
    for (let k = 0; k < recording.rows; k++) {
      const y = valueAt(recording, k, position + 1)
      if (y > best) [best, row] = [y, k]
    }
    return { best, inside: row > 0 && row < recording.rows - 1 }
  })
  if (!found.every(one => one.inside)) return []
  return [rowOf(`highest y of ${body}`, "m", found.map(one => one.best) as unknown as Three)]
}

function scalarRow(studies: readonly [Study, Study, Study], name: string, t: number): StepRow[] {
  const values = studies.map(({ recording, timeline }) => {
    const series = recording.series.find(one => one.name === name && one.kind === "scalar")
    return series
      ? between(recording, series.column, momentAt(timeline, t + 1e-9 * Math.max(1, Math.abs(t))))
      : Number.NaN
  })
  return values.every(Number.isFinite) ? [rowOf(name, "", values as unknown as Three)] : []
}

const endRow = (studies: readonly [Study, Study, Study]): StepRow =>
  rowOf("end of the recording, t", "s", studies.map(({ timeline }) => timeline.end) as unknown as Three)
