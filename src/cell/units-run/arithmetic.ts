import type { Expression } from "../tree/index.ts"
import type { Machine } from "./machine.ts"
import { bare, type Measure, plain, power, product, pure, quotient, together, unknown } from "./measure.ts"
import { checkCaret, checkComparison, checkSum } from "./problems.ts"
import type { Scope } from "./scope.ts"
import { isQuantity, nothing, type Quantity, scalar, type Value, vector } from "./value.ts"

interface Operation {
  readonly op: string
  readonly from: number
  readonly to: number
  readonly left: Expression
  readonly right: Expression
}

/** An arithmetic operator on two values. What mechanics does not know (a text, a vector by a vector) gives nothing. */
export function arithmetic(m: Machine, scope: Scope, e: Operation, a: Value, b: Value): Value {
  if (!isQuantity(a) || !isQuantity(b)) return joined(e.op, a, b)
  switch (e.op) {
    case "+":
    case "-":
      return sumOf(m, scope, e, a, b)
    case "%":
      if (a.kind !== "scalar" || b.kind !== "scalar") return nothing
      return scalar(a.value % b.value, measureOfSum(m, scope, e, a, b))
    case "*":
      return productOf(a, b)
    case "/": {
      if (b.kind !== "scalar") return nothing
      const measure = quotient(a.measure, b.measure, b.value === 1)
      return a.kind === "scalar"
        ? scalar(a.value / b.value, measure)
        : vector(a.x / b.value, a.y / b.value, a.z / b.value, measure)
    }
    case "**":
      return powerOf(m, e.right, a, b)
    case "^":
      checkCaret(m, e, a, b)
      return nothing
    default:
      return nothing
  }
}

function measureOfSum(m: Machine, scope: Scope, e: Operation, a: Quantity, b: Quantity): Measure {
  const alike = checkSum(m, scope, e, { e: e.left, value: a }, { e: e.right, value: b })
  return alike ? together(a.measure, b.measure) : unknown
}

function sumOf(m: Machine, scope: Scope, e: Operation, a: Quantity, b: Quantity): Value {
  const sign = e.op === "+" ? 1 : -1
  if (a.kind === "scalar" && b.kind === "scalar")
    return scalar(a.value + sign * b.value, measureOfSum(m, scope, e, a, b))
  if (a.kind === "vector" && b.kind === "vector")
    return vector(a.x + sign * b.x, a.y + sign * b.y, a.z + sign * b.z, measureOfSum(m, scope, e, a, b))
  return nothing
}

function productOf(a: Quantity, b: Quantity): Value {
  const isOne = (value: Quantity): boolean => value.kind === "scalar" && value.value === 1
  const measure = product(a.measure, b.measure, isOne(a), isOne(b))
  if (a.kind === "scalar" && b.kind === "scalar") return scalar(a.value * b.value, measure)
  if (a.kind === "scalar" && b.kind === "vector")
    return vector(a.value * b.x, a.value * b.y, a.value * b.z, measure)
  if (a.kind === "vector" && b.kind === "scalar")
    return vector(a.x * b.value, a.y * b.value, a.z * b.value, measure)
  return nothing
}

/** A power; an exponent with a unit makes no sense. */
export function powerOf(m: Machine, exponentSite: Expression, a: Value, b: Value): Value {
  if (a.kind !== "scalar" || b.kind !== "scalar") return nothing
  const value = a.value ** b.value
  if (b.measure.kind === "unit" && b.measure.dimension !== 0) {
    m.report(
      exponentSite.from,
      exponentSite.to,
      "exponent-with-unit",
      `The exponent ${m.program.text.slice(exponentSite.from, exponentSite.to)} has a unit.`,
      "An exponent is a pure number: divide it by a quantity of its own kind first.",
    )
    return scalar(value, unknown)
  }
  const measure = Number.isNaN(b.value) ? unknown : power(a.measure, b.value)
  return scalar(value, measure.kind === "plain" && !Number.isFinite(value) ? bare : measure)
}

/** Texts joined with `+`, and everything that is not known. */
function joined(op: string, a: Value, b: Value): Value {
  if (
    op === "+" &&
    (typeof (a as { value?: unknown }).value === "string" ||
      typeof (b as { value?: unknown }).value === "string")
  )
    return { kind: "plain", value: "" }
  // an unknown side of a sum is taken to be like the known one
  const known = isQuantity(a) ? a : isQuantity(b) ? b : null
  if (
    known &&
    (op === "+" || op === "-") &&
    known.measure.kind === "unit" &&
    (a.kind === "unknown" || b.kind === "unknown")
  )
    return known.kind === "scalar"
      ? scalar(Number.NaN, known.measure)
      : vector(Number.NaN, Number.NaN, Number.NaN, known.measure)
  return nothing
}

const comparisons: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  "<": (a, b) => a < b,
  ">": (a, b) => a > b,
  "<=": (a, b) => a <= b,
  ">=": (a, b) => a >= b,
  "==": (a, b) => a === b,
  "===": (a, b) => a === b,
  "!=": (a, b) => a !== b,
  "!==": (a, b) => a !== b,
}

export const isComparison = (op: string): boolean => Object.hasOwn(comparisons, op)

export function compare(
  m: Machine,
  scope: Scope,
  e: Extract<Expression, { kind: "binary" }>,
  a: Value,
  b: Value,
): Value {
  if (isQuantity(a) && isQuantity(b)) {
    if (a.kind === b.kind) checkComparison(m, scope, e, a, b)
    if (a.kind !== "scalar" || b.kind !== "scalar") return nothing
    return { kind: "plain", value: comparisons[e.op]!(a.value, b.value) }
  }
  if (a.kind === "plain" && b.kind === "plain") {
    const same = a.value === b.value
    return e.op.includes("=") && !e.op.startsWith("<") && !e.op.startsWith(">")
      ? { kind: "plain", value: e.op.startsWith("!") ? !same : same }
      : nothing
  }
  return nothing
}

export function negated(value: Value): Value {
  if (value.kind === "scalar") return scalar(-value.value, value.measure)
  return value.kind === "vector" ? vector(-value.x, -value.y, -value.z, value.measure) : nothing
}

/** Numbers of mathematics under the name Math. */
export function constantOf(name: string): Value {
  const value = (Math as unknown as Record<string, unknown>)[name]
  return typeof value === "number" ? scalar(value, plain) : nothing
}

export const angle = pure
