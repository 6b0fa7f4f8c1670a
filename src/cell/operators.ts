import { math } from "../physics/math.ts"
import { Vec3 } from "../physics/vec3.ts"
import { OperatorError } from "./operator-error.ts"

/*
 * The operators of the cell language. Two numbers come first and cost one look at each; then two vectors, or a
 * number and a vector; whatever is left keeps the meaning JavaScript gives it, or is an error in words when one
 * side is a vector. Each operand is handed over evaluated, so order and count of evaluations are the program's own.
 *
 * `a + b` of mixed kinds is left to JavaScript on purpose: the casts below only quiet the type checker.
 */

/** a + b: sum of numbers or of vectors; texts are joined. */
export function add(a: unknown, b: unknown): unknown {
  return typeof a === "number" && typeof b === "number" ? a + b : addOther(a, b)
}

/** a − b of numbers or of vectors. */
export function subtract(a: unknown, b: unknown): unknown {
  return typeof a === "number" && typeof b === "number" ? a - b : subtractOther(a, b)
}

/** a b of numbers, or a number times a vector. */
export function multiply(a: unknown, b: unknown): unknown {
  return typeof a === "number" && typeof b === "number" ? a * b : multiplyOther(a, b)
}

/** a / b of numbers, or a vector divided by a number other than zero. */
export function divide(a: unknown, b: unknown): unknown {
  return typeof a === "number" && typeof b === "number" ? a / b : divideOther(a, b)
}

/** −a of a number or a vector. */
export function negate(a: unknown): unknown {
  if (typeof a === "number") return -a
  return a instanceof Vec3 ? new Vec3(-a.x, -a.y, -a.z) : -(a as number)
}

/** a to the power b, for numbers; with the bits of Math.pow of a cell, not the engine's, and a square as a product. */
export function power(a: unknown, b: unknown): unknown {
  if (typeof a === "number" && typeof b === "number") return b === 2 ? a * a : math.pow(a, b)
  if (a instanceof Vec3 || b instanceof Vec3) throw noPower(a instanceof Vec3)
  return (a as number) ** (b as number)
}

/** For vectors that are kept as three numbers and put together where they leave. */
export { Vec3 }

/** The square root is one of the few functions that are exact, and so the same, in every engine. */
export const squareRoot: (x: number) => number = Math.sqrt

/** What is about to be written to: vectors never change, anything else is handed through. */
export function mutable(object: unknown, name?: string): unknown {
  if (!(object instanceof Vec3)) return object
  const made = ["x", "y", "z"].map(c => (c === name ? "…" : `v.${c}`)).join(", ")
  throw new OperatorError(
    "vector-component-set",
    name === undefined
      ? "A vector never changes once it is made."
      : `A vector never changes, so its ${name} cannot be set.`,
    `Make a new vector and give it the name: v = vec3(${name === undefined ? "x, y, z" : made}).`,
  )
}

/** Stands where a vector was proven but the divisor is zero. */
export function divideByZero(a: unknown): never {
  throw new OperatorError(
    "vector-over-zero",
    `The vector ${String(a)} was divided by zero.`,
    "Check the number below the fraction bar: a mass or a distance must not be zero here.",
  )
}

function addOther(a: unknown, b: unknown): unknown {
  if (a instanceof Vec3) {
    if (b instanceof Vec3) return new Vec3(a.x + b.x, a.y + b.y, a.z + b.z)
    if (typeof b !== "string") throw mixed("added", "+", a, b)
  } else if (b instanceof Vec3 && typeof a !== "string") throw mixed("added", "+", a, b)
  return (joined(a, b) as string) + (joined(b, a) as string)
}

/** A vector beside a text joins as text; all else is left as it is. */
function joined(value: unknown, other: unknown): unknown {
  return value instanceof Vec3 && typeof other === "string" ? value.toString() : value
}

