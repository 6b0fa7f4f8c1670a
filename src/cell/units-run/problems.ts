import { unitProblemCodes } from "../../physics/units/index.ts"
import type { Expression } from "../tree/index.ts"
import { likelyCause } from "./guess.ts"
import type { Machine } from "./machine.ts"
import { clash, type Measure } from "./measure.ts"
import type { Scope } from "./scope.ts"
import type { Quantity } from "./value.ts"
import { described, kindOf, quoted, unitOf } from "./words.ts"

/** Codes of the problems that the units run finds; each has a page in public/problems. */
export const unitsProblemCodes = [
  ...unitProblemCodes,
  "unlike-sum",
  "unlike-comparison",
  "unlike-parts",
  "wrong-quantity",
  "wrong-unit",
  "other-unit",
  "number-for-vector",
  "exponent-with-unit",
  "caret-no-power",
] as const

const cause = (
  m: Machine,
  scope: Scope,
  of: Expression,
  has: Measure,
  shape: "scalar" | "vector",
  should: Measure,
  onlyPlain = false,
): string | null =>
  likelyCause({
    text: m.program.text,
    timeStep: m.program.timeStep,
    scope,
    of,
    has,
    shape,
    should,
    onlyPlain,
  })

const signs: Readonly<Record<string, readonly [verb: string, joint: string]>> = {
  "+": ["adds", "and"],
  "-": ["subtracts", "minus"],
  "%": ["takes the remainder of", "by"],
}

/** Both sides of a sum, difference or remainder. Says so if they are unlike. */
export function checkSum(
  m: Machine,
  scope: Scope,
  e: { readonly from: number; readonly to: number; readonly op: string },
  left: { readonly e: Expression; readonly value: Quantity },
  right: { readonly e: Expression; readonly value: Quantity },
): boolean {
  const how = clash(left.value.measure, right.value.measure)
  if (how === null) return true
  const [a, b] = [left.value.measure, right.value.measure]
  const text = m.program.text
  const l = described(a, left.value.kind)
  const r = described(b, right.value.kind)
  const [verb, joint] = signs[e.op] ?? ["joins", "and"]
  const seen = `${quoted(text, e)} ${verb} ${l} ${joint} ${r}.`
  if (how === "scale") {
    otherUnit(m, e, seen)
    return false
  }
  // what the result is for tells which side is wrong; otherwise the right one is taken to be
  const wanted = m.wanted && "measure" in m.wanted ? m.wanted.measure.dimension : Number.NaN
  const leftWrong = wanted === b.dimension && wanted !== a.dimension
  const guess = leftWrong
    ? cause(m, scope, left.e, a, left.value.kind, b)
    : cause(m, scope, right.e, b, right.value.kind, a)
  m.report(
    e.from,
    e.to,
    "unlike-sum",
    seen,
    `Only like quantities add. ${guess ?? "Check what each side stands for, and in which unit."}`,
  )
  return false
}

/** The sign ^ where a power is meant: it would work on bits, without a word. Between counts it is left alone. */
export function checkCaret(
  m: Machine,
  e: { readonly from: number; readonly to: number; readonly right: Expression },
  left: Quantity,
  right: Quantity,
): void {
  const text = m.program.text
  const isCount = (of: Quantity): boolean =>
    of.kind === "scalar" &&
    Number.isInteger(of.value) &&
    (of.measure.kind !== "unit" || of.measure.dimension === 0)
  const exponent = text.slice(e.right.from, e.right.to)
  if (isCount(left) && isCount(right) && !/^[23]$/.test(exponent)) return
  m.report(
    e.from,
    e.to,
    "caret-no-power",
    `The sign ^ makes no power here; it works on the bits of whole numbers: ${quoted(text, e)}.`,
    "For a power write **, as in t ** 2, or the product t * t.",
  )
}

