/**
 * Numbers of double length, as an unevaluated sum high + low with |low| ≤ half a unit of high.
 * T. J. Dekker, "A floating-point technique for extending the available precision", Numer. Math. 18, 224 (1971).
 */
export interface Double {
  readonly high: number
  readonly low: number
}

/** The exact sum of two numbers. */
export function twoSum(a: number, b: number): Double {
  const high = a + b
  const part = high - a
  return { high, low: a - (high - part) + (b - part) }
}

/** 2^27 + 1 splits a number in two halves whose products are exact (Veltkamp). */
const splitter = 134217729

/** The exact product of two numbers below 10^150. */
export function twoProduct(a: number, b: number): Double {
  const high = a * b
  const ca = splitter * a
  const a1 = ca - (ca - a)
  const a2 = a - a1
  const cb = splitter * b
  const b1 = cb - (cb - b)
  const b2 = b - b1
  return { high, low: a1 * b1 - high + a1 * b2 + a2 * b1 + a2 * b2 }
}

export function add(a: Double, b: Double): Double {
  const sum = twoSum(a.high, b.high)
  return twoSum(sum.high, sum.low + (a.low + b.low))
}

export function divide(a: Double, b: Double): Double {
  const quotient = a.high / b.high
  const product = twoProduct(quotient, b.high)
  const rest = a.high - product.high - product.low + (a.low - quotient * b.low)
  return twoSum(quotient, rest / b.high)
}
