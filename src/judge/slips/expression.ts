import type { SyntaxNode } from "@lezer/common"
import { childrenOf, type Script, textOf } from "./script.ts"

export interface Binary {
  readonly node: SyntaxNode
  readonly left: SyntaxNode
  readonly operator: SyntaxNode
  readonly sign: string
  readonly right: SyntaxNode
}

export function binaryOf(script: Script, node: SyntaxNode): Binary | null {
  if (node.name !== "BinaryExpression") return null
  const [left, operator, right] = childrenOf(node)
  if (left === undefined || operator === undefined || right === undefined) return null
  return { node, left, operator, sign: textOf(script, operator), right }
}

/** The node inside any brackets around it. */
export function bare(node: SyntaxNode): SyntaxNode {
  let inner = node
  while (inner.name === "ParenthesizedExpression") {
    const inside = childrenOf(inner).find(child => child.name !== "(" && child.name !== ")")
    if (inside === undefined) return inner
    inner = inside
  }
  return inner
}

export interface Term {
  readonly node: SyntaxNode
  readonly negative: boolean
}

/** Terms of a sum, brackets opened only where the whole stands in them: a + b − c has three. */
export function termsOf(script: Script, node: SyntaxNode): Term[] {
  const binary = binaryOf(script, node)
  if (binary === null || (binary.sign !== "+" && binary.sign !== "-")) return [{ node, negative: false }]
  return [...termsOf(script, binary.left), { node: binary.right, negative: binary.sign === "-" }]
}

/** Factors of a product, divisors too: −k * s * (a / b) has −k, s, a, b. */
export function factorsOf(script: Script, node: SyntaxNode): SyntaxNode[] {
  const inner = bare(node)
  const binary = binaryOf(script, inner)
  if (binary !== null && (binary.sign === "*" || binary.sign === "/"))
    return [...factorsOf(script, binary.left), ...factorsOf(script, binary.right)]
  const negated = unaryMinusOf(script, inner)
  if (negated !== null) return factorsOf(script, negated)
  const call = callOf(script, inner)
  if (call !== null && call.object !== null && (call.name === "times" || call.name === "over"))
    return [...factorsOf(script, call.object), ...call.args.flatMap(arg => factorsOf(script, arg))]
  return [inner]
}

/** The operand of a unary minus, else null. */
export function unaryMinusOf(script: Script, node: SyntaxNode): SyntaxNode | null {
  if (node.name !== "UnaryExpression") return null
  const [operator, operand] = childrenOf(node)
  return operator !== undefined && operand !== undefined && textOf(script, operator) === "-" ? operand : null
}

export interface Call {
  readonly node: SyntaxNode
  /** name of the function or of the method */
  readonly name: string
  /** what a method is called on; null for a plain function and for Math.… */
  readonly object: SyntaxNode | null
  readonly args: readonly SyntaxNode[]
}

export function callOf(script: Script, node: SyntaxNode): Call | null {
  if (node.name !== "CallExpression") return null
  const [callee, list] = childrenOf(node)
  if (callee === undefined || list?.name !== "ArgList") return null
  const args = childrenOf(list).filter(child => !["(", ")", ","].includes(child.name))
  if (callee.name === "VariableName") return { node, name: textOf(script, callee), object: null, args }
  const member = memberOf(script, callee)
  if (member === null) return null
  const math = textOf(script, member.object) === "Math"
  return {
    node,
    name: math ? `Math.${member.property}` : member.property,
    object: math ? null : member.object,
    args,
  }
}

export function memberOf(script: Script, node: SyntaxNode): { object: SyntaxNode; property: string } | null {
  if (node.name !== "MemberExpression") return null
  const [object, , property] = childrenOf(node)
  if (object === undefined || property?.name !== "PropertyName") return null
  return { object, property: textOf(script, property) }
}

export interface Assignment {
  readonly node: SyntaxNode
  readonly target: string
  readonly operator: SyntaxNode
  /** "=", "+=", "-=" … */
  readonly sign: string
  readonly value: SyntaxNode
}

/** `x = …`, `x += …`, and `const x = …` alike. */
export function assignmentOf(script: Script, node: SyntaxNode): Assignment | null {
  const children = childrenOf(node)
  if (node.name === "AssignmentExpression") {
    const [target, operator, value] = children
    if (target === undefined || operator === undefined || value === undefined) return null
    return { node, target: textOf(script, target), operator, sign: textOf(script, operator), value }
  }
  if (node.name === "VariableDeclaration") {
    const target = children.find(child => child.name === "VariableDefinition")
    const equals = children.findIndex(child => child.name === "Equals")
    const value = children[equals + 1]
    if (target === undefined || equals < 0 || value === undefined) return null
    return { node, target: textOf(script, target), operator: children[equals]!, sign: "=", value }
  }
  return null
}

export const isNumber = (node: SyntaxNode): boolean => node.name === "Number"
export const isName = (script: Script, node: SyntaxNode, name: string): boolean =>
  node.name === "VariableName" && textOf(script, node) === name

/** Whether a name is read anywhere inside a node. */
export function mentions(script: Script, node: SyntaxNode, wanted: (name: string) => boolean): boolean {
  let seen = false
  node.cursor().iterate(ref => {
    if (ref.name === "VariableName" && wanted(script.text.slice(ref.from, ref.to))) seen = true
    return !seen
  })
  return seen
}

/** The statement that a node belongs to. */
export function statementOf(node: SyntaxNode): SyntaxNode {
  let at = node
  while (at.parent !== null && !/Statement$|^VariableDeclaration$/.test(at.name)) at = at.parent
  return at
}