/** Both sides of a comparison. */
export function checkComparison(
  m: Machine,
  scope: Scope,
  e: Extract<Expression, { kind: "binary" }>,
  left: Quantity,
  right: Quantity,
): void {
  const how = clash(left.measure, right.measure)
  if (how === null) return
  const seen = `${quoted(m.program.text, e)} compares ${described(left.measure, left.kind)} with ${described(right.measure, right.kind)}.`
  if (how === "scale") otherUnit(m, e, seen)
  else
    m.report(
      e.from,
      e.to,
      "unlike-comparison",
      seen,
      `Only like quantities can be compared. ${
        cause(m, scope, e.right, right.measure, right.kind, left.measure, true) ??
        cause(m, scope, e.left, left.measure, left.kind, right.measure, true) ??
        "Check which quantity each side should be."
      }`,
    )
}

function otherUnit(m: Machine, e: { readonly from: number; readonly to: number }, seen: string): void {
  m.report(
    e.from,
    e.to,
    "other-unit",
    seen,
    "Both are the same kind of quantity in different units: convert one of them first, best to SI units.",
  )
}

/** A value for a name, field or result that is declared with a unit. */
export function checkAssignment(
  m: Machine,
  scope: Scope,
  e: Expression,
  value: Quantity,
  declared: Measure,
  shape: "scalar" | "vector",
  name: string,
): void {
  const how = clash(value.measure, declared)
  if (how === null) return
  const seen = `${name} is declared as ${described(declared, shape)}; ${quoted(m.program.text, e)} is ${described(value.measure, value.kind)}.`
  if (how === "scale") otherUnit(m, e, seen)
  else
    m.report(
      e.from,
      e.to,
      "wrong-unit",
      seen,
      cause(m, scope, e, value.measure, value.kind, declared) ??
        `Make the right side ${kindOf(declared, shape)}, or correct the unit in the declaration.`,
    )
}

/** A number where a vector is declared, or the other way round. */
export function reportShape(
  m: Machine,
  e: Expression,
  value: Quantity,
  shape: "scalar" | "vector",
  name: string,
): void {
  const wantsVector = shape === "vector"
  m.report(
    e.from,
    e.to,
    "number-for-vector",
    `${name} is declared as ${wantsVector ? "a vector" : "a number"}; ${quoted(m.program.text, e)} is ${
      value.kind === "vector" ? "a vector" : "a number"
    }.`,
    wantsVector
      ? "Multiply the number by a direction, such as unit(d) or vec3(1, 0, 0)."
      : "Take a component, such as .x, or the magnitude.",
  )
}

/** An argument of a function. */
export function checkArgument(
  m: Machine,
  scope: Scope,
  e: Expression,
  value: Quantity,
  takes: Measure,
  shape: "scalar" | "vector",
  fn: string,
  parameter: string,
): boolean {
  const how = clash(value.measure, takes)
  if (how === null) return true
  const angle = takes.dimension === 0 && takes.text === "rad"
  const wanted = angle ? "an angle in radians" : described(takes, shape)
  const seen = `${fn} takes ${wanted}${parameter && !angle ? `, as ${parameter}` : ""}; ${quoted(m.program.text, e)} is ${described(value.measure, value.kind)}.`
  if (how === "scale")
    m.report(
      e.from,
      e.to,
      "other-unit",
      seen,
      angle && unitOf(value.measure, "scalar") === "°"
        ? `Convert degrees to radians first: multiply by Math.PI / 180.`
        : "Convert it to SI units first.",
    )
  else
    m.report(
      e.from,
      e.to,
      "wrong-quantity",
      seen,
      cause(m, scope, e, value.measure, value.kind, takes, true) ??
        `Give it ${angle ? "an angle, or a pure number" : kindOf(takes, shape)}.`,
    )
  return false
}

/** Parts of one vector, or arguments of one function, that must be alike and are not. */
export function reportParts(m: Machine, e: Expression, fn: string, a: Quantity, b: Quantity): void {
  const how = clash(a.measure, b.measure)
  const seen = `${fn} gets ${described(a.measure, a.kind)} and ${described(b.measure, b.kind)}.`
  if (how === "scale") otherUnit(m, e, seen)
  else
    m.report(
      e.from,
      e.to,
      "unlike-parts",
      seen,
      fn === "vec3"
        ? "All three components of a vector have the same unit."
        : "All its values must be of one kind.",
    )
}
