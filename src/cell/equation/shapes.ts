import type { Annotation, Expression, FunctionNode, Statement, Target, Tree } from "../tree/index.ts"
import { libraryShapes } from "../units-run/library.ts"

export type Shape = "vector" | "scalar" | "unknown"

/** Which names of a program, and which keys of its objects, stand for vectors. */
export interface Shapes {
  readonly names: ReadonlyMap<string, Shape>
  readonly keys: ReadonlyMap<string, Shape>
}

const vectorMethods = new Set(["add", "subtract", "times", "over", "cross", "unit", "negated"])
/** Keys that hold vectors wherever a program has them (common practice, no source). */
const vectorKeys = new Set(["position", "momentum", "velocity", "acceleration", "force"])

/** Finds the vectors of a program by its annotations, initial values and the way values flow, in two passes. */
export function shapesOf(tree: Tree, vectors: Iterable<string> = []): Shapes {
  const names = new Map<string, Shape>([...vectors].map(name => [name, "vector"]))
  const keys = new Map<string, Shape>([...vectorKeys].map(key => [key, "vector"]))
  const types = new Map<string, Annotation>()
  const shapes = { names, keys }

  const learn = (map: Map<string, Shape>, name: string, shape: Shape): void => {
    if (shape !== "unknown" && map.get(name) !== "vector") map.set(name, shape)
  }
  const learnType = (annotation: Annotation, name: string | null): void => {
    const type = annotation.kind === "named" ? types.get(annotation.name) : annotation
    if (!type) return
    if (type.kind === "record") for (const [key, field] of type.fields) learnKey(key, field)
    else if (type.kind === "list") learnType(type.of, name)
    else if (name !== null && (type.kind === "vector" || type.kind === "scalar"))
      learn(names, name, type.kind)
  }
  const learnKey = (key: string, field: Annotation): void => {
    const inner = field.kind === "list" ? field.of : field
    if (inner.kind === "vector" || inner.kind === "scalar") learn(keys, key, inner.kind)
    else if (inner.kind === "record") learnType(inner, null)
  }
  const bind = (target: Target, shape: Shape, annotation: Annotation | null): void => {
    const name = target.kind === "variable" ? target.name : null
    if (annotation) learnType(annotation, name)
    if (name !== null && annotation?.kind !== "scalar") learn(names, name, shape)
    if (target.kind === "place" && target.expression.kind === "member")
      learn(keys, target.expression.property, shape)
    if (target.kind === "place" && target.expression.kind === "index") {
      const { object } = target.expression
      if (object.kind === "name") learn(names, object.name, shape)
    }
  }
  const follow = (fn: FunctionNode): void => {
    for (const parameter of fn.parameters) bind(parameter.target, "unknown", parameter.annotation)
    if (fn.name && fn.returns) learnType(fn.returns, fn.name)
    if (Array.isArray(fn.body)) for (const one of fn.body) statement(one)
    else expression(fn.body as Expression)
  }
  const expression = (e: Expression): void => {
    if (e.kind === "assign" && ["=", "+=", "-=", "*=", "/="].includes(e.op)) {
      bind(e.target, shapeOf(e.value, shapes), null)
      expression(e.value)
    } else if (e.kind === "function") follow(e.function)
    else if (e.kind === "object") {
      for (const entry of e.entries) {
        if (entry.kind !== "property") continue
        learn(keys, entry.key, shapeOf(entry.value, shapes))
        expression(entry.value)
      }
    } else if (e.kind === "array") for (const item of e.items) expression(item)
    else if (e.kind === "call") for (const item of e.args) expression(item)
  }
  const statement = (s: Statement): void => {
    switch (s.kind) {
      case "declare":
        for (const { target, annotation, value } of s.items) {
          bind(target, value ? shapeOf(value, shapes) : "unknown", annotation)
          if (value) expression(value)
        }
        break
      case "expression":
        expression(s.expression)
        break
      case "type":
        types.set(s.name, s.annotation)
        break
      case "functionDeclaration":
        follow(s.function)
        break
      case "forOf":
        bind(s.target, shapeOf(s.list, shapes), null)
        statement(s.body)
        break
      default:
        for (const inner of bodies(s)) statement(inner)
    }
  }
  for (let pass = 0; pass < 2; pass++) for (const one of tree.body) statement(one)
  return shapes
}

/** The statements directly inside a statement. */
export function bodies(s: Statement): readonly Statement[] {
  switch (s.kind) {
    case "block":
      return s.body
    case "if":
      return s.no ? [s.yes, s.no] : [s.yes]
    case "for":
      return s.init ? [s.init, s.body] : [s.body]
    case "forOf":
    case "forIn":
    case "while":
    case "do":
    case "labeled":
      return [s.body]
    case "switch":
      return s.cases.flatMap(one => one.body)
    case "try":
      return [s.body, s.handler, s.last].filter(one => one !== null)
    default:
      return []
  }
}

/** Whether an expression gives a vector, as far as can be told. */
export function shapeOf(e: Expression, shapes: Shapes): Shape {
  switch (e.kind) {
    case "number":
      return "scalar"
    case "name":
      return shapes.names.get(e.name) ?? "unknown"
    case "member":
      if (["x", "y", "z"].includes(e.property)) return "scalar"
      return shapes.keys.get(e.property) ?? "unknown"
    case "index":
      return shapeOf(e.object, shapes)
    case "array": {
      const [first] = e.items
      return first ? shapeOf(first, shapes) : "unknown"
    }
    case "unary":
      return e.op === "-" || e.op === "+" ? shapeOf(e.argument, shapes) : "scalar"
    case "as":
      return e.annotation.kind === "vector" ? "vector" : shapeOf(e.value, shapes)
    case "conditional":
      return either(shapeOf(e.yes, shapes), shapeOf(e.no, shapes))
    case "binary":
      if (e.op === "/") return shapeOf(e.left, shapes)
      if (["+", "-", "*", "??"].includes(e.op))
        return either(shapeOf(e.left, shapes), shapeOf(e.right, shapes))
      return "scalar"
    case "call":
      return callShape(e, shapes)
    case "assign":
      return shapeOf(e.value, shapes)
    default:
      return "unknown"
  }
}

const either = (a: Shape, b: Shape): Shape =>
  a === "vector" || b === "vector" ? "vector" : a === "scalar" && b === "scalar" ? "scalar" : "unknown"

function callShape(e: Extract<Expression, { kind: "call" }>, shapes: Shapes): Shape {
  const { callee } = e
  if (callee.kind === "name")
    return shapes.names.get(callee.name) ?? libraryShapes.get(callee.name) ?? "unknown"
  if (callee.kind !== "member") return "unknown"
  if (callee.object.kind === "name" && callee.object.name === "Math") return "scalar"
  if (vectorMethods.has(callee.property)) return "vector"
  return callee.property === "dot" || callee.property === "magnitude" ? "scalar" : "unknown"
}
