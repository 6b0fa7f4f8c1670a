import type { Annotation, Expression, Target } from "../tree/index.ts"
import { arithmetic } from "./arithmetic.ts"
import { declared, declaredMeasure, empty, resolved } from "./declare.ts"
import { memberOf } from "./evaluate.ts"
import type { Machine } from "./machine.ts"
import { noteLine } from "./recorded.ts"
import { find, type Scope } from "./scope.ts"
import { isQuantity, nothing, settled, type Value } from "./value.ts"

/** `=`, `+=` and the like. */
export function assign(m: Machine, e: Extract<Expression, { kind: "assign" }>, scope: Scope): Value {
  const before = m.wanted
  const held =
    e.target.kind === "variable" || e.target.kind === "place" ? current(m, e.target, scope) : nothing
  m.wanted = isQuantity(held) ? held : null
  let value: Value
  if (e.op === "=") value = m.evaluate(e.value, scope)
  else {
    const op = e.op.slice(0, -1)
    const right = m.evaluate(e.value, scope)
    const left = e.target.kind === "place" ? e.target.expression : nameOf(e.target)
    value = ["+", "-", "*", "/", "%", "**"].includes(op)
      ? arithmetic(m, scope, { op, from: e.from, to: e.to, left, right: e.value }, held, right)
      : nothing
  }
  m.wanted = before
  put(m, e.target, value, e.op === "=" ? e.value : e, scope)
  return value
}

const nameOf = (target: Target): Expression => ({
  kind: "name",
  name: target.kind === "variable" ? target.name : "",
  from: target.from,
  to: target.to,
})

/** A name or place on the left, as the expression that reads it. */
export const targetOf = (e: Expression): Target =>
  e.kind === "name"
    ? { kind: "variable", name: e.name, from: e.from, to: e.to }
    : { kind: "place", expression: e, from: e.from, to: e.to }

/** What stands under a target now. */
function current(m: Machine, target: Target, scope: Scope): Value {
  if (target.kind === "variable") return find(scope, target.name)?.value ?? nothing
  return target.kind === "place" ? m.evaluate(target.expression, scope) : nothing
}

/** Puts a value under a target, checked against what the target is declared as. */
export function put(m: Machine, target: Target, value: Value, e: Expression, scope: Scope): void {
  if (target.kind === "variable") {
    const variable = find(scope, target.name)
    if (!variable) return
    const old = variable.value
    m.journal.note(() => {
      variable.value = old
    })
    variable.value = declared(m, value, variable.annotation, { scope, e, name: target.name })
    noteLine(m, target.from, target.name, variable.value)
  } else if (target.kind === "place") putPlace(m, target.expression, value, e, scope)
  else takeApart(m, target, value, e, scope, (inner, one, site) => put(m, inner, one, site, scope))
}

function putPlace(m: Machine, place: Expression, value: Value, e: Expression, scope: Scope): void {
  if (place.kind !== "member" && place.kind !== "index") return
  const object = m.evaluate(place.object, scope)
  const name = m.program.text.slice(place.from, place.to)
  noteLine(m, place.from, name, value)
  if (place.kind === "member" && object.kind === "record")
    putField(m, object, place.property, value, { scope, e, name })
  if (place.kind !== "index") return
  const index = m.evaluate(place.index, scope)
  if (object.kind === "list" && index.kind === "scalar" && index.value >= 0 && index.value < 10_000) {
    const at = index.value
    const old = object.items[at]
    const { length } = object.items
    m.journal.note(() => {
      if (at < length) object.items[at] = old!
      else object.items.length = length
    })
    const kept = declared(m, value, object.of, { scope, e, name })
    if (Number.isInteger(at) && at <= length) object.items[at] = kept
  } else if (object.kind === "record" && index.kind === "plain")
    putField(m, object, String(index.value), value, { scope, e, name })
}

function putField(
  m: Machine,
  object: Extract<Value, { kind: "record" }>,
  key: string,
  value: Value,
  giving: { scope: Scope; e: Expression; name: string },
): void {
  const old = object.fields.get(key)
  m.journal.note(() => {
    if (old === undefined) object.fields.delete(key)
    else object.fields.set(key, old)
  })
  object.fields.set(key, declared(m, value, object.types?.get(key) ?? null, giving))
}

/** A pattern taken apart: each name in it with its part of the value. */
function takeApart(
  m: Machine,
  target: Target,
  value: Value,
  e: Expression,
  scope: Scope,
  each: (target: Target, value: Value, e: Expression) => void,
): void {
  if (target.kind === "objectPattern") {
    for (const { key, target: inner, fallback } of target.entries) {
      const field = memberOf(value, key)
      const missing = field.kind === "plain" && field.value === undefined
      each(inner, missing && fallback ? m.evaluate(fallback, scope) : field, e)
    }
    if (target.rest) each(target.rest, nothing, e)
  } else if (target.kind === "arrayPattern")
    target.items.forEach(({ target: inner, fallback }, at) => {
      const item = value.kind === "list" ? value.items[at] : undefined
      each(inner, item ?? (fallback ? m.evaluate(fallback, scope) : nothing), e)
    })
}

/** Declares the names of a target in a scope, with a value that is checked against the annotation. */
export function declareTarget(
  m: Machine,
  target: Target,
  annotation: Annotation | null,
  value: Value | null,
  e: Expression,
  scope: Scope,
): void {
  if (target.kind !== "variable") {
    takeApart(m, target, value ?? nothing, e, scope, (inner, one, site) =>
      declareTarget(m, inner, null, one, site, scope),
    )
    return
  }
  let kept: Value
  if (value) kept = declared(m, value, annotation, { scope, e, name: target.name })
  else {
    const type = annotation && resolved(m, annotation)
    const measure = type && declaredMeasure(type)
    kept = measure && (type.kind === "scalar" || type.kind === "vector") ? empty(type.kind, measure) : nothing
  }
  if (value) noteLine(m, target.from, target.name, kept)
  scope.names.set(target.name, { value: settled(kept), annotation })
}
