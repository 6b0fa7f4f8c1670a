import type { AssignmentExpression, BinaryExpression, VariableDeclarator } from "@babel/types"
import { operatorNames } from "../emit/dispatch.ts"
import type { Emitter } from "../emit/emitter.ts"
import { NUMBER, VECTOR } from "../infer.ts"
import { isCalm } from "./calm.ts"
import { made, type Parts } from "./made.ts"
import { Pieces, piecesOf } from "./pieces.ts"

/** `const p = …` of a split vector: its three numbers; null for any other declaration. */
export function splitDeclarator(e: Emitter, node: VariableDeclarator): string | null {
  const { id, init } = node
  const binding = id.type === "Identifier" && init ? e.o.scopes.declared.get(id) : undefined
  const parts = binding && e.o.split?.parts(binding)
  if (!parts || !init) return null
  const { before, x, y, z } = piecesOf(e, init)
  const first = before.length === 0 ? x : `(${[...before, x].join(", ")})`
  return `${parts.x} = ${first}, ${parts.y} = ${y}, ${parts.z} = ${z}`
}

/** `p = …` and `p += …` of a split vector; null for any other assignment. */
export function splitAssignment(e: Emitter, node: AssignmentExpression): string | null {
  if (node.left.type !== "Identifier") return null
  const binding = e.o.scopes.references.get(node.left)?.binding
  const parts = binding && e.o.split?.parts(binding)
  if (!parts) return null
  const { before, ...value } = node.operator === "=" ? piecesOf(e, node.right) : updated(e, node, parts)
  const steps = [...before, ...set(e, parts, value)]
  if (!e.o.split?.isUnused(node)) steps.push(made(e, parts))
  return `(${steps.join(", ")})`
}

/** The old vector changed by the right side. */
function updated(e: Emitter, node: AssignmentExpression, old: Parts): { before: readonly string[] } & Parts {
  const sign = node.operator.slice(0, -1)
  const kind = e.o.kinds.of(node.right)
  const pieces = new Pieces(e)
  const known = sign === "+" || sign === "-" ? kind === VECTOR : /^[*/]$/.test(sign) && kind === NUMBER
  if (!known || !isCalm(e, node.right)) {
    const text =
      sign in operatorNames
        ? `${e.o.hidden.of(operatorNames[sign]!)}(${made(e, old)}, ${e.argument(node.right)})`
        : `${made(e, old)} ${sign} (${e.emit(node.right)})`
    return { before: pieces.before, ...pieces.object(text) }
  }
  const whole = {
    type: "BinaryExpression",
    operator: sign,
    left: node.left,
    right: node.right,
  } as BinaryExpression
  return { ...pieces.vector(whole), before: pieces.before }
}

/** The three numbers set one after the other; through other names where a later one still needs an earlier one's old value. */
function set(e: Emitter, to: Parts, value: Parts): string[] {
  const tangled = value.y.includes(to.x) || value.z.includes(to.x) || value.z.includes(to.y)
  if (!tangled) return [`${to.x} = ${value.x}`, `${to.y} = ${value.y}`, `${to.z} = ${value.z}`]
  const x = e.temp()
  const y = e.temp()
  return [
    `${x} = ${value.x}`,
    `${y} = ${value.y}`,
    `${to.z} = ${value.z}`,
    `${to.x} = ${x}`,
    `${to.y} = ${y}`,
  ]
}
