import type { Node } from "@babel/types"
import type { Emitter } from "../emit/emitter.ts"
import { made } from "./made.ts"
import { canSplit, Pieces, plain } from "./pieces.ts"
import { recordCall } from "./record.ts"
import { numberShape, vectorShape } from "./shape.ts"

const candidates = new Set([
  "BinaryExpression",
  "UnaryExpression",
  "ConditionalExpression",
  "CallExpression",
  "MemberExpression",
])

/** The text of an expression with vectors in it, component by component; null where it is no such expression. */
export function vectorExpression(e: Emitter, node: Node): string | null {
  if (e.o.split === null || !candidates.has(node.type)) return null
  if (node.type === "CallExpression") {
    const record = recordCall(e, node)
    if (record !== null) return record
  }
  const number = numberShape(e, node)
  if (number !== null) {
    if (number.kind === "component") {
      const object = plain(number.a)
      if (object.type === "Identifier") {
        const binding = e.o.scopes.references.get(object)?.binding
        const parts = binding && e.o.split.parts(binding)
        return parts ? parts[number.axis] : null
      }
      if (vectorShape(e, object) === null) return null
    }
    if (!canSplit(e, node)) return null
    const pieces = new Pieces(e)
    const value = pieces.numberOf(number)
    return `(${[...pieces.before, value].join(", ")})`
  }
  const shape = vectorShape(e, node)
  // a call that takes numbers to a vector is as short as it stands
  if (shape === null || shape.kind === "vec3" || !canSplit(e, node)) return null
  const pieces = new Pieces(e)
  const parts = pieces.vector(node)
  return `(${[...pieces.before, made(e, parts)].join(", ")})`
}
