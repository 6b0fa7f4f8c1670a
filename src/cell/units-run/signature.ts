import { isVec3, Vec3 } from "../../physics/index.ts"
import type { Annotation, Expression, FunctionNode } from "../tree/index.ts"
import { libraryTypes } from "./library.ts"
import type { Machine } from "./machine.ts"
import {
  clash,
  type Measure,
  measureOf,
  plain,
  power,
  product,
  quotient,
  together,
  unknown,
} from "./measure.ts"
import { checkArgument, reportParts } from "./problems.ts"
import type { Scope } from "./scope.ts"
import { isQuantity, nothing, type Quantity, scalar, type Value, vector, withMeasure } from "./value.ts"

/** A unit in a signature: known symbols, and letters X, Y, Z that stand for any unit, each with its power. */
interface Template {
  readonly fixed: Measure
  readonly letters: readonly { readonly letter: string; readonly power: number }[]
}

const templates = new Map<string, Template>()

function templateOf(text: string): Template {
  const kept = templates.get(text)
  if (kept) return kept
  const letters: Template["letters"][number][] = []
  const rest: string[] = []
  text.split("/").forEach((side, at) => {
    for (const factor of side.split(" ").filter(Boolean)) {
      const [symbol, exponent] = factor.split("^")
      const sign = at === 0 ? 1 : -1
      const [above, below] = (exponent ?? "1").replace(/[()]/g, "").split("|")
      const size = sign * (Number(above) / Number(below ?? 1))
      if (/^[XYZ]$/.test(symbol!)) letters.push({ letter: symbol!, power: size })
      else if (symbol !== "1") rest.push(`${symbol}^${size}`)
    }
  })
  const fixed = letters.length === 0 ? measureOf(text) : rest.length === 0 ? plain : measureOf(rest.join(" "))
  const template = { fixed: fixed ?? unknown, letters }
  templates.set(text, template)
  return template
}

interface Bound {
  readonly value: Quantity
  readonly measure: Measure
}

/** A call being checked against the declaration of what it calls. */
interface Checking {
  readonly m: Machine
  readonly scope: Scope
  readonly name: string
  readonly site: Expression
  readonly letters: Map<string, Bound>
  /** arguments by the name of their type, for the functions that are handed over along with them */
  readonly named: Map<string, Value>
}

/** Checks the arguments of a call against a signature; false if one is wrong. Binds the letters as it goes. */
function checkArguments(
  c: Checking,
  signature: FunctionNode,
  args: readonly Value[],
  sites: readonly Expression[],
): boolean {
  let good = true
  args.forEach((value, at) => {
    const parameter = signature.parameters[Math.min(at, signature.parameters.length - 1)]
    if (!parameter?.annotation || (at >= signature.parameters.length && !parameter.rest)) return
    const type =
      parameter.rest && parameter.annotation.kind === "list" ? parameter.annotation.of : parameter.annotation
    const label = parameter.target.kind === "variable" ? parameter.target.name : ""
    noteNamed(c, type, value)
    if (!checkType(c, type, value, sites[at] ?? c.site, label)) good = false
    adopt(type, value)
  })
  return good
}

/** Gives plain numbers in a body or a system the units that its parts have. */
function adopt(given: Annotation, value: Value): void {
  const type = given.kind === "named" ? (libraryTypes.get(given.name) ?? given) : given
  if (type.kind === "list" && value.kind === "list") for (const item of value.items) adopt(type.of, item)
  if (type.kind !== "record" || value.kind !== "record") return
  for (const [key, field] of type.fields) {
    const part = value.fields.get(key)
    if (!part) continue
    if (!isQuantity(part)) adopt(field, part)
    else if (part.kind === field.kind && part.measure.kind !== "unit" && field.unit !== null)
      value.fields.set(key, withMeasure(part, templateOf(field.unit).fixed))
  }
}

function noteNamed(c: Checking, type: Annotation, value: Value): void {
  if (type.kind === "named" && value.kind === "record") c.named.set(type.name, value)
  else if (type.kind === "list" && value.kind === "list" && value.items[0])
    noteNamed(c, type.of, value.items[0])
}

/** A function that is handed over, such as a force law: called once with what the library would give it. */
function checkLaw(
  c: Checking,
  type: Extract<Annotation, { kind: "law" }>,
  fn: Value,
  site: Expression,
  label: string,
): boolean {
  if (fn.kind !== "function") return true
  const args = type.parameters.map(one => {
    const known = one.kind === "named" ? c.named.get(one.name) : undefined
    return known ?? typed(one, undefined, c.letters)
  })
  const result = c.m.call(fn, args, [], site)
  const short =
    site.kind === "function" && !Array.isArray(site.function.body) ? (site.function.body as Expression) : site
  return checkType(c, type.returns, result, short, `the result of ${label}`)
}

