/** Below this a sum of squares has lost digits, or all of them: 1e-160 is not nothing, and its square is. */
const leastSum = 1e-280

/**
 * Size of the i-th vector of a row of them: the root of the sum of squares where that neither overflows nor vanishes.
 * (Math.hypot takes many times as long, and is left for those.)
 */
export const sizeAt = (values: ArrayLike<number>, i: number): number => {
  const x = values[3 * i]!
  const y = values[3 * i + 1]!
  const z = values[3 * i + 2]!
  const sum = x * x + y * y + z * z
  return sum > leastSum && sum < Number.POSITIVE_INFINITY ? Math.sqrt(sum) : Math.hypot(x, y, z)
}
