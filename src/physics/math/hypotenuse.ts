import { powerOfTwo } from "./bits.ts"
import { twoProduct } from "./double.ts"

/**
 * The root of the sum of squares. The largest argument is brought near 1, so that nothing overflows, and the
 * squares are summed in double length, so that only the root rounds.
 */
export function hypot(...values: number[]): number {
  let largest = 0
  let unknown = false
  for (const value of values) {
    const size = Math.abs(value)
    if (size === Number.POSITIVE_INFINITY) return size
    if (Number.isNaN(size)) unknown = true
    else if (size > largest) largest = size
  }
  if (unknown) return Number.NaN
  if (largest === 0) return 0
  const scale = largest > 1e150 ? powerOfTwo(-600) : largest < 1e-100 ? powerOfTwo(600) : 1
  let high = 0
  let low = 0
  for (const value of values) {
    const square = twoProduct(value * scale, value * scale)
    const sum = high + square.high
    const part = sum - high
    low += high - (sum - part) + (square.high - part) + square.low
    high = sum
  }
  return Math.sqrt(high + low) / scale
}
