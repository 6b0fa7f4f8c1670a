import { powerOfTwo } from "./bits.ts"

/** 2^27 + 1 splits a number in two halves whose products are exact (Veltkamp). */
const splitter = 134217729

/**
 * The root of the sum of squares. The largest argument is brought near 1, so that nothing overflows, and the
 * squares are summed in double length (T. J. Dekker, Numer. Math. 18, 224 (1971)), so that only the root rounds.
 */
export function hypot(...values: number[]): number {
  let largest = 0
  let unknown = false
  for (const value of values) {
    const size = Math.abs(value)
    if (size === Number.POSITIVE_INFINITY) return size
    if (size !== size) unknown = true
    else if (size > largest) largest = size
  }
  if (unknown) return Number.NaN
  if (largest === 0) return 0
  const scale = largest > 1e150 ? powerOfTwo(-600) : largest < 1e-100 ? powerOfTwo(600) : 1
  let high = 0
  let low = 0
  for (const value of values) {
    const x = Math.abs(value) * scale
    const square = x * x
    const c = splitter * x
    const head = c - (c - x)
    const tail = x - head
    const squareLow = head * head - square + 2 * head * tail + tail * tail
    const sum = high + square
    const part = sum - high
    low += high - (sum - part) + (square - part) + squareLow
    high = sum
  }
  const root = Math.sqrt(high + low)
  return root / scale
}
