import type { Annotation, Expression } from "../tree/index.ts"
import { libraryTypes } from "./library.ts"
import type { Machine } from "./machine.ts"
import { type Measure, measureOf } from "./measure.ts"
import { checkAssignment, reportShape } from "./problems.ts"
import type { Scope } from "./scope.ts"
import { isQuantity, scalar, settled, type Value, vector, withMeasure } from "./value.ts"

/** How a value came to a declared name, for messages: the name, and the expression that gave it. */
export interface Giving {
  readonly scope: Scope
  readonly e: Expression
  /** "p", "mass of the crate", "The result of drag" */
  readonly name: string
  /** believed as it is, without a check: a type assertion */
  readonly trusted?: boolean
}

const deepest = 8

/** The annotation a name stands for; declared in the program or known from the library. */
export function resolved(m: Machine, annotation: Annotation): Annotation {
  if (annotation.kind !== "named") return annotation
  return m.types.get(annotation.name) ?? libraryTypes.get(annotation.name) ?? annotation
}

/** The unit an annotation gives; null if it gives none, or none that can be read (which is reported once). */
export function declaredMeasure(annotation: Annotation): Measure | null {
  if ((annotation.kind !== "scalar" && annotation.kind !== "vector") || annotation.unit === null) return null
  return measureOf(annotation.unit)
}

/** The value as it is kept under a declaration: with the declared unit, after a check that it has no other. */
export function declared(
  m: Machine,
  value: Value,
  annotation: Annotation | null,
  giving: Giving,
  depth = 0,
): Value {
  if (!annotation || depth > deepest) return settled(value)
  m.step()
  const type = resolved(m, annotation)
  switch (type.kind) {
    case "scalar":
    case "vector":
      return declaredQuantity(m, value, type, giving)
    case "list": {
      if (value.kind !== "list") return value
      value.items.forEach((item, at) => {
        const e = giving.e.kind === "array" ? (giving.e.items[at] ?? giving.e) : giving.e
        value.items[at] = declared(
          m,
          item,
          type.of,
          { ...giving, e, name: `${giving.name}[${at}]` },
          depth + 1,
        )
      })
      return { ...value, of: type.of }
    }
    case "record": {
      if (value.kind !== "record") return value
      for (const [key, field] of type.fields) {
        const inner = value.fields.get(key)
        if (!inner) continue
        const entry =
          giving.e.kind === "object"
            ? giving.e.entries.find(one => one.kind === "property" && one.key === key)
            : undefined
        const e = entry?.kind === "property" ? entry.value : giving.e
        value.fields.set(
          key,
          declared(m, inner, field, { ...giving, e, name: `${giving.name}.${key}` }, depth + 1),
        )
      }
      return { ...value, types: type.fields }
    }
    default:
      return settled(value)
  }
}

function declaredQuantity(
  m: Machine,
  value: Value,
  type: Extract<Annotation, { kind: "scalar" | "vector" }>,
  giving: Giving,
): Value {
  const measure = declaredMeasure(type)
  if (isQuantity(value)) {
    if (value.kind !== type.kind) {
      if (!giving.trusted) reportShape(m, giving.e, value, type.kind, giving.name)
      return measure ? empty(type.kind, measure) : value
    }
    if (!measure) return settled(value)
    if (!giving.trusted) checkAssignment(m, giving.scope, giving.e, value, measure, type.kind, giving.name)
    return withMeasure(value, measure)
  }
  return measure && (value.kind === "unknown" || value.kind === "plain") ? empty(type.kind, measure) : value
}

/** A quantity of which only the unit is known. */
export const empty = (kind: "scalar" | "vector", measure: Measure): Value =>
  kind === "scalar" ? scalar(Number.NaN, measure) : vector(Number.NaN, Number.NaN, Number.NaN, measure)
