import { nearestName } from "../../cell/nearest-name.ts"
import {
  type Dimension,
  dimensionless,
  formatUnit,
  isKnown,
  parseUnit,
  per,
  raised,
  times,
  unknownDimension,
} from "../../physics/units/index.ts"
import { unitText } from "./number.ts"
import type { Ink, Quantity } from "./quantities.ts"

/** A parameter that an expression may name. */
export interface Constant {
  readonly name: string
  readonly value: number
  readonly unit: string
}

export type ExpressionResult =
  | { readonly ok: true; readonly quantity: Quantity }
  /** what was seen, and what to do, in one or two sentences */
  | { readonly ok: false; readonly why: string }

/** Longest expression that is read, and deepest nesting: far above what a plot needs. */
const longest = 300
const deepest = 40

type Read = (row: number) => number
interface Value {
  /** one reading for a number, three for a vector */
  readonly parts: readonly [Read] | readonly [Read, Read, Read]
  readonly dimension: Dimension
  readonly ink: Ink
  /** a number written out or a parameter: the same at every row */
  readonly constant: number | null
}

interface Token {
  readonly kind: "number" | "name" | "sign" | "end"
  readonly text: string
}

class Unreadable extends Error {}
const fail = (why: string): never => {
  throw new Unreadable(why)
}

const tokenPattern =
  /\s*(?:(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?)|([\p{ID_Start}_$][\p{ID_Continue}$]*(?:\.[\p{ID_Start}_$][\p{ID_Continue}$]*)*)|(\*\*|[-+*/^()|.,\u2212·×]))/uy

function tokensOf(text: string): Token[] {
  const tokens: Token[] = []
  tokenPattern.lastIndex = 0
  while (tokenPattern.lastIndex < text.length) {
    const from = tokenPattern.lastIndex
    if (text.slice(from).trim() === "") break
    const found = tokenPattern.exec(text)
    if (!found) fail(`“${text.slice(from).trim()[0]}” has no meaning here. ${means}`)
    const [, number, name, sign] = found as RegExpExecArray
    if (number !== undefined) tokens.push({ kind: "number", text: number })
    else if (name !== undefined) tokens.push({ kind: "name", text: name })
    else tokens.push({ kind: "sign", text: signs[sign as string] ?? (sign as string) })
  }
  return [...tokens, { kind: "end", text: "" }]
}

const signs: Readonly<Record<string, string>> = { "\u2212": "-", "·": "*", "×": "*", "**": "^" }
const means = "Use recorded names, numbers, + − * / ^, brackets, magnitude( ) and .x .y .z."

/**
 * Reads an expression of what is recorded: names of series, parameters, numbers, + - * / ^, `magnitude(v)` or `|v|`, and
 * components .x .y .z. Vectors add, and are multiplied and divided by numbers. Its unit is worked out; sums of unlike
 * units are refused. Nothing is executed: the text is read into functions of our own.
 */
export function readExpression(
  text: string,
  quantities: readonly Quantity[],
  constants: readonly Constant[],
): ExpressionResult {
  if (text.trim() === "") return { ok: false, why: "Nothing is typed. Name what is to be plotted." }
  if (text.length > longest)
    return { ok: false, why: `The expression is longer than ${longest} characters. Plot a part of it.` }
  try {
    const value = parse(tokensOf(text), quantities, constants)
    const [read] = value.parts
    if (value.parts.length === 3)
      fail(
        `This is a vector, and a plot shows numbers. Ask for its magnitude, or for a component such as (…).x.`,
      )
    const unit = isKnown(value.dimension) ? formatUnit(value.dimension) : ""
    const id = text.trim()
    return {
      ok: true,
      quantity: {
        id,
        label: id,
        short: id,
        unit: unit === "1" ? "" : unit,
        ink: value.ink,
        component: null,
        read,
      },
    }
  } catch (cause) {
    if (cause instanceof Unreadable) return { ok: false, why: cause.message }
    throw cause
  }
}

/** The quantity of this id, else what the text says as an expression; null when it is neither. */
export function quantityFor(
  text: string,
  quantities: readonly Quantity[],
  constants: readonly Constant[],
): Quantity | null {
  const named = quantities.find(q => q.id === text)
  if (named) return named
  const read = readExpression(text, quantities, constants)
  return read.ok ? read.quantity : null
}

