/** Narrow no-break space between a number and its unit, so that they stay on one line. */
const gap = "\u202f"
const minus = "\u2212"

/** A number as it is read: a few significant digits, a true minus, no needless zeros. */
export function numberWords(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? "endlessly large" : "not a number"
  const rounded = Number(value.toPrecision(digits))
  const size = Math.abs(rounded)
  const text =
    size !== 0 && (size >= 1e6 || size < 1e-3)
      ? powerOfTen(rounded, digits)
      : String(Number(rounded.toFixed(12)))
  return text.replaceAll("-", minus)
}

function powerOfTen(value: number, digits: number): string {
  const [lead = "0", power = "0"] = value.toExponential(digits - 1).split("e")
  return `${Number(lead)}·10${superscript(Number(power))}`
}

const superscripts: Record<string, string> = Object.fromEntries(
  [..."0123456789-"].map((digit, i) => [digit, [..."⁰¹²³⁴⁵⁶⁷⁸⁹⁻"][i]!]),
)
const superscript = (power: number): string => [...String(power)].map(digit => superscripts[digit]).join("")

export const withUnit = (value: number, unit: string, digits = 3): string => {
  const text = numberWords(value, digits)
  return unit === "" || unit === "1" ? text : `${text}${gap}${unit}`
}

/** A length in the unit that a person would choose for it. */
export function length(metres: number): string {
  const size = Math.abs(metres)
  if (size >= 1e4) return withUnit(metres / 1000, "km")
  if (size >= 1 || size === 0) return withUnit(metres, "m")
  if (size >= 0.01) return withUnit(metres * 100, "cm", 2)
  return withUnit(metres * 1000, "mm", 2)
}

export const seconds = (t: number): string => `t = ${withUnit(t, "s")}`

export const percent = (part: number): string => withUnit(part * 100, "%", 2)

/** How a series is spoken of, and its unit where its name tells it. */
export interface Spoken {
  /** "the position of key" */
  readonly name: string
  readonly unit: string
  /** component asked for, if the path ends in one */
  readonly axis: "x" | "y" | "z" | null
  readonly quantity: "position" | "momentum" | "force" | "other"
}

export function spoken(path: string): Spoken {
  const parts = path.split(".")
  const last = parts[parts.length - 1]!
  const axis = parts.length > 1 && (last === "x" || last === "y" || last === "z") ? last : null
  if (axis !== null) parts.pop()
  const of = axis === null ? "" : `the ${axis} component of `
  const tail = parts[parts.length - 1]!
  const body = parts[0]!
  if (tail === "position" && parts.length > 1)
    return { name: `${of}the position of ${body}`, unit: "m", axis, quantity: "position" }
  if (tail === "momentum" && parts.length > 1)
    return { name: `${of}the momentum of ${body}`, unit: "kg m/s", axis, quantity: "momentum" }
  if (parts.length > 2 && parts[parts.length - 2] === "forces")
    return { name: `${of}the force “${tail}” on ${body}`, unit: "N", axis, quantity: "force" }
  return { name: `${of}${parts.join(".")}`, unit: tail === "energy" ? "J" : "", axis, quantity: "other" }
}

export const amount = (value: number, unit: string): string =>
  unit === "m" ? length(value) : withUnit(value, unit)

/** As a sentence begins; a name of the program such as energyRatio keeps its letters. */
export const capital = (text: string): string =>
  /^[a-z]+[A-Z]/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1)
