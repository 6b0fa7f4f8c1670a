import {
  type Dimension,
  dimensionOf,
  isKnown,
  nameOfDimension,
  per,
  raised,
} from "../../physics/units/index.ts"
import type { Expression } from "../tree/index.ts"
import type { Measure } from "./measure.ts"
import { find, type Scope } from "./scope.ts"
import { isQuantity } from "./value.ts"
import { mentions, quoted } from "./words.ts"

const second = dimensionOf({ s: 1 })
const kilogram = dimensionOf({ kg: 1 })
const metre = dimensionOf({ m: 1 })
const momentum = dimensionOf({ kg: 1, m: 1, s: -1 })

export interface Question {
  readonly text: string
  readonly timeStep: string
  readonly scope: Scope
  /** the expression that has the wrong dimension */
  readonly of: Expression
  readonly has: Measure
  readonly should: Measure
  readonly shape: "scalar" | "vector"
  /** time steps, masses and directions only: what else a function might want is no clear cause */
  readonly onlyPlain?: boolean
}

/**
 * The likely cause of a wrong dimension, as a question and what to do, when there is a clear one; else null. Looks at
 * the quotient of what should be and what is: a time step, a mass, a length left out or once too many.
 */
export function likelyCause(q: Question): string | null {
  const ratio = per(q.should.dimension, q.has.dimension)
  if (!isKnown(ratio) || ratio === 0) return null
  const what = quoted(q.text, q.of)
  const dt = timeNameOf(q)
  const mass = massOf(q, ratio === kilogram)
  const is = (dimension: Dimension): boolean => ratio === dimension

  if (is(second))
    return dt === null
      ? `Is a time missing as a factor of ${what}?`
      : divides(q.of, dt)
        ? `Is the division by ${dt} too much? Leave it out.`
        : `Is the time step missing? Multiply ${what} by ${dt}.`
  if (is(raised(second, -1)) && dt !== null && multiplies(q.of, dt))
    return `Is the time step there once too often? Leave ${dt} out of ${what}.`
  if (is(raised(kilogram, -1)) && mass && q.has.dimension !== kilogram) return massMissing(q, mass, what)
  if (is(kilogram) && mass)
    return divides(q.of, mass)
      ? `Is the division by ${mass} too much? Leave it out.`
      : `Is the mass missing? Multiply ${what} by ${mass}.`
  if (is(per(second, kilogram)) && q.has.dimension === momentum && mass && dt !== null)
    return `Are the mass and the time step missing? Divide ${what} by ${mass}, which gives a velocity, and multiply by ${dt}.`
  const long = vectorFactor(q, raised(ratio, -1))
  if (long !== null)
    return `Is a ${is(raised(metre, -1)) ? "length" : "vector"} where a direction belongs? Use unit(${long}) in place of ${long}.`
  const turning = q.shape === "vector" ? armMissing(q, ratio) : undefined
  if (turning !== undefined) return turning
  return q.onlyPlain ? null : factorMissing(q, ratio, what)
}

/** Vectors about a point and the vectors that they go with: an arm stands between them, and a vector product. */
const turnings: readonly { readonly about: Dimension; readonly at: Dimension; readonly armFirst: boolean }[] =
  [
    // angular velocity and velocity, then their rates of change
    { about: dimensionOf({ s: -1 }), at: dimensionOf({ m: 1, s: -1 }), armFirst: false },
    { about: dimensionOf({ s: -2 }), at: dimensionOf({ m: 1, s: -2 }), armFirst: false },
    // angular momentum and momentum, torque and force
    { about: dimensionOf({ kg: 1, m: 2, s: -1 }), at: momentum, armFirst: true },
    { about: dimensionOf({ kg: 1, m: 2, s: -2 }), at: dimensionOf({ kg: 1, m: 1, s: -2 }), armFirst: true },
  ]

/** A length is missing between a vector and one about a point: no factor, but the arm. Undefined for all other vectors; null where there is no advice. */
function armMissing(q: Question, ratio: Dimension): string | null | undefined {
  const { has, should, of, text } = q
  const between = (one: Dimension, other: Dimension): boolean =>
    (one === has.dimension && other === should.dimension) ||
    (one === should.dimension && other === has.dimension)
  const pair = turnings.find(({ about, at }) => between(about, at))
  if (pair === undefined) return undefined
  if (ratio !== metre) return null
  const source = text.slice(of.from, of.to)
  const vector = /^[\p{ID_Start}_$][\p{ID_Continue}$.]*$/u.test(source) ? source : "…"
  return `Is a vector product missing? Write cross(${pair.armFirst ? `arm, ${vector}` : `${vector}, arm`}), where the arm goes from the centre to the point.`
}