function parse(
  tokens: readonly Token[],
  quantities: readonly Quantity[],
  constants: readonly Constant[],
): Value {
  let at = 0
  let depth = 0
  const peek = (): Token => tokens[at] as Token
  const next = (): Token => tokens[at++] as Token
  const take = (sign: string): boolean => {
    if (peek().kind !== "sign" || peek().text !== sign) return false
    at++
    return true
  }
  const need = (sign: string): void => {
    if (!take(sign))
      fail(
        peek().kind === "end"
          ? `A “${sign}” is missing at the end.`
          : `A “${sign}” is missing before “${peek().text}”.`,
      )
  }
  const inside = <T>(work: () => T): T => {
    if (++depth > deepest) fail("The brackets are nested too deep. Plot a part of it.")
    const result = work()
    depth--
    return result
  }

  const sum = (): Value => {
    let left = product()
    for (;;) {
      if (take("+")) left = added(left, product(), 1)
      else if (take("-")) left = added(left, product(), -1)
      else return left
    }
  }
  const product = (): Value => {
    let left = signed()
    for (;;) {
      if (take("*")) left = multiplied(left, signed())
      else if (take("/")) left = divided(left, signed())
      else return left
    }
  }
  const signed = (): Value => {
    if (take("-")) return inside(() => scaled(signed(), -1))
    if (take("+")) return inside(signed)
    return power()
  }
  const power = (): Value => {
    const base = component()
    return take("^") ? inside(() => toPower(base, signed())) : base
  }
  const component = (): Value => {
    let value = primary()
    while (take(".")) {
      const name = next().text
      const k = ["x", "y", "z"].indexOf(name)
      if (k < 0 || value.parts.length === 1)
        fail(`“.${name}” is no part of this. Vectors have .x, .y and .z.`)
      value = { ...value, parts: [value.parts[k] as Read] }
    }
    return value
  }
  const primary = (): Value => {
    const token = next()
    if (token.kind === "number") return constantValue(Number(token.text), dimensionless)
    if (token.kind === "name") {
      if (peek().kind === "sign" && peek().text === "(") {
        if (token.text !== "magnitude")
          fail(`“${token.text}(” is not known here: magnitude( ) is the only function.`)
        at++
        const value = inside(sum)
        need(")")
        return magnitudeOf(value)
      }
      return named(token.text, quantities, constants)
    }
    if (token.text === "(") {
      const value = inside(sum)
      need(")")
      return value
    }
    if (token.text === "|") {
      const value = inside(sum)
      need("|")
      return magnitudeOf(value)
    }
    return token.kind === "end"
      ? fail("Something is missing at the end.")
      : fail(`“${token.text}” cannot stand here. ${means}`)
  }

  const value = sum()
  if (peek().kind !== "end") fail(`“${peek().text}” cannot stand here. ${means}`)
  return value
}

const constantValue = (constant: number, dimension: Dimension): Value => ({
  parts: [() => constant],
  dimension,
  ink: "scalar",
  constant,
})

const scaleless = (unit: string): { dimension: Dimension; factor: number } => {
  if (unit === "") return { dimension: unknownDimension, factor: 1 }
  const read = parseUnit(unit)
  return read.ok ? read.unit : { dimension: unknownDimension, factor: 1 }
}

/** A recorded name: a number, a component, or a vector by the name that its components share. Units come out coherent. */
function named(text: string, quantities: readonly Quantity[], constants: readonly Constant[]): Value {
  const one = quantities.find(q => q.id === text)
  const parts = one ? [one] : ["x", "y", "z"].map(k => quantities.find(q => q.id === `${text}.${k}`))
  if (parts.every(q => q !== undefined)) {
    const [first] = parts as [Quantity]
    const { dimension, factor } = scaleless(first.unit)
    const reads = parts.map(q => (factor === 1 ? q.read : (row: number) => factor * q.read(row)))
    return { parts: reads as unknown as Value["parts"], dimension, ink: first.ink, constant: null }
  }
  const constant = constants.find(one => one.name === text)
  if (constant) {
    const { dimension, factor } = scaleless(constant.unit === "" ? "1" : constant.unit)
    return constantValue(constant.value * factor, dimension)
  }
  const names = [...vectorNames(quantities), ...quantities.map(q => q.id), ...constants.map(c => c.name)]
  const near = nearestName(text, names) ?? names.find(name => name.endsWith(`.${text}`))
  return fail(
    `Nothing is recorded under “${text}”. ${near ? `Did you mean ${near}?` : `Recorded are ${names.slice(0, 4).join(", ")} and so on.`}`,
  )
}

