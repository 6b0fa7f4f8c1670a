/** What is drawn of a long series: rows in order, chosen so that no peak is lost. */
export interface Decimated {
  readonly x: Float64Array
  readonly y: Float64Array
}

/**
 * At most four points for each of `buckets` equal stretches of rows: first, least, greatest, last. A peak of a single
 * sample survives, and the line enters and leaves each stretch where the series does. Not-a-number values break the line:
 * a bucket that holds one contributes it once.
 *
 * @param rows count of samples; x and y read one by row
 */
export function decimate(
  rows: number,
  x: (row: number) => number,
  y: (row: number) => number,
  buckets: number,
): Decimated {
  if (rows <= buckets * 4)
    return collect(
      Array.from({ length: rows }, (_, row) => row),
      x,
      y,
    )
  const chosen: number[] = []
  for (let bucket = 0; bucket < buckets; bucket++) {
    const from = Math.floor((bucket * rows) / buckets)
    const to = Math.floor(((bucket + 1) * rows) / buckets)
    let [least, greatest, broken] = [-1, -1, -1]
    let [low, high] = [Infinity, -Infinity]
    for (let row = from; row < to; row++) {
      const value = y(row)
      if (value < low) [low, least] = [value, row]
      if (value > high) [high, greatest] = [value, row]
      if (broken < 0 && !Number.isFinite(value)) broken = row
    }
    const rowsHere = new Set([from, least, greatest, broken, to - 1].filter(row => row >= 0))
    chosen.push(...[...rowsHere].sort((a, b) => a - b))
  }
  return collect(chosen, x, y)
}

function collect(rows: readonly number[], x: (row: number) => number, y: (row: number) => number): Decimated {
  return { x: Float64Array.from(rows, x), y: Float64Array.from(rows, y) }
}
