import * as physics from "../../physics/index.ts"
import type { Entry, Expression } from "../tree/index.ts"
import { arithmetic, compare, constantOf, isComparison, negated } from "./arithmetic.ts"
import { assign, put, targetOf } from "./assign.ts"
import { callExpression } from "./calls.ts"
import { declared } from "./declare.ts"
import { libraryConstants, librarySignatures } from "./library.ts"
import type { Machine } from "./machine.ts"
import { bare, literal, measureOf, together } from "./measure.ts"
import { find, type Scope } from "./scope.ts"
import {
  isQuantity,
  nothing,
  scalar,
  settled,
  truth,
  undefinedValue,
  type Value,
  withMeasure,
} from "./value.ts"

/** The value of an expression, with its unit. */
export function evaluate(m: Machine, e: Expression, scope: Scope): Value {
  m.step()
  switch (e.kind) {
    case "number":
      return scalar(e.value, literal(e.value))
    case "string":
      return { kind: "plain", value: e.value }
    case "template":
      for (const part of e.parts) evaluate(m, part, scope)
      return { kind: "plain", value: "" }
    case "name":
      return named(e.name, scope)
    case "member":
      if (e.object.kind === "name" && e.object.name === "Math" && !find(scope, "Math"))
        return constantOf(e.property)
      return memberOf(evaluate(m, e.object, scope), e.property)
    case "index":
      return itemOf(evaluate(m, e.object, scope), evaluate(m, e.index, scope))
    case "unary":
      return unary(m, e, scope)
    case "binary":
      return binary(m, e, scope)
    case "conditional":
      return either(
        m,
        e,
        truth(evaluate(m, e.test, scope)),
        () => evaluate(m, e.yes, scope),
        () => evaluate(m, e.no, scope),
      )
    case "assign":
      return assign(m, e, scope)
    case "step": {
      const value = evaluate(m, e.target, scope)
      if (value.kind !== "scalar") return nothing
      const next = scalar(value.value + (e.op === "++" ? 1 : -1), value.measure)
      put(m, targetOf(e.target), next, e, scope)
      return e.prefix ? next : value
    }
    case "array":
      return { kind: "list", items: itemsOf(m, e.items, scope).map(settled), of: null }
    case "object":
      return recordOf(m, e.entries, scope)
    case "function":
      return { kind: "function", node: e.function, scope }
    case "sequence": {
      let last: Value = nothing
      for (const item of e.items) last = evaluate(m, item, scope)
      return last
    }
    case "as":
      return declared(m, evaluate(m, e.value, scope), e.annotation, {
        scope,
        e: e.value,
        name: "",
        trusted: true,
      })
    case "call":
      return callExpression(m, e, scope)
    default:
      return nothing
  }
}

const words: Readonly<Record<string, Value>> = {
  true: { kind: "plain", value: true },
  false: { kind: "plain", value: false },
  null: { kind: "plain", value: null },
  undefined: undefinedValue,
  NaN: scalar(Number.NaN, bare),
  Infinity: scalar(Number.POSITIVE_INFINITY, bare),
}

function named(name: string, scope: Scope): Value {
  const variable = find(scope, name)
  if (variable) return variable.value
  if (Object.hasOwn(words, name)) return words[name]!
  const constant = libraryConstants.get(name)
  if (constant?.kind === "scalar" && constant.unit !== null) {
    const value = (physics as unknown as Readonly<Record<string, unknown>>)[name]
    return scalar(typeof value === "number" ? value : Number.NaN, measureOf(constant.unit) ?? bare)
  }
  return librarySignatures.has(name) ? { kind: "library", name } : nothing
}

export function memberOf(object: Value, property: string): Value {
  switch (object.kind) {
    case "vector":
      return property === "x" || property === "y" || property === "z"
        ? scalar(object[property], object.measure)
        : nothing
    case "record":
      return object.fields.get(property) ?? undefinedValue
    case "list":
      return property === "length" ? scalar(object.items.length, bare) : nothing
    default:
      return nothing
  }
}

function itemOf(object: Value, index: Value): Value {
  if (object.kind === "list" && index.kind === "scalar") {
    // an item that this short run did not make is like the others
    const item = object.items[index.value] ?? object.items[0]
    return item ?? nothing
  }
  if (object.kind === "record" && index.kind === "plain" && typeof index.value === "string")
    return object.fields.get(index.value) ?? undefinedValue
  return nothing
}

function unary(m: Machine, e: Extract<Expression, { kind: "unary" }>, scope: Scope): Value {
  const value = evaluate(m, e.argument, scope)
  if (e.op === "-") return negated(value)
  if (e.op === "+") return value.kind === "scalar" ? value : nothing
  const known = truth(value)
  return e.op === "!" && known !== null ? { kind: "plain", value: !known } : nothing
}

function binary(m: Machine, e: Extract<Expression, { kind: "binary" }>, scope: Scope): Value {
  if (e.op === "&&" || e.op === "||" || e.op === "??") {
    const left = evaluate(m, e.left, scope)
    const known =
      e.op === "??"
        ? left.kind === "unknown"
          ? null
          : left === undefinedValue || left === words.null
        : truth(left)
    const goesOn = known === null ? null : e.op === "||" ? !known : known
    return either(
      m,
      e,
      goesOn,
      () => evaluate(m, e.right, scope),
      () => left,
    )
  }
  const left = evaluate(m, e.left, scope)
  const right = evaluate(m, e.right, scope)
  return isComparison(e.op) ? compare(m, scope, e, left, right) : arithmetic(m, scope, e, left, right)
}

/**
 * The way a condition chooses; the other way is tried once for its units, without effect. If it cannot be told, both
 * are tried, and the value is what the two have in common.
 */
function either(m: Machine, e: Expression, chosen: boolean | null, yes: () => Value, no: () => Value): Value {
  if (chosen !== null) {
    m.walk(e, chosen ? 2 : 1, chosen ? no : yes)
    return chosen ? yes() : no()
  }
  let a: Value = nothing
  let b: Value = nothing
  m.journal.tried(() => {
    a = yes()
  })
  m.journal.tried(() => {
    b = no()
  })
  return alike(a, b)
}

const alike = (a: Value, b: Value): Value =>
  isQuantity(a) && isQuantity(b) && a.kind === b.kind
    ? withMeasure(a, together(a.measure, b.measure))
    : nothing

/** Items of a list or arguments, spreads laid out. */
export function itemsOf(m: Machine, items: readonly Expression[], scope: Scope): Value[] {
  const values: Value[] = []
  for (const item of items) {
    if (item.kind !== "spread") values.push(evaluate(m, item, scope))
    else {
      const list = evaluate(m, item.value, scope)
      if (list.kind === "list") values.push(...list.items)
    }
  }
  return values
}

function recordOf(m: Machine, entries: readonly Entry[], scope: Scope): Value {
  const fields = new Map<string, Value>()
  for (const entry of entries) {
    if (entry.kind === "property") fields.set(entry.key, settled(evaluate(m, entry.value, scope)))
    else if (entry.kind === "computed") {
      const key = evaluate(m, entry.key, scope)
      const value = evaluate(m, entry.value, scope)
      if (key.kind === "plain") fields.set(String(key.value), settled(value))
    } else if (entry.kind === "spread") {
      const other = evaluate(m, entry.value, scope)
      if (other.kind === "record") for (const [key, value] of other.fields) fields.set(key, value)
    }
  }
  return { kind: "record", fields, types: null }
}