/** Names of vectors, by the components that are listed. */
export function vectorNames(quantities: readonly Quantity[]): string[] {
  return quantities.filter(q => q.id.endsWith(".x")).map(q => q.id.slice(0, -2))
}

const describeUnit = ({ dimension }: Value): string =>
  dimension === dimensionless ? "a pure number" : unitText(formatUnit(dimension))

function added(a: Value, b: Value, sign: 1 | -1): Value {
  if (a.parts.length !== b.parts.length)
    return fail(
      "A vector and a number cannot be added. Take the vector's magnitude or one of its components.",
    )
  const parts = a.parts.map((read, k) => {
    const other = b.parts[k] as Read
    return (row: number) => read(row) + sign * other(row)
  })
  if (isKnown(a.dimension) && isKnown(b.dimension) && a.dimension !== b.dimension)
    return fail(
      `${describeUnit(a)} and ${describeUnit(b)} cannot be ${sign > 0 ? "added" : "subtracted"}: they are different quantities.`,
    )
  return {
    parts: parts as unknown as Value["parts"],
    dimension: isKnown(a.dimension) ? a.dimension : b.dimension,
    ink: a.ink === b.ink ? a.ink : "scalar",
    constant: a.constant !== null && b.constant !== null ? a.constant + sign * b.constant : null,
  }
}

const mapped = (value: Value, by: Read, over: boolean): Value["parts"] =>
  value.parts.map(read =>
    over ? (row: number) => read(row) / by(row) : (row: number) => read(row) * by(row),
  ) as unknown as Value["parts"]

function scaled(value: Value, by: number): Value {
  return {
    ...value,
    parts: mapped(value, () => by, false),
    constant: value.constant === null ? null : by * value.constant,
  }
}

function multiplied(a: Value, b: Value): Value {
  if (a.parts.length === 3 && b.parts.length === 3)
    return fail("Two vectors cannot be multiplied here. Multiply components, such as a.x * b.x + a.y * b.y.")
  const [vector, number] = a.parts.length === 3 ? [a, b] : [b, a]
  return {
    parts: mapped(vector, number.parts[0], false),
    dimension: times(a.dimension, b.dimension),
    ink: inkOfProduct(a, b),
    constant: a.constant !== null && b.constant !== null ? a.constant * b.constant : null,
  }
}

function divided(a: Value, b: Value): Value {
  if (b.parts.length === 3)
    return fail("Nothing can be divided by a vector. Divide by its magnitude or a component.")
  return {
    parts: mapped(a, b.parts[0], true),
    dimension: per(a.dimension, b.dimension),
    ink: inkOfProduct(a, b),
    constant: a.constant !== null && b.constant !== null ? a.constant / b.constant : null,
  }
}

/** A recorded quantity times a plain number keeps its ink; anything else is a number of its own. */
const inkOfProduct = (a: Value, b: Value): Ink =>
  a.constant !== null && a.dimension === dimensionless
    ? b.ink
    : b.constant !== null && b.dimension === dimensionless
      ? a.ink
      : "scalar"

function toPower(base: Value, exponent: Value): Value {
  const by = exponent.constant
  if (by === null || exponent.dimension !== dimensionless)
    return fail("A power needs a plain number after ^, such as ^2 or ^0.5.")
  if (base.parts.length === 3)
    return fail("A vector has no powers. Take its magnitude first: magnitude(…)^2.")
  const [read] = base.parts
  return {
    parts: [by === 2 ? row => read(row) * read(row) : row => read(row) ** by],
    dimension: raised(base.dimension, by),
    ink: "scalar",
    constant: base.constant === null ? null : base.constant ** by,
  }
}

function magnitudeOf(value: Value): Value {
  if (value.parts.length === 1) {
    const [read] = value.parts
    return {
      ...value,
      parts: [row => Math.abs(read(row))],
      constant: value.constant === null ? null : Math.abs(value.constant),
    }
  }
  const [x, y, z] = value.parts
  return { ...value, parts: [row => Math.hypot(x(row), y(row), z(row))] }
}
