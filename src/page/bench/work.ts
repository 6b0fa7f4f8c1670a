import type { Recording } from "../../run/contract.ts"
import { booksOf } from "./books.ts"
import type { BodyColumns } from "./series.ts"
import type { Timeline } from "./timeline.ts"

/** Work of a body's forces from the first row on, by force and row, J. */
export interface Works {
  readonly byForce: ReadonlyMap<string, Float64Array>
  /** the first row that a step's force is recorded in counts from: 0 step before, 1 step after (books.ts) */
  readonly shift: 0 | 1
}

const kept = new WeakMap<BodyColumns, Works | null>()

/**
 * The running work of each force: ∑ F · (v_old + v_new)/2 Δt with v = p/m, so that together they are the change of p²/2m at any
 * step (books.ts says why). Null where the recording gives no mass. Worked out once, when first asked for.
 */
export function worksOf(recording: Recording, timeline: Timeline, body: BodyColumns): Works | null {
  const known = kept.get(body)
  if (known !== undefined) return known
  const works = workOut(recording, timeline, body)
  kept.set(body, works)
  return works
}

function workOut(recording: Recording, timeline: Timeline, body: BodyColumns): Works | null {
  const books = booksOf(recording, timeline, body)
  if (books?.mass.kind !== "found" || body.momentum === null) return null
  const shift = books.forceOf === "step before" ? 0 : 1
  const { data, width, rows } = recording
  const { momentum } = body
  const half = 1 / (2 * books.mass.mass)
  const byForce = new Map<string, Float64Array>()
  for (const force of body.forces) {
    const sums = new Float64Array(rows)
    for (let row = 1; row < rows; row++) {
      const at = row * width
      const step = timeline.at(row) - timeline.at(row - 1)
      let power = 0
      for (let k = 0; k < 3; k++) {
        const speed =
          ((data[at + momentum + k] as number) + (data[at - width + momentum + k] as number)) * half
        power += (data[at - shift * width + force.column + k] as number) * speed
      }
      sums[row] = (sums[row - 1] as number) + power * step
    }
    byForce.set(force.name, sums)
  }
  return { byForce, shift }
}

/** What a force that acts only for a while gave to the body's motion meanwhile, and took from it, J. */
export interface Push {
  readonly force: string
  /** rows whose steps it acted in, both included */
  readonly from: number
  readonly to: number
  readonly gave: number
  readonly took: number
}

/** The stretches in which forces act, of those that do not act throughout. */
export function pushesOf(recording: Recording, timeline: Timeline, body: BodyColumns): Push[] {
  const works = worksOf(recording, timeline, body)
  if (!works) return []
  return body.forces.flatMap(({ name, column }) => {
    const sums = works.byForce.get(name) as Float64Array
    const acts = (row: number) =>
      [0, 1, 2].some(k => recording.data[(row - works.shift) * recording.width + column + k] !== 0)
    const out: Push[] = []
    let open: { from: number; gave: number; took: number } | null = null
    for (let row = 1; row <= recording.rows; row++) {
      if (row < recording.rows && acts(row)) {
        open ??= { from: row, gave: 0, took: 0 }
        const work = (sums[row] as number) - (sums[row - 1] as number)
        if (work > 0) open.gave += work
        else open.took -= work
      } else if (open) {
        out.push({ force: name, ...open, to: row - 1 })
        open = null
      }
    }
    const [only] = out
    return out.length === 1 && only?.from === 1 && only.to === recording.rows - 1 ? [] : out
  })
}
