/**
 * The dimension of a quantity as one number: the exponents of the seven base quantities of the SI, packed as
 * digits, so that the dimension of a product is a sum and that of a quotient a difference.
 *
 * Exponents are held in sixths (square and cube roots stay exact). Length, mass and time take 9 binary digits each
 * (exponents within ±42), the other four take 6 each (within ±5): 51 in all, below the 53 that a number keeps.
 * `unknownDimension` is NaN, so that whatever is made from an unknown dimension is unknown without a branch.
 */
export type Dimension = number

/** Base quantities in the order of the SI Brochure, section 2.3.1, with length, mass and time first. */
export interface Exponents {
  readonly m: number
  readonly kg: number
  readonly s: number
  readonly A: number
  readonly K: number
  readonly mol: number
  readonly cd: number
}

export const baseUnits = ["m", "kg", "s", "A", "K", "mol", "cd"] as const

const parts = 6
const sizes = [512, 512, 512, 64, 64, 64, 64] as const

/** the dimension of a pure number */
export const dimensionless: Dimension = 0
export const unknownDimension: Dimension = Number.NaN

export const isKnown = (dimension: Dimension): boolean => !Number.isNaN(dimension)

/** Equal, and both known. */
export const sameDimension = (a: Dimension, b: Dimension): boolean => a === b

/** The dimension with these exponents; unknown if one is no whole number of sixths or too large to keep. */
export function dimensionOf(exponents: Partial<Exponents>): Dimension {
  let packed = 0
  let place = 1
  for (const [at, base] of baseUnits.entries()) {
    const exponent = (exponents[base] ?? 0) * parts
    const whole = Math.round(exponent)
    if (Math.abs(exponent - whole) > 1e-9 || !(Math.abs(whole) < sizes[at]! / 2)) return unknownDimension
    packed += whole * place
    place *= sizes[at]!
  }
  return packed
}

/** The lowest digit of a packed dimension, between -size/2 and size/2 - 1. */
const lowest = (packed: number, size: number): number =>
  ((((packed + size / 2) % size) + size) % size) - size / 2

/** The exponents of a known dimension; all zero for an unknown one. */
export function exponentsOf(dimension: Dimension): Exponents {
  const found = { m: 0, kg: 0, s: 0, A: 0, K: 0, mol: 0, cd: 0 }
  let rest = isKnown(dimension) ? dimension : 0
  for (const [at, base] of baseUnits.entries()) {
    const digit = lowest(rest, sizes[at]!)
    found[base] = digit / parts
    rest = (rest - digit) / sizes[at]!
  }
  return found
}

/** a + b, or unknown where a digit of the sum would run over into the next. */
function sum(a: Dimension, b: Dimension): Dimension {
  let left = a
  let right = b
  for (const size of sizes) {
    const l = lowest(left, size)
    const r = lowest(right, size)
    if (Math.abs(l + r) >= size / 2) return unknownDimension
    left = (left - l) / size
    right = (right - r) / size
  }
  return a + b
}

/** The dimension of a product. */
export function times(a: Dimension, b: Dimension): Dimension {
  if (a === 0) return b
  if (b === 0) return a
  return isKnown(a + b) ? sum(a, b) : unknownDimension
}

/** The dimension of a quotient. */
export function per(a: Dimension, b: Dimension): Dimension {
  if (b === 0) return a
  if (a === b) return 0
  return isKnown(a + b) ? sum(a, -b) : unknownDimension
}

/** The dimension of a power; unknown if the exponents that come out are no whole number of sixths. */
export function raised(a: Dimension, exponent: number): Dimension {
  if (a === 0 || exponent === 1) return a
  if (!isKnown(a)) return unknownDimension
  const grown = { ...exponentsOf(a) }
  for (const base of baseUnits) grown[base] *= exponent
  return dimensionOf(grown)
}
