import type { BinaryExpression, Node, UnaryExpression } from "@babel/types"
import { dispatched, operatorNames } from "./dispatch.ts"
import type { Emitter } from "./emitter.ts"

/** Whether an operator must be ours: where a vector may come, and always for powers, whose last bit differs between engines. */
export const isOurs = (e: Emitter, sign: string, left: Node, right: Node): boolean =>
  sign in operatorNames && (sign === "**" || !e.withoutVector(left, right))

export function binary(e: Emitter, node: BinaryExpression): string {
  const { left, right, operator } = node
  if (left.type === "PrivateName") return e.copy(node)
  if (!isOurs(e, operator, left, right)) return plain(e, node)
  const value = e.noted(node, `operator ${operator}`, e.argument(right))
  return dispatched(e, operator, { node: left, text: e.argument(left) }, { node: right, text: value })
}

/** JavaScript's own operator, with space around it: some signs side by side would read as a remark. */
function plain(e: Emitter, node: BinaryExpression): string {
  const { left, right, operator } = node
  const sign = e.gap(left.end!, right.start!).replace(operator, ` ${operator} `)
  const value = e.o.trace ? e.noted(node, `operator ${operator}`, e.argument(right)) : e.emit(right)
  return e.gap(node.start!, left.start!) + e.emit(left) + sign + value + e.gap(right.end!, node.end!)
}

export function unary(e: Emitter, node: UnaryExpression): string {
  const { argument, operator } = node
  // typeof may ask for a name that is not there: it is not noted as a name
  if (operator === "typeof" && argument.type === "Identifier" && e.o.trace)
    return e.gap(node.start!, node.end!)
  if (operator === "-" && !e.withoutVector(argument)) {
    return `${e.o.hidden.of("negate")}(${e.noted(node, "operator -", e.argument(argument))})`
  }
  return e.o.trace && operator !== "delete" && operator !== "typeof"
    ? e.copy(node, child => e.noted(node, `operator ${operator}`, e.argument(child)))
    : e.copy(node)
}
