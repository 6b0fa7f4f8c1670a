import type { Recording } from "../../run/contract.ts"
import { type MassFound, massOf } from "./mass.ts"
import type { BodyColumns } from "./series.ts"
import type { Timeline } from "./timeline.ts"

type Triple = readonly [number, number, number]

/** What one force did to a body over the whole recording. */
export interface Entry {
  readonly force: string
  /** ∑ F Δt, N s */
  readonly impulse: Triple
  /** ∑ F · (v_old + v_new)/2 Δt, J; null when the recording gives no mass */
  readonly work: number | null
}

/** Where momentum changed without a recorded force to account for it. */
export interface Gap {
  readonly from: number
  readonly to: number
  /** change of momentum less impulses, over that stretch, N s */
  readonly momentum: Triple
  /** change of kinetic energy less work, J; null without a mass */
  readonly energy: number | null
  /** forces that acted meanwhile */
  readonly acting: readonly string[]
}

/** The running account of one body. Everything comes from recorded rows. */
export interface Books {
  readonly body: string
  readonly mass: MassFound
  readonly entries: readonly Entry[]
  readonly change: { readonly momentum: Triple; readonly energy: number | null }
  /** the largest stretch that does not balance; null when every step does */
  readonly gap: Gap | null
  /** a recorded force belongs to the step that ends at its row, or to the one that begins there */
  readonly forceOf: "step before" | "step after"
}

/** A step balances when what is left over is below this part of the largest momentum (times the largest speed, for energy). */
const balanceTolerance = 1e-9

/**
 * Books of a body: each step, Δp against ∑ F Δt, and ΔK against ∑ F · (v_old + v_new)/2 Δt with K = p²/2m.
 * With the average of old and new velocity the second follows from the first exactly at any step; with the new velocity alone
 * each step over-counts by F²Δt²/2m. Null when the body has no recorded momentum or time cannot serve.
 */
export function booksOf(recording: Recording, timeline: Timeline, body: BodyColumns): Books | null {
  if (body.momentum === null || timeline.unit !== "s" || recording.rows < 2) return null
  const mass = massOf(recording, timeline, body)
  const momentum = body.momentum
  const shift = bestShift(recording, timeline, body, momentum)
  const m = mass.kind === "found" ? mass.mass : Number.NaN
  const { data, width, rows } = recording
  const sums = body.forces.map(() => [0, 0, 0, 0])
  const change = [0, 0, 0, 0]
  const tolerance = balanceTolerance * (greatest(recording, momentum) || 1)
  const gaps = gapCollector()
  const left = [0, 0, 0, 0]
  for (let row = 1; row < rows; row++) {
    const step = timeline.at(row) - timeline.at(row - 1)
    const at = row * width
    left.fill(0)
    for (let k = 0; k < 3; k++) {
      const now = data[at + momentum + k] as number
      const old = data[at - width + momentum + k] as number
      const speed = (now + old) / (2 * m)
      left[k] = now - old
      left[3] = (left[3] as number) + (now - old) * speed
      change[k] = (change[k] as number) + (now - old)
      for (const [f, force] of body.forces.entries()) {
        const impulse = (data[at - shift * width + force.column + k] as number) * step
        const sum = sums[f] as number[]
        sum[k] = (sum[k] as number) + impulse
        sum[3] = (sum[3] as number) + impulse * speed
        left[k] = (left[k] as number) - impulse
        left[3] = (left[3] as number) - impulse * speed
      }
    }
    change[3] = kinetic(recording, momentum, row, m) - kinetic(recording, momentum, 0, m)
    const size = Math.hypot(left[0] as number, left[1] as number, left[2] as number)
    gaps.step(row, size > tolerance || Number.isNaN(size), size, left)
  }
  const number = (value: number | undefined) => (Number.isNaN(m) ? null : (value ?? 0))
  const largest = gaps.largest()
  return {
    body: body.name,
    mass,
    entries: body.forces.map((force, f) => ({
      force: force.name,
      impulse: triple(sums[f] ?? []),
      work: number(sums[f]?.[3]),
    })),
    change: { momentum: triple(change), energy: number(change[3]) },
    gap: largest && {
      from: timeline.at(largest.from - 1),
      to: timeline.at(largest.to),
      momentum: triple(largest.left),
      energy: number(largest.left[3]),
      acting: body.forces
        .filter(force => actsBetween(recording, force.column, largest.from - shift, largest.to - shift))
        .map(force => force.name),
    },
    forceOf: shift === 0 ? "step before" : "step after",
  }
}

/** Kinetic energy p²/2m at a row, J. */
export function kinetic(recording: Recording, momentum: number, row: number, mass: number): number {
  const at = row * recording.width + momentum
  const [x = 0, y = 0, z = 0] = recording.data.subarray(at, at + 3)
  return (x * x + y * y + z * z) / (2 * mass)
}

/** 0 when forces belong to the step that ends at their row, 1 when to the step that begins there: what leaves less over. */
function bestShift(
  { data, width, rows }: Recording,
  timeline: Timeline,
  body: BodyColumns,
  momentum: number,
) {
  const left = [0, 0]
  for (let row = 1; row < rows; row++) {
    const step = timeline.at(row) - timeline.at(row - 1)
    const at = row * width
    for (let k = 0; k < 3; k++) {
      const change = (data[at + momentum + k] as number) - (data[at - width + momentum + k] as number)
      let [ending, beginning] = [0, 0]
      for (const force of body.forces) {
        ending += data[at + force.column + k] as number
        beginning += data[at - width + force.column + k] as number
      }
      left[0] = (left[0] as number) + Math.abs(change - ending * step)
      left[1] = (left[1] as number) + Math.abs(change - beginning * step)
    }
  }
  return (left[1] as number) < (left[0] as number) ? 1 : 0
}

function greatest({ data, width, rows }: Recording, column: number): number {
  let most = 0
  for (let row = 0, at = column; row < rows; row++, at += width)
    for (let k = 0; k < 3; k++) most = Math.max(most, Math.abs(data[at + k] as number))
  return most
}

function actsBetween({ data, width }: Recording, column: number, from: number, to: number): boolean {
  for (let row = from; row <= to; row++)
    for (let k = 0; k < 3; k++) if (data[row * width + column + k] !== 0) return true
  return false
}

interface Stretch {
  from: number
  to: number
  size: number
  left: number[]
}

/** Joins neighbouring steps that do not balance into stretches and keeps the largest. */
function gapCollector() {
  let open: Stretch | null = null
  let best: Stretch | null = null
  return {
    step(row: number, off: boolean, size: number, left: readonly number[]) {
      if (!off) {
        open = null
        return
      }
      open ??= { from: row, to: row, size: 0, left: [0, 0, 0, 0] }
      open.to = row
      open.size += size
      for (let k = 0; k < 4; k++) open.left[k] = (open.left[k] as number) + (left[k] as number)
      if (!best || !(open.size <= best.size)) best = open
    },
    largest: (): Stretch | null => best,
  }
}

function triple(values: readonly number[]): Triple {
  return [values[0] ?? 0, values[1] ?? 0, values[2] ?? 0]
}
