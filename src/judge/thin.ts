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
  const queue = [worstBetween(0, rows - 1)]
  for (let kept = 2; kept < limit; kept++) {
    let best = 0
    for (let i = 1; i < queue.length; i++) if (queue[i]!.offset > queue[best]!.offset) best = i
    const split = queue[best]
    if (split === undefined || split.row < 0) break
    keep[split.row] = 1
    queue[best] = worstBetween(split.from, split.row)
    queue.push(worstBetween(split.row, split.to))
  }
  const out: number[] = []
  for (let row = 0; row < rows; row++) {
    if (keep[row] === 1) for (let c = 0; c < width; c++) out.push(data[row * width + c]!)
  }
  return { ...recording, rows: out.length / width, data: Float64Array.from(out) }

  function worstBetween(from: number, to: number) {
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
    return { from, to, row, offset: row < 0 ? -1 : offset }
  }
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
