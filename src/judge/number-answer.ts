import { parseUnit } from "../physics/units/index.ts"

export type NumberReading =
  | { readonly ok: true; readonly value: number; readonly unitKnown: boolean }
  | { readonly ok: false; readonly why: "empty" | "no number" | "unit" | "wrong quantity" }

/** A number as people write it: sign, decimal point or comma, thin spaces between groups, a power of ten. */
const numberForm =
  /^([+\-\u2212]?)(\d+(?:[ \u00a0\u2009\u202f]\d{3})*)?(?:[.,](\d+))?(?:\s*(?:[eE]|[·×x*]\s*10\s*\^?)\s*\(?([+\-\u2212]?\d+|[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)\)?)?\s*(.*)$/su

const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹"

/**
 * Reads the answer to a question for a number, in the question's unit. A unit may follow; any of the same
 * quantity is converted, another quantity is told apart.
 *
 * @param unit the question's unit; "1" for a pure number, where % counts as a hundredth
 */
export function readNumberAnswer(given: string | number | null | undefined, unit: string): NumberReading {
  if (given === null || given === undefined) return { ok: false, why: "empty" }
  if (typeof given === "number") return { ok: true, value: given, unitKnown: false }
  const text = given.trim()
  if (text === "") return { ok: false, why: "empty" }
  const match = numberForm.exec(text)
  if (match === null || (match[2] === undefined && match[3] === undefined))
    return { ok: false, why: "no number" }
  const [, sign = "", whole = "0", fraction = "", power = "0", rest = ""] = match
  const exponent = power
    .replace("\u2212", "-")
    .replace("⁻", "-")
    .replace("⁺", "")
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, digit => String(raised.indexOf(digit)))
  const digits = `${whole.replace(/\D/g, "")}${fraction === "" ? "" : `.${fraction}`}e${exponent}`
  const value = (sign === "" || sign === "+" ? 1 : -1) * Number(digits)
  if (!Number.isFinite(value)) return { ok: false, why: "no number" }
  if (rest.trim() === "") return { ok: true, value, unitKnown: false }
  const wanted = parseUnit(unit)
  const written = parseUnit(rest.trim())
  if (!written.ok) return { ok: false, why: "unit" }
  if (!wanted.ok || written.unit.dimension !== wanted.unit.dimension)
    return { ok: false, why: "wrong quantity" }
  return { ok: true, value: (value * written.unit.factor) / wanted.unit.factor, unitKnown: true }
}
