import { type LineValues, lineKinds } from "../../run/lines/contract.ts"
import { fixed, poweredUnit, significant, thinSpace, withUnit } from "../bench/number.ts"

/** Digits of the largest component. */
const digits = 4

/** A value of a line: a number, the parts of a vector, or yes and no. */
export type LineValue = number | readonly [number, number, number] | boolean

/** What a line set at a row; null where it set nothing then, or nothing that can be shown. */
export function lineValue(values: LineValues, row: number, place: number): LineValue | null {
  if (row < values.from || row >= values.from + values.rows) return null
  const at = (row - values.from) * values.sites.length + place
  const number = (k: number): number => values.numbers[3 * at + k] as number
  switch (values.kinds[at]) {
    case lineKinds.number:
      return number(0)
    case lineKinds.vector:
      return [number(0), number(1), number(2)]
    case lineKinds.true:
      return true
    case lineKinds.false:
      return false
    default:
      return null
  }
}

/**
 * "0.4300 m", "(−800.0, 0, 0) kg m/s", "12", "true": as it stands beside a line.
 *
 * @param steady the line is passed once: short decimals stay as they were typed. Where values follow each other they keep
 * their digits, so that nothing jumps
 */
export function lineFigure(value: LineValue, unit: string, steady: boolean): string {
  if (typeof value === "boolean") return String(value)
  const parts = typeof value === "number" ? [value] : value
  const { texts, power } =
    steady && parts.every(isShort) ? { texts: parts.map(short), power: 0 } : toOnePlace(parts)
  const joined = typeof value === "number" ? (texts[0] as string) : `(${texts.join(", ")})`
  return withUnit(power === 0 ? joined : `${joined}${thinSpace}×${thinSpace}${poweredUnit(power, "")}`, unit)
}

const isShort = (part: number): boolean =>
  Number(part.toPrecision(digits)) === part &&
  (part === 0 || (Math.abs(part) >= 1e-3 && Math.abs(part) < 1e5))
const short = (part: number): string => fixed(part, String(Math.abs(part)).split(".")[1]?.length ?? 0)

/**
 * All parts to the same place, which the largest sets, so that they compare by eye. A part that is zero is written 0; one
 * that is only too small to show is written 0.000. Whole numbers stay whole: counters are not measured.
 */
function toOnePlace(parts: readonly number[]): { texts: readonly string[]; power: number } {
  const most = Math.max(...parts.map(Math.abs))
  if (!Number.isFinite(most)) return { texts: parts.map(part => significant(part, digits)), power: 0 }
  const exponent = most === 0 ? 0 : Math.floor(Math.log10(Number(most.toPrecision(digits))) + 1e-12)
  const power = exponent > 4 || exponent < -3 ? exponent : 0
  const whole = power === 0 && parts.every(Number.isInteger)
  const places = whole ? 0 : Math.max(0, digits - 1 - (power === 0 ? exponent : 0))
  return { texts: parts.map(part => (part === 0 ? "0" : fixed(part / 10 ** power, places))), power }
}
