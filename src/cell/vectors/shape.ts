import type { CallExpression, Node } from "@babel/types"
import type { Emitter } from "../emit/emitter.ts"
import { NUMBER, VECTOR } from "../infer.ts"
import { isLibrary } from "./split.ts"

/** An expression whose value is a vector and which can be written out component by component. */
export type VectorShape =
  | {
      readonly kind: "sum"
      readonly sign: "+" | "-"
      readonly a: Node
      readonly b: Node
      readonly node: Node
    }
  | {
      readonly kind: "product"
      readonly a: Node
      readonly b: Node
      readonly vectorFirst: boolean
      readonly node: Node
    }
  | {
      readonly kind: "quotient"
      readonly a: Node
      readonly b: Node
      readonly checked: boolean
      readonly node: Node
    }
  | { readonly kind: "opposite"; readonly a: Node }
  | { readonly kind: "choice"; readonly test: Node; readonly a: Node; readonly b: Node }
  | { readonly kind: "vec3"; readonly values: readonly Node[] }
  | { readonly kind: "cross"; readonly a: Node; readonly b: Node; readonly method: boolean }
  | { readonly kind: "unit"; readonly a: Node; readonly method: boolean }

/** An expression whose value is a number made of vectors. */
export type NumberShape =
  | { readonly kind: "dot"; readonly a: Node; readonly b: Node; readonly method: boolean }
  | { readonly kind: "magnitude"; readonly a: Node; readonly method: boolean }
  | { readonly kind: "distance"; readonly a: Node; readonly b: Node }
  | { readonly kind: "component"; readonly a: Node; readonly axis: "x" | "y" | "z" }

export function vectorShape(e: Emitter, node: Node): VectorShape | null {
  const { kinds } = e.o
  const isVector = (n: Node): boolean => kinds.of(n) === VECTOR
  const isNumber = (n: Node): boolean => kinds.of(n) === NUMBER
  switch (node.type) {
    case "BinaryExpression": {
      const { left: a, right: b, operator: sign } = node
      if (a.type === "PrivateName") return null
      if (sign === "+" || sign === "-")
        return isVector(a) && isVector(b) ? { kind: "sum", sign, a, b, node } : null
      if (sign === "*" && isVector(a) && isNumber(b))
        return { kind: "product", a: b, b: a, vectorFirst: true, node }
      if (sign === "*" && isNumber(a) && isVector(b))
        return { kind: "product", a, b, vectorFirst: false, node }
      return sign === "/" && isVector(a) && isNumber(b)
        ? { kind: "quotient", a, b, checked: true, node }
        : null
    }
    case "UnaryExpression":
      return node.operator === "-" && isVector(node.argument) ? { kind: "opposite", a: node.argument } : null
    case "ConditionalExpression":
      return isVector(node.consequent) && isVector(node.alternate)
        ? { kind: "choice", test: node.test, a: node.consequent, b: node.alternate }
        : null
    case "CallExpression":
      return vectorCall(e, node, isVector, isNumber)
    default:
      return null
  }
}

type Test = (node: Node) => boolean

function vectorCall(e: Emitter, node: CallExpression, isVector: Test, isNumber: Test): VectorShape | null {
  const { callee, arguments: args } = node
  const [p, q] = args
  if (callee.type === "Identifier" && isLibrary(callee, e.o)) {
    if (callee.name === "vec3" && args.length === 3 && args.every(isNumber))
      return { kind: "vec3", values: args }
    if (callee.name === "cross" && args.length === 2 && args.every(isVector)) {
      return { kind: "cross", a: p!, b: q!, method: false }
    }
    return callee.name === "unit" && args.length === 1 && isVector(p!)
      ? { kind: "unit", a: p!, method: false }
      : null
  }
  if (callee.type !== "MemberExpression" || callee.computed || callee.property.type !== "Identifier")
    return null
  const a = callee.object
  if (!isVector(a)) return null
  switch (`${callee.property.name} ${args.length}`) {
    case "add 1":
    case "subtract 1":
      if (!isVector(p!)) return null
      return { kind: "sum", sign: callee.property.name === "add" ? "+" : "-", a, b: p!, node }
    case "times 1":
      return isNumber(p!) ? { kind: "product", a: p!, b: a, vectorFirst: true, node } : null
    case "over 1":
      return isNumber(p!) ? { kind: "quotient", a, b: p!, checked: false, node } : null
    case "cross 1":
      return isVector(p!) ? { kind: "cross", a, b: p!, method: true } : null
    case "unit 0":
      return { kind: "unit", a, method: true }
    case "negated 0":
      return { kind: "opposite", a }
    default:
      return null
  }
}

export function numberShape(e: Emitter, node: Node): NumberShape | null {
  const isVector = (n: Node | undefined): boolean => n !== undefined && e.o.kinds.of(n) === VECTOR
  if (node.type === "MemberExpression") {
    const { object, property, computed } = node
    if (computed || property.type !== "Identifier" || e.o.scopes.targets.has(node) || !isVector(object))
      return null
    const axis = property.name
    return axis === "x" || axis === "y" || axis === "z" ? { kind: "component", a: object, axis } : null
  }
  if (node.type !== "CallExpression") return null
  const { callee, arguments: args } = node
  const [p, q] = args
  if (callee.type === "Identifier" && isLibrary(callee, e.o)) {
    if (callee.name === "magnitude" && args.length === 1 && isVector(p))
      return { kind: "magnitude", a: p!, method: false }
    if (args.length !== 2 || !isVector(p) || !isVector(q)) return null
    if (callee.name === "dot") return { kind: "dot", a: p!, b: q!, method: false }
    return callee.name === "distance" ? { kind: "distance", a: p!, b: q! } : null
  }
  if (callee.type !== "MemberExpression" || callee.computed || callee.property.type !== "Identifier")
    return null
  const a = callee.object
  if (!isVector(a)) return null
  if (callee.property.name === "magnitude" && args.length === 0) return { kind: "magnitude", a, method: true }
  return callee.property.name === "dot" && args.length === 1 && isVector(p)
    ? { kind: "dot", a, b: p!, method: true }
    : null
}
