import type {
  AssignmentExpression,
  MemberExpression,
  Node,
  UpdateExpression,
  VariableDeclarator,
} from "@babel/types"
import { isFunction } from "../scopes.ts"
import { splitAssignment, splitDeclarator } from "../vectors/assign.ts"
import { checkedTarget } from "./calls.ts"
import { dispatched, operatorNames } from "./dispatch.ts"
import type { Emitter } from "./emitter.ts"
import { isAnonymous } from "./functions.ts"
import { isOurs } from "./operators.ts"

export function assignment(e: Emitter, node: AssignmentExpression): string {
  const split = splitAssignment(e, node)
  if (split !== null) return split
  if (node.operator === "=") {
    if (!e.o.trace || isAnonymous(node.right)) return e.copy(node)
    return e.copy(node, child =>
      child === node.right ? e.noted(node, "assignment", e.argument(child)) : null,
    )
  }
  return e.noted(node, "update", updated(e, node))
}

/** `x += …` and the like. */
function updated(e: Emitter, node: AssignmentExpression): string {
  const sign = node.operator.slice(0, -1)
  if (!(sign in operatorNames)) return e.copy(node)
  const target = unwrapped(node.left)
  const right = (): string => e.noted(node, `operator ${sign}`, e.argument(node.right))
  if (!isOurs(e, sign, target, node.right))
    return e.copy(node, child => (child === node.right ? right() : null))
  const value = (old: string): string =>
    dispatched(e, sign, { node: target, text: old }, { node: node.right, text: right() })
  if (target.type === "Identifier") return `${target.name} = ${value(target.name)}`
  return target.type === "MemberExpression" ? memberUpdate(e, target, value) : e.copy(node)
}

/** `n++` where nobody takes its value: in the trace the number counted to is noted. */
export function countUnused(e: Emitter, node: UpdateExpression): string {
  const { argument } = node
  if (!e.o.trace || argument.type !== "Identifier") return e.emit(node)
  return `(${e.emit(node)}, ${e.noted(node, "update", argument.name)})`
}

/** `o[k] = add(o[k], …)` with o and k evaluated once, before anything else. */
function memberUpdate(e: Emitter, target: MemberExpression, value: (old: string) => string): string {
  const { object, property } = target
  const before: [string, string][] = []
  const hold = (node: Node): string => {
    if (isSteady(e, node)) return e.argument(node)
    const given = e.argument(node)
    const name = e.temp() ?? e.looseName()
    before.push([name, given])
    return name
  }
  const fixed = checkedTarget(e, target)
  const framed = e.frame !== null
  const owner = object.type === "Super" ? "super" : hold(object)
  const key = target.computed ? `[${hold(property)}]` : `.${e.o.text.slice(property.start!, property.end!)}`
  const seen = owner === "super" ? owner : e.noted(target, "member", owner)
  const written = fixed === null ? owner : `${e.o.hidden.of("mutable")}(${owner}${fixed})`
  const whole = `${written}${key} = ${value(`${seen}${key}`)}`
  if (before.length === 0) return whole
  if (framed) return `(${before.map(([n, v]) => `${n} = ${v}`).join(", ")}, ${whole})`
  return `((${before.map(([n]) => n).join(", ")}) => ${whole})(${before.map(([, v]) => v).join(", ")})`
}

/** A name that still means the same object after anything else ran. */
function isSteady(e: Emitter, node: Node): boolean {
  if (node.type === "ThisExpression" || node.type === "NumericLiteral" || node.type === "StringLiteral")
    return true
  if (node.type !== "Identifier") return false
  const binding = e.o.scopes.references.get(node)?.binding
  if (!binding || binding.kind === "var" || e.o.split?.parts(binding)) return false
  return binding.references.every(r => r.role === "read")
}

export function declarator(e: Emitter, node: VariableDeclarator): string {
  const split = splitDeclarator(e, node)
  if (split !== null) return split
  const { init, id } = node
  if (!init) return e.copy(node)
  const { scopes, timeStep, hidden } = e.o
  const binding = id.type === "Identifier" ? scopes.declared.get(id) : undefined
  const isTimeStep =
    binding?.name === timeStep &&
    binding.scope === scopes.program &&
    (binding.kind === "const" || binding.kind === "let") &&
    !isFunction(init)
  return e.copy(node, child => {
    if (child !== init) return null
    const value = isTimeStep ? `${hidden.of("timeStep")}(${e.argument(init)})` : e.argument(init)
    return isAnonymous(init) ? value : e.noted(node, "assignment", value)
  })
}

function unwrapped(node: Node): Node {
  switch (node.type) {
    case "TSAsExpression":
    case "TSSatisfiesExpression":
    case "TSNonNullExpression":
    case "TSTypeAssertion":
    case "ParenthesizedExpression":
      return unwrapped(node.expression)
    default:
      return node
  }
}