function massMissing(q: Question, mass: string, what: string): string {
  const momentum = q.has.dimension === dimensionOf({ kg: 1, m: 1, s: -1 })
  const reason = momentum
    ? "momentum over mass is velocity"
    : `then it is ${nameOfDimension(q.should.dimension) ?? "of the right kind"}`
  return multiplies(q.of, mass)
    ? `Is the mass there once too often? Leave ${mass} out of ${what}.`
    : `Is the mass missing? Divide ${what} by ${mass}: ${reason}.`
}

/** Exactly one name in reach has just the dimension that is missing. */
function factorMissing(q: Question, ratio: Dimension, what: string): string | null {
  const inverse = raised(ratio, -1)
  const factors = namesOf(q.scope, ratio)
  const divisors = namesOf(q.scope, inverse)
  const tooMany = divisors.find(name => multiplies(q.of, name))
  if (tooMany) return `Is ${tooMany} there once too often? Leave it out of ${what}.`
  const tooFew = factors.find(name => divides(q.of, name))
  if (tooFew) return `Is the division by ${tooFew} too much? Leave it out.`
  if (factors.length === 1 && divisors.length === 0)
    return `Is ${factors[0]} missing? Multiply ${what} by it.`
  if (divisors.length === 1 && factors.length === 0)
    return `Is a division by ${divisors[0]} missing in ${what}?`
  const name = nameOfDimension(ratio)
  if (name !== null && factors.length > 0)
    return `Is a ${name} missing as a factor of ${what}, such as ${factors[0]}?`
  return null
}

/** The name of the time step, if it is in reach here and is a time. */
function timeNameOf(q: Question): string | null {
  const value = find(q.scope, q.timeStep)?.value
  if (value && isQuantity(value) && (value.measure.dimension === second || value.measure.kind === "bare"))
    return q.timeStep
  return namesOf(q.scope, second).find(name => /^d[A-Z]?t|^step/i.test(name)) ?? null
}

/** The mass that is meant, where there is a kilogram too few or too many: one that stands there wrongly, the only one in reach, or that of the body where there are several. */
function massOf(q: Question, tooFew: boolean): string | undefined {
  const masses = namesOf(q.scope, kilogram)
  const there = masses.find(name => (tooFew ? divides(q.of, name) : multiplies(q.of, name)))
  return there ?? (masses.length > 1 ? "the mass of the body" : masses[0])
}

/** Names of numbers in reach with a dimension, nearest first. */
function namesOf(scope: Scope, dimension: Dimension): string[] {
  const found: string[] = []
  for (let at: Scope | null = scope; at; at = at.outer)
    for (const [name, { value }] of at.names)
      if (value.kind === "scalar" && value.measure.kind === "unit" && value.measure.dimension === dimension)
        if (!found.includes(name)) found.push(name)
  return found
}

const isName = (e: Expression, name: string): boolean => e.kind === "name" && e.name === name

const divides = (e: Expression, name: string): boolean =>
  mentions(
    e,
    one => one.kind === "binary" && one.op === "/" && mentions(one.right, inner => isName(inner, name)),
  )

const multiplies = (e: Expression, name: string): boolean =>
  mentions(
    e,
    one =>
      isName(one, name) ||
      (one.kind === "binary" && one.op === "*" && (isName(one.left, name) || isName(one.right, name))),
  ) && !divides(e, name)

/** A vector factor of the expression whose dimension is just what is too much: its direction alone would do. */
function vectorFactor(q: Question, dimension: Dimension): string | null {
  const factor = (e: Expression): string | null => {
    if (e.kind === "unary") return factor(e.argument)
    if (e.kind === "binary" && e.op === "*") return factor(e.left) ?? factor(e.right)
    if (e.kind === "binary" && e.op === "/") return factor(e.left)
    if (e.kind !== "name") return null
    const value = find(q.scope, e.name)?.value
    return value?.kind === "vector" && value.measure.dimension === dimension ? e.name : null
  }
  return q.of.kind === "name" ? null : factor(q.of)
}
