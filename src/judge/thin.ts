import type { Recording } from "../run/contract.ts"

/** Rows of a packed motion: enough that the cubic between them is off by far less than any tolerance. */
export const packedRows = 400
export const packedSlipRows = 120

/**
 * Keeps at most `limit` rows: the first and last, and of the others those where straight lines between the kept
 * ones would be furthest off, each column against its own span, in the order of how much they matter (the
 * greatest offset first). Extremes, contacts and switches are thereby kept.
 */
export function thin(recording: Recording, limit: number): Recording {
  const { rows, width, data } = recording
  if (rows <= limit) return { ...recording, data: data.slice(0, rows * width) }
  const scales = spans(recording)
  const keep = new Uint8Array(rows)
  keep[0] = 1
  keep[rows - 1] = 1
  const first = worstBetween(data, width, scales, 0, rows - 1, 0)
  const heap = [first]
  let slots = 1
  for (let kept = 2; kept < limit; kept++) {
    const split = heap[0]!
    if (split.row < 0) break
    keep[split.row] = 1
    heap[0] = worstBetween(data, width, scales, split.from, split.row, split.slot)
    sink(heap)
    heap.push(worstBetween(data, width, scales, split.row, split.to, slots++))
    rise(heap)
  }
  const kept = keep.reduce((sum, one) => sum + one, 0)
  const out = new Float64Array(kept * width)
  for (let row = 0, to = 0; row < rows; row++) {
    if (keep[row] === 1) for (let c = 0; c < width; c++) out[to++] = data[row * width + c]!
  }
  return { ...recording, rows: kept, data: out }
}

/** A stretch between two kept rows, and the row in it where the straight line is furthest off; -1 for none. */
interface Stretch {
  readonly from: number
  readonly to: number
  readonly row: number
  readonly offset: number
  /** where it stands in the order of their making: of equal ones the earlier comes first */
  readonly slot: number
}

function worstBetween(
  data: Float64Array,
  width: number,
  scales: Float64Array,
  from: number,
  to: number,
  slot: number,
): Stretch {
  let row = -1
  // A long stretch of straight line still gets a row now and then.
  let offset = 1e-12 * (to - from)
  if (to - from > 1) row = (from + to) >> 1
  const t0 = data[from * width]!
  const dt = data[to * width]! - t0 || 1
  // Long stretches are looked at every so many rows: the greatest offset is broad, and its neighbours follow later.
  const stride = Math.max(1, Math.floor((to - from) / 2000))
  for (let r = from + 1; r < to; r += stride) {
    const s = (data[r * width]! - t0) / dt
    for (let c = 1; c < width; c++) {
      const a = data[from * width + c]!
      const line = a + (data[to * width + c]! - a) * s
      const off = Math.abs(data[r * width + c]! - line) * scales[c]!
      if (off > offset) {
        offset = off
        row = r
      }
    }
  }
  return { from, to, row, offset: row < 0 ? -1 : offset, slot }
}

const before = (a: Stretch, b: Stretch): boolean =>
  a.offset > b.offset || (a.offset === b.offset && a.slot < b.slot)

/** Lets the first of a heap down to its place. */
function sink(heap: Stretch[]): void {
  const item = heap[0]!
  let at = 0
  for (;;) {
    let child = 2 * at + 1
    if (child + 1 < heap.length && before(heap[child + 1]!, heap[child]!)) child++
    if (child >= heap.length || !before(heap[child]!, item)) break
    heap[at] = heap[child]!
    at = child
  }
  heap[at] = item
}

/** Lets the last of a heap up to its place. */
function rise(heap: Stretch[]): void {
  let at = heap.length - 1
  const item = heap[at]!
  while (at > 0) {
    const parent = (at - 1) >> 1
    if (!before(item, heap[parent]!)) break
    heap[at] = heap[parent]!
    at = parent
  }
  heap[at] = item
}

/** One over the span of each column. */
function spans({ rows, width, data }: Recording): Float64Array {
  const out = new Float64Array(width)
  for (let c = 1; c < width; c++) {
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    for (let row = 0; row < rows; row++) {
      const v = data[row * width + c]!
      if (v < low) low = v
      if (v > high) high = v
    }
    out[c] = high > low ? 1 / (high - low) : 0
  }
  return out
}
