import { formatUnit, nameOfDimension } from "../../physics/units/index.ts"
import type { Expression } from "../tree/index.ts"
import type { Measure } from "./measure.ts"

/** A stretch of the program as it is quoted in a message: one line, not too long. */
export function quoted(text: string, e: { readonly from: number; readonly to: number }): string {
  const snippet = text.slice(e.from, e.to).replace(/\s+/g, " ").trim()
  return `“${snippet.length > 48 ? `${snippet.slice(0, 47)}…` : snippet}”`
}

/** Names of quantities that take no article. */
const bareNames =
  /^(a |an |one |energy|momentum$|angular momentum$|mass per|time|power$|pressure$|density$|viscosity$)/

const article = (name: string): string =>
  bareNames.test(name) ? name : /^[aeiou]/.test(name) ? `an ${name}` : `a ${name}`

/** The name of a quantity; a field in N/kg is no acceleration to a reader, although the dimension is the same. */
const nameOf = (measure: Measure, shape: "scalar" | "vector"): string | null =>
  measure.text?.replace(/\s/g, "") === "N/kg" ? "field strength" : nameOfDimension(measure.dimension, shape)

/** "momentum (kg m/s)", "a force (N)", "a pure number", "a quantity in m⁴/s". */
export function described(measure: Measure, shape: "scalar" | "vector"): string {
  if (measure.dimension === 0 && (measure.scale === 1 || Number.isNaN(measure.scale))) return "a pure number"
  const unit = unitOf(measure, shape)
  const name = nameOf(measure, shape)
  if (measure.dimension === 0) return `an angle or ratio in ${unit}`
  return name === null ? `a quantity in ${unit}` : `${article(name)} (${unit})`
}

/** "a momentum" without its unit; for what is wanted. */
export function kindOf(measure: Measure, shape: "scalar" | "vector"): string {
  const name = nameOf(measure, shape)
  return name === null ? `a quantity in ${unitOf(measure, shape)}` : article(name)
}

/** The unit text of a measure: as it was given, or in the customary form. */
export function unitOf(measure: Measure, shape: "scalar" | "vector"): string {
  if (measure.text !== null) return prettyUnit(measure.text)
  const unit = formatUnit(measure.dimension, shape)
  return measure.scale === 1 || Number.isNaN(measure.scale)
    ? unit
    : `${Number(measure.scale.toPrecision(6))} ${unit}`
}

const superscripts: Readonly<Record<string, string>> = { "-": "⁻", "0": "⁰", "1": "¹", "2": "²", "3": "³", "4": "⁴", "5": "⁵", "6": "⁶", "7": "⁷", "8": "⁸", "9": "⁹" } // biome-ignore format: one row

/** A unit text with its powers raised: `kg m^2/s` as kg m²/s. */
export const prettyUnit = (text: string): string =>
  text.replace(/(?:\^\s*|(?<=\p{L}))(-?\d+)/gu, (_, digits: string) =>
    [...digits].map(digit => superscripts[digit]).join(""),
  )

/** Whether a name or a division by it stands anywhere in an expression. */
export function mentions(e: Expression, wanted: (e: Expression) => boolean): boolean {
  if (wanted(e)) return true
  switch (e.kind) {
    case "member":
      return mentions(e.object, wanted)
    case "index":
      return mentions(e.object, wanted) || mentions(e.index, wanted)
    case "unary":
      return mentions(e.argument, wanted)
    case "binary":
      return mentions(e.left, wanted) || mentions(e.right, wanted)
    case "conditional":
      return mentions(e.yes, wanted) || mentions(e.no, wanted)
    case "call":
      return (
        e.args.some(one => mentions(one, wanted)) ||
        (e.callee.kind === "member" && mentions(e.callee.object, wanted))
      )
    case "as":
      return mentions(e.value, wanted)
    default:
      return false
  }
}