function checkType(c: Checking, given: Annotation, value: Value, site: Expression, label: string): boolean {
  const type = given.kind === "named" ? (libraryTypes.get(given.name) ?? given) : given
  if (type.kind === "law") return checkLaw(c, type, value, site, label)
  if (type.kind === "record" && value.kind === "record") {
    let good = true
    for (const [key, field] of type.fields) {
      const inner = value.fields.get(key)
      if (inner && !checkType(c, field, inner, fieldSite(site, key), key)) good = false
    }
    return good
  }
  if (type.kind === "list" && value.kind === "list")
    return value.items.every((item, at) =>
      checkType(c, type.of, item, site.kind === "array" ? (site.items[at] ?? site) : site, label),
    )
  if ((type.kind !== "scalar" && type.kind !== "vector") || value.kind !== type.kind || type.unit === null)
    return true
  const { fixed, letters } = templateOf(type.unit)
  if (letters.length === 0) return checkArgument(c.m, c.scope, site, value, fixed, type.kind, c.name, label)
  const [only] = letters
  if (letters.length > 1 || !only || only.power !== 1) return true
  const measure = fixed === plain ? value.measure : quotient(value.measure, fixed, false)
  const before = c.letters.get(only.letter)
  if (!before) {
    c.letters.set(only.letter, { value, measure })
    return true
  }
  if (clash(before.measure, measure) !== null) {
    reportParts(c.m, c.site, c.name, before.value, value)
    return false
  }
  c.letters.set(only.letter, {
    value: before.measure.kind === "unit" ? before.value : value,
    measure: together(before.measure, measure),
  })
  return true
}

const fieldSite = (site: Expression, key: string): Expression => {
  if (site.kind !== "object") return site
  const entry = site.entries.find(one => one.kind === "property" && one.key === key)
  return entry?.kind === "property" ? entry.value : site
}

/** The measure that a unit of the signature has with the letters as they are bound. */
function measureWith(text: string, letters: ReadonlyMap<string, Bound>): Measure {
  const template = templateOf(text)
  let measure = template.fixed
  for (const { letter, power: exponent } of template.letters) {
    const bound = letters.get(letter)?.measure ?? unknown
    const factor = Math.abs(exponent) === 1 ? bound : power(bound, Math.abs(exponent))
    measure = exponent > 0 ? product(measure, factor, true, false) : quotient(measure, factor, false)
  }
  return measure
}

/** What a function gives, with its unit; `result` is what it gave when it was called with plain numbers. */
function typed(type: Annotation | null, result: unknown, letters: ReadonlyMap<string, Bound>): Value {
  const full = type?.kind === "named" ? (libraryTypes.get(type.name) ?? type) : type
  if (full?.kind === "scalar")
    return scalar(
      typeof result === "number" ? result : Number.NaN,
      full.unit === null ? unknown : measureWith(full.unit, letters),
    )
  if (full?.kind === "vector") {
    const measure = full.unit === null ? unknown : measureWith(full.unit, letters)
    return isVec3(result)
      ? vector(result.x, result.y, result.z, measure)
      : vector(Number.NaN, Number.NaN, Number.NaN, measure)
  }
  if (full?.kind === "record") {
    const fields = new Map<string, Value>()
    for (const [key, field] of full.fields)
      fields.set(key, typed(field, (result as Record<string, unknown> | undefined)?.[key], letters))
    return { kind: "record", fields, types: null }
  }
  if (full?.kind === "list") {
    const items = Array.isArray(result) ? result : [undefined]
    return { kind: "list", items: items.map(item => typed(full.of, item, letters)), of: null }
  }
  if (typeof result === "boolean" || typeof result === "string") return { kind: "plain", value: result }
  return nothing
}

/**
 * Calls a function whose signature is known: checks the units of what it takes, calls it with plain numbers, and
 * gives its result the unit that the signature says.
 */
export function callKnown(
  m: Machine,
  scope: Scope,
  name: string,
  signature: FunctionNode,
  fn: (...args: never[]) => unknown,
  args: readonly Value[],
  sites: readonly Expression[],
  site: Expression,
): Value {
  const c: Checking = { m, scope, name, site, letters: new Map(), named: new Map() }
  const good = checkArguments(c, signature, args, sites)
  if (args.some(one => holdsFunction(one))) return fromArguments(c, signature.returns, args)
  const numbers = args.map(value => plainOf(m, value))
  let result: unknown
  try {
    result = (fn as (...all: unknown[]) => unknown)(...numbers)
  } catch {
    // the run itself says in words what the library does not take
    result = undefined
  }
  const given = typed(signature.returns, result, good ? c.letters : new Map())
  return isQuantity(given) && !good && templateHasLetters(signature.returns)
    ? withMeasure(given, unknown)
    : given
}

const holdsFunction = (value: Value): boolean =>
  value.kind === "function" ||
  (value.kind === "record" && [...value.fields.values()].some(one => one.kind === "function"))

/** What a function gives that was handed a function of the program: the same system or bodies, moved on. */
function fromArguments(c: Checking, returns: Annotation | null, args: readonly Value[]): Value {
  if (returns?.kind === "named") return c.named.get(returns.name) ?? typed(returns, undefined, c.letters)
  if (returns?.kind !== "list") return typed(returns, undefined, c.letters)
  const length = args.find(one => one.kind === "list")?.items.length ?? 1
  const items = Array.from({ length }, () => typed(returns.of, undefined, c.letters))
  return { kind: "list", items, of: null }
}

const templateHasLetters = (type: Annotation | null): boolean =>
  (type?.kind === "scalar" || type?.kind === "vector") &&
  type.unit !== null &&
  templateOf(type.unit).letters.length > 0

/** A value as the library takes it. Functions of the program are not handed out. */
function plainOf(m: Machine, value: Value, depth = 0): unknown {
  m.step()
  switch (value.kind) {
    case "scalar":
    case "plain":
      return value.value
    case "vector":
      return new Vec3(value.x, value.y, value.z)
    case "list":
      return depth > 4 ? [] : value.items.map(item => plainOf(m, item, depth + 1))
    case "record":
      return depth > 4
        ? {}
        : Object.fromEntries([...value.fields].map(([key, field]) => [key, plainOf(m, field, depth + 1)]))
    default:
      return undefined
  }
}
