import type { Annotation, FunctionNode } from "../tree/index.ts"
import { bare, type Measure } from "./measure.ts"
import type { Scope } from "./scope.ts"

/** A value of the units run: what the program would hold, and what is known of its unit. */
export type Value =
  | { readonly kind: "scalar"; readonly value: number; readonly measure: Measure }
  | {
      readonly kind: "vector"
      readonly x: number
      readonly y: number
      readonly z: number
      readonly measure: Measure
    }
  | { readonly kind: "list"; readonly items: Value[]; readonly of: Annotation | null }
  | {
      readonly kind: "record"
      readonly fields: Map<string, Value>
      readonly types: ReadonlyMap<string, Annotation> | null
    }
  | { readonly kind: "function"; readonly node: FunctionNode; readonly scope: Scope }
  | { readonly kind: "library"; readonly name: string }
  | { readonly kind: "plain"; readonly value: string | boolean | null | undefined }
  | { readonly kind: "unknown" }

export type Scalar = Extract<Value, { kind: "scalar" }>
export type Vector = Extract<Value, { kind: "vector" }>
export type Quantity = Scalar | Vector

export const nothing: Value = { kind: "unknown" }
export const undefinedValue: Value = { kind: "plain", value: undefined }

export const scalar = (value: number, measure: Measure): Scalar => ({ kind: "scalar", value, measure })
export const vector = (x: number, y: number, z: number, measure: Measure): Vector => ({
  kind: "vector",
  x,
  y,
  z,
  measure,
})

export const isQuantity = (value: Value): value is Quantity =>
  value.kind === "scalar" || value.kind === "vector"

/** The same quantity with another measure. */
export const withMeasure = (value: Quantity, measure: Measure): Quantity =>
  value.measure === measure ? value : { ...value, measure }

/** As it is kept under a name: a number of a formula is then a number that may stand for anything. */
export const settled = (value: Value): Value =>
  isQuantity(value) && value.measure.kind === "plain" ? withMeasure(value, bare) : value

/** True, false, or null when it cannot be told. */
export function truth(value: Value): boolean | null {
  switch (value.kind) {
    case "scalar":
      return value.value !== 0 && !Number.isNaN(value.value)
    case "plain":
      return Boolean(value.value)
    case "unknown":
      return null
    default:
      return true
  }
}
