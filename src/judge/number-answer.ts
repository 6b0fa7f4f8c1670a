import { parseUnit } from "../physics/units/index.ts"

export type NumberReading =
  | {
      readonly ok: true
      readonly value: number
      readonly unitKnown: boolean
      readonly figures: Figures
    }
  | { readonly ok: false; readonly why: "empty" | "no number" | "unit" | "wrong quantity" }

/** How many significant figures a number is written with; zeros at the end of a whole number may or may not count. */
export interface Figures {
  readonly least: number
  readonly most: number
}

/** A number as people write it: sign, decimal point or comma, thin spaces between groups, a power of ten. */
const numberForm =
  /^([+\-\u2212]?)(\d+(?:[ \u00a0\u2009\u202f]\d{3})*)?(?:[.,](\d*))?(?:\s*(?:[eE]|[·×x*]\s*10\s*\^?)\s*\(?([+\-\u2212]?\d+|[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)\)?)?\s*(.*)$/su

const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹"

/**
 * Reads the answer to a question for a number, in the question's unit. A unit may follow; any of the same
 * quantity is converted, another quantity is told apart.
 *
 * @param unit the question's unit; "1" for a pure number, where % counts as a hundredth
 */
export function readNumberAnswer(given: string | number | null | undefined, unit: string): NumberReading {
  if (given === null || given === undefined) return { ok: false, why: "empty" }
  const text = String(given).trim()
  if (text === "") return { ok: false, why: "empty" }
  const match = numberForm.exec(text)
  if (match === null || (match[2] === undefined && !match[3])) return { ok: false, why: "no number" }
  const [, sign = "", whole = "0", fraction, power = "0", rest = ""] = match
  const exponent = power
    .replace("\u2212", "-")
    .replace("⁻", "-")
    .replace("⁺", "")
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, digit => String(raised.indexOf(digit)))
  const digits = `${whole.replace(/\D/g, "")}${fraction ? `.${fraction}` : ""}e${exponent}`
  const value = (sign === "" || sign === "+" ? 1 : -1) * Number(digits)
  if (!Number.isFinite(value)) return { ok: false, why: "no number" }
  const figures = figuresOf(whole.replace(/\D/g, ""), fraction)
  if (rest.trim() === "") return { ok: true, value, unitKnown: false, figures }
  const wanted = parseUnit(unit)
  const written = parseUnit(rest.trim())
  if (!written.ok) return { ok: false, why: "unit" }
  if (!wanted.ok || written.unit.dimension !== wanted.unit.dimension)
    return { ok: false, why: "wrong quantity" }
  return { ok: true, value: (value * written.unit.factor) / wanted.unit.factor, unitKnown: true, figures }
}

/**
 * Significant figures as ISO 80000-1:2009, annex B, and common practice count them: leading zeros never, zeros after
 * the decimal sign always. The power of ten does not matter.
 */
function figuresOf(whole: string, fraction: string | undefined): Figures {
  const digits = `${whole}${fraction ?? ""}`.replace(/^0+/, "")
  if (digits === "") return { least: 1, most: Math.max(1, (fraction ?? "").length) }
  const least = fraction === undefined ? digits.replace(/0+$/, "").length : digits.length
  return { least, most: digits.length }
}
