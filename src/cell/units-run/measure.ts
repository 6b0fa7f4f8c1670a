import {
  type Dimension,
  isKnown,
  parseUnit,
  per,
  raised,
  sameDimension,
  times,
  unknownDimension,
} from "../../physics/units/index.ts"

/**
 * What is known of the unit of a value.
 *   unit: has this dimension; one of the number is `scale` in coherent SI units (NaN: not known)
 *   plain: a number that stands for itself in a formula, such as 2, 1/2, π
 *   bare: a number, or vector of numbers, written without a unit; it may stand for any quantity
 *   unknown: nothing is known
 */
export interface Measure {
  readonly kind: "unit" | "plain" | "bare" | "unknown"
  readonly dimension: Dimension
  readonly scale: number
  /** the unit as an annotation or parameter gives it; null once it was computed with */
  readonly text: string | null
  /** computed with a number that may have stood for a quantity of its own: good for a label, not for an alarm */
  readonly doubt: Doubt
}

/** "factor": a factor 2 or 1/2, which belongs to a formula as soon as it has two further factors with units */
export type Doubt = "none" | "factor" | "number"

const of = (kind: Measure["kind"], dimension: Dimension, scale = 1, doubt: Doubt = "none"): Measure => ({
  kind,
  dimension,
  scale,
  text: null,
  doubt,
})

/** 0, 1, π, 1/2 written as a fraction, a direction such as vec3(0, -1, 0) */
export const plain: Measure = of("plain", 0)
export const plainFactor: Measure = of("plain", 0, 1, "factor")
export const plainNumber: Measure = of("plain", 0, 1, "number")
export const bare: Measure = of("bare", unknownDimension)
export const unknown: Measure = of("unknown", unknownDimension, Number.NaN)
/** known to be without unit, such as an angle in radians */
export const pure: Measure = of("unit", 0)

const unit = (dimension: Dimension, scale: number, doubt: Doubt): Measure =>
  isKnown(dimension) ? of("unit", dimension, scale, doubt) : unknown

/** Doubt of a product: a factor 2 among two quantities with units is one of the formula. */
const doubtOf = (a: Measure, b: Measure): Doubt => {
  if (a.doubt === "number" || b.doubt === "number") return "number"
  if (a.kind === "unit" && b.kind === "unit" && a.dimension !== 0 && b.dimension !== 0) return "none"
  return a.doubt === "factor" || b.doubt === "factor" ? "factor" : "none"
}

const cache = new Map<string, Measure | null>()

/** The measure of a unit text; null if it is none. */
export function measureOf(text: string): Measure | null {
  const kept = cache.get(text)
  if (kept !== undefined) return kept
  const read = parseUnit(text)
  const measure: Measure | null = read.ok
    ? {
        kind: "unit",
        dimension: read.unit.dimension,
        scale: read.unit.factor,
        text: read.unit.text,
        doubt: "none",
      }
    : null
  if (cache.size < 1000) cache.set(text, measure)
  return measure
}

const sameScale = (a: number, b: number): boolean =>
  Number.isNaN(a) || Number.isNaN(b) || Math.abs(a - b) <= 1e-9 * Math.abs(a)

/** How two measures that should be alike differ; null if they do not, or if that cannot be told. */
export function clash(a: Measure, b: Measure): "dimension" | "scale" | null {
  if (a.kind !== "unit" || b.kind !== "unit" || a.doubt !== "none" || b.doubt !== "none") return null
  if (!sameDimension(a.dimension, b.dimension)) return "dimension"
  return sameScale(a.scale, b.scale) ? null : "scale"
}

/** The measure of a sum, difference, least or greatest of two, when they are alike. */
export function together(a: Measure, b: Measure): Measure {
  if (a.kind === "unit" && b.kind === "unit") return Number.isNaN(a.scale) || a.doubt !== "none" ? b : a
  if (a.kind === "unit") return a
  if (b.kind === "unit") return b
  if (a.kind === "unknown" || b.kind === "unknown") return unknown
  if (a.kind === "plain" && b.kind === "plain")
    return a.doubt === "none" && b.doubt === "none" ? plain : plainNumber
  return bare
}

/** What a number without unit does to a unit: to one that is no coherent SI unit it may be a conversion. */
function scaledBy(a: Measure, number: Measure, isOne: boolean): Measure {
  const scale = a.scale === 1 || isOne ? a.scale : Number.NaN
  return unit(a.dimension, scale, doubtOf(a, number))
}

const isPure = (a: Measure): boolean =>
  a.kind === "plain" || (a.kind === "unit" && a.dimension === 0 && a.scale === 1)

/** The measure of a product; a factor that is just 1 converts nothing. */
export function product(a: Measure, b: Measure, aIsOne: boolean, bIsOne: boolean): Measure {
  if (a.kind === "plain" && b.kind === "plain")
    return a.doubt === "none" ? b : b.doubt === "none" ? a : plainNumber
  if (a.kind === "unit" && isPure(b)) return scaledBy(a, b, bIsOne)
  if (b.kind === "unit" && isPure(a)) return scaledBy(b, a, aIsOne)
  if (a.kind === "unit" && b.kind === "unit")
    return unit(times(a.dimension, b.dimension), a.scale * b.scale, doubtOf(a, b))
  if (a.kind === "plain") return b
  if (b.kind === "plain") return a
  return a.kind === "bare" && b.kind === "bare" ? bare : unknown
}

/** The measure of a quotient. */
export function quotient(a: Measure, b: Measure, bIsOne: boolean): Measure {
  // a fraction of whole numbers belongs to a formula: 1/2, 4/3
  if (a.kind === "plain" && b.kind === "plain") return plain
  if (a.kind === "unit" && isPure(b)) return scaledBy(a, b, bIsOne)
  if (b.kind === "unit" && (a.kind === "plain" || a.kind === "unit"))
    return unit(
      a.kind === "plain" ? raised(b.dimension, -1) : per(a.dimension, b.dimension),
      (a.kind === "plain" ? 1 : a.scale) / b.scale,
      doubtOf(a, b),
    )
  if (b.kind === "plain") return a
  return (a.kind === "bare" || a.kind === "plain") && b.kind === "bare" ? bare : unknown
}

/** The measure of a power with this exponent. */
export function power(a: Measure, exponent: number): Measure {
  if (a.kind !== "unit") return a
  return unit(raised(a.dimension, exponent), a.scale ** exponent, a.doubt)
}

/** What a number stands for that is written in a formula: itself, or perhaps a quantity without its unit. */
export function literal(value: number): Measure {
  if (value === 0 || value === 1) return plain
  if (value === 2 || value === 0.5) return plainFactor
  return Number.isInteger(value) && value <= 32 ? plainNumber : bare
}
