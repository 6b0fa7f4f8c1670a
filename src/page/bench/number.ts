/**
 * Between number and unit, and within a unit: a space that does not break. In the plate's face the word space itself is a
 * fifth of an em, the thin space of good setting; its U+202F is half of that and would close "kg m" to "kgm".
 */
export const thinSpace = "\u00a0"
/** Between groups of digits. */
const groupSpace = "\u202f"
export const trueMinus = "\u2212"

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"

/** Digits after the point that show steps of `step` apart, 0 to 9. */
export function decimalsFor(step: number): number {
  if (!(step > 0) || !Number.isFinite(step)) return 3
  return Math.min(9, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)))
}

/** A number with a fixed count of decimals, a true minus, and no minus before a zero. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return notANumber(value)
  const text = Math.abs(value).toFixed(decimals)
  const negative = value < 0 && Number(text) !== 0
  return (negative ? trueMinus : "") + group(text)
}

/** A number to `digits` significant digits; powers of ten outside 0.001 to 99,999. Trailing zeros stay, as in a measured value. */
export function significant(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return notANumber(value)
  if (value === 0) return "0"
  const size = Math.abs(value)
  const rounded = Number(size.toPrecision(digits))
  const exponent = Math.floor(Math.log10(rounded) + 1e-12)
  if (exponent < -3 || exponent > 4) {
    const mantissa = (rounded / 10 ** exponent).toFixed(digits - 1)
    return `${value < 0 ? trueMinus : ""}${mantissa}${thinSpace}×${thinSpace}10${superscript(exponent)}`
  }
  return fixed(Math.sign(value) * rounded, Math.max(0, digits - 1 - exponent))
}

/** Number and unit with a thin space; a unit of "1" or "" is left out. */
export function withUnit(number: string, unit: string): string {
  return unit === "" || unit === "1" ? number : number + thinSpace + unitText(unit)
}

export function quantity(value: number, unit: string, digits = 3): string {
  return withUnit(significant(value, digits), unit)
}

/** A unit for the page: products joined by thin spaces, powers raised. */
export function unitText(unit: string): string {
  return unit
    .replace(/\^?(-?\d+)/g, (_, power: string) => superscript(Number(power)))
    .replace(/\s*[*·]\s*|\s+/g, thinSpace)
}

/** The power of ten, a multiple of three, to be drawn out of numbers up to `most` on an axis; 0 where they are read as they are. */
export function axisPower(most: number): number {
  const exponent = Math.floor(Math.log10(Math.abs(most)) + 1e-9)
  return Number.isFinite(exponent) && (exponent >= 5 || exponent < -3) ? Math.floor(exponent / 3) * 3 : 0
}

/** "m", or "10⁹ m" with a power drawn out. */
export function poweredUnit(power: number, unit: string): string {
  return power === 0 ? unitText(unit) : withUnit(`10${superscript(power)}`, unit)
}

/** A round step, 1, 2 or 5 times a power of ten, that divides `span` into at most `count` parts. */
export function niceStep(span: number, count: number): number {
  if (!(span > 0) || !Number.isFinite(span)) return 1
  const rough = span / Math.max(1, count)
  const power = 10 ** Math.floor(Math.log10(rough) + 1e-12)
  const lead = rough / power
  const nice = lead <= 1 + 1e-9 ? 1 : lead <= 2 + 1e-9 ? 2 : lead <= 5 + 1e-9 ? 5 : 10
  return nice * power
}

/** The multiples of `step` from `from` to `to`, each the nearest number to its decimal. */
export function multiples(from: number, to: number, step: number): number[] {
  const decimals = Math.min(15, decimalsFor(step) + 3)
  const first = Math.ceil(from / step - 1e-9)
  const last = Math.floor(to / step + 1e-9)
  const out: number[] = []
  for (let k = first; k <= last && out.length < 1000; k++) out.push(Number((k * step).toFixed(decimals)))
  return out
}

function superscript(power: number): string {
  const digits = [...String(Math.abs(power))].map(d => superscripts[Number(d)]).join("")
  return (power < 0 ? "⁻" : "") + digits
}

function group(text: string): string {
  const [whole = "", part] = text.split(".")
  if (whole.length < 5) return text
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, groupSpace)
  return part === undefined ? grouped : `${grouped}.${part}`
}

function notANumber(value: number): string {
  return Number.isNaN(value)
    ? "not a number"
    : value > 0
      ? "beyond all bounds"
      : "beyond all bounds, negative"
}

/** A length in the unit one would say it in. */
export function lengthText(metres: number): string {
  if (metres >= 1e6 || metres < 1e-3) return quantity(metres, "m", 1)
  if (metres >= 1000) return `${significant(metres / 1000, 1)}${thinSpace}km`
  if (metres >= 0.1) return `${Number(metres.toPrecision(1))}${thinSpace}m`
  if (metres >= 0.01) return `${Number((metres * 100).toPrecision(1))}${thinSpace}cm`
  return `${Number((metres * 1000).toPrecision(1))}${thinSpace}mm`
}