function subtractOther(a: unknown, b: unknown): unknown {
  if (a instanceof Vec3) {
    if (b instanceof Vec3) return new Vec3(a.x - b.x, a.y - b.y, a.z - b.z)
    throw mixed("subtracted", "-", a, b)
  }
  if (b instanceof Vec3) throw mixed("subtracted", "-", a, b)
  return (a as number) - (b as number)
}

function multiplyOther(a: unknown, b: unknown): unknown {
  if (a instanceof Vec3) {
    if (typeof b === "number") return new Vec3(a.x * b, a.y * b, a.z * b)
    if (b instanceof Vec3) {
      throw new OperatorError(
        "vector-times-vector",
        `A vector times a vector can mean two things: ${shown(a)} * ${shown(b)}.`,
        "Write dot(a, b) for the scalar product, a number, or cross(a, b) for the vector product, a vector.",
      )
    }
    throw other("multiplied by", a, b)
  }
  if (b instanceof Vec3) {
    if (typeof a === "number") return new Vec3(a * b.x, a * b.y, a * b.z)
    throw other("multiplied by", b, a)
  }
  return (a as number) * (b as number)
}

function divideOther(a: unknown, b: unknown): unknown {
  if (a instanceof Vec3) {
    if (typeof b === "number") return b === 0 ? divideByZero(a) : new Vec3(a.x / b, a.y / b, a.z / b)
    if (b instanceof Vec3) {
      throw new OperatorError(
        "vector-over-vector",
        `A vector cannot be divided by a vector: ${shown(a)} / ${shown(b)}.`,
        "Divide by a number: the length magnitude(b), or one component such as b.x.",
      )
    }
    throw other("divided by", a, b)
  }
  if (b instanceof Vec3) {
    throw new OperatorError(
      "number-over-vector",
      `${sentence(shown(a))} cannot be divided by the vector ${shown(b)}.`,
      "Divide by a number: the length magnitude(b), or one component such as b.x.",
    )
  }
  return (a as number) / (b as number)
}

function mixed(verb: string, sign: string, a: unknown, b: unknown): OperatorError {
  const vector = a instanceof Vec3 ? a : b
  const rest = a instanceof Vec3 ? b : a
  if (typeof rest !== "number") return other(verb === "added" ? "added to" : "subtracted with", vector, rest)
  return new OperatorError(
    "number-and-vector",
    `A number and a vector cannot be ${verb}: ${shown(a)} ${sign} ${shown(b)}.`,
    sign === "+"
      ? "Add a vector to a vector: multiply the number by a direction, or take one component such as v.x."
      : "Subtract a vector from a vector: multiply the number by a direction, or take one component such as v.x.",
  )
}

function other(verb: string, vector: unknown, rest: unknown): OperatorError {
  return new OperatorError(
    "vector-and-other",
    `The vector ${shown(vector)} cannot be ${verb} ${kind(rest)}.`,
    rest === undefined
      ? "Check that every name here has a value, and that a function used here returns one."
      : "Use a number or a vector here.",
  )
}

function noPower(base: boolean): OperatorError {
  return new OperatorError(
    "vector-power",
    base ? "A vector cannot be raised to a power." : "A vector cannot be an exponent.",
    "For the square of its length write dot(v, v), or magnitude(v) ** 2.",
  )
}

function kind(value: unknown): string {
  switch (typeof value) {
    case "undefined":
      return "something without a value (undefined)"
    case "string":
      return `the text ${JSON.stringify(value.slice(0, 20))}`
    case "boolean":
      return String(value)
    case "function":
      return "a function"
    case "object":
      return value === null ? "null" : Array.isArray(value) ? "a list" : "an object that is no vector"
    default:
      return `a ${typeof value}`
  }
}

/** A value in a message: numbers short, vectors as (x, y, z). */
function shown(value: unknown): string {
  if (value instanceof Vec3) return `(${shown(value.x)}, ${shown(value.y)}, ${shown(value.z)})`
  return typeof value === "number" ? String(Number(value.toPrecision(6))) : kind(value)
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
