import type {
  CallExpression,
  MemberExpression,
  NewExpression,
  Node,
  OptionalCallExpression,
  OptionalMemberExpression,
} from "@babel/types"
import type { Emitter } from "./emitter.ts"
import { name } from "./names.ts"

/** A call; in the trace its last argument is handed through a note, so that nothing is evaluated twice or in another order. */
export function call(e: Emitter, node: CallExpression | OptionalCallExpression): string {
  const args = node.arguments
  const last = args[args.length - 1]
  if (!e.o.trace) return e.copy(node)
  if (node.type === "OptionalCallExpression") {
    return e.copy(node, child => (child === last ? lastArgument(e, node, child) : null))
  }
  const { callee } = node
  const given = args.map(a => (a === last ? lastArgument(e, node, a) : e.argument(a))).join(", ")
  if (callee.type === "Super" || callee.type === "Import")
    return `${e.gap(callee.start!, callee.end!)}(${given})`
  if (callee.type === "MemberExpression") {
    return `${member(e, callee, args.length === 0 ? node : callee)}(${given})`
  }
  if (callee.type === "Identifier") {
    const called = name(e, callee)
    return args.length > 0 ? `${called}(${given})` : `${e.noted(node, "call", called)}()`
  }
  if (isPlainCallee(callee)) return `(${e.emit(callee)})(${given})`
  return e.copy(node, child => (child === last ? lastArgument(e, node, child) : null))
}

const isPlainCallee = (node: Node): boolean =>
  node.type === "CallExpression" ||
  node.type === "FunctionExpression" ||
  node.type === "ArrowFunctionExpression"

function lastArgument(e: Emitter, whole: Node, node: Node): string {
  if (node.type === "SpreadElement") return `...${e.noted(whole, "call", e.argument(node.argument))}`
  return e.noted(whole, "call", e.argument(node))
}

export function construct(e: Emitter, node: NewExpression): string {
  if (!e.o.trace) return e.copy(node)
  const args = node.arguments
  if (args.length === 0) return `new (${e.noted(node, "call", e.argument(node.callee))})()`
  const last = args[args.length - 1]
  const given = args.map(a => (a === last ? lastArgument(e, node, a) : e.argument(a))).join(", ")
  return `new (${e.argument(node.callee)})(${given})`
}

/** A link of a chain with ?. in it: noting its object would end the chain too early. */
const isChain = (node: Node): boolean =>
  (node.type === "OptionalMemberExpression" || node.type === "OptionalCallExpression") &&
  node.extra?.parenthesized !== true

/** @param whole what the note stands for: the member itself, or the call that it is the function of */
export function member(
  e: Emitter,
  node: MemberExpression | OptionalMemberExpression,
  whole: Node = node,
): string {
  const { object, property } = node
  const fixed = e.o.scopes.targets.has(node) ? checkedTarget(e, node) : null
  return e.copy(node, child => {
    if (child === property && !node.computed) return e.gap(child.start!, child.end!)
    if (child !== object) return null
    const value = fixed === null ? null : `${e.o.hidden.of("mutable")}(${e.argument(object)}${fixed})`
    if (!e.o.trace || object.type === "Super" || object.type === "ThisExpression" || isChain(object))
      return value
    return e.noted(whole, whole === node ? "member" : "call", value ?? e.argument(object))
  })
}

/** Vectors never change: what may be a vector is looked at before a part of it is written. Null where it cannot be one. */
export function checkedTarget(e: Emitter, node: MemberExpression | OptionalMemberExpression): string | null {
  const { object, property } = node
  if (object.type === "Super" || object.type === "ThisExpression" || e.withoutVector(object)) return null
  if (node.computed) return ""
  return property.type === "Identifier" && /^[xyz]$/.test(property.name) ? `, "${property.name}"` : null
}
