import type { SyntaxNode } from "@lezer/common"
import {
  type Assignment,
  assignmentOf,
  bare,
  binaryOf,
  callOf,
  isName,
  termsOf,
  unaryMinusOf,
} from "./expression.ts"
import type { Role, Roles } from "./roles.ts"
import { childrenOf, type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"

/** Assignments inside the blank whose target has one of these roles. */
export function updatesOf(script: Script, roles: Roles, ...wanted: readonly Role[]): Assignment[] {
  return nodesIn(script, "AssignmentExpression", "VariableDeclaration")
    .map(node => assignmentOf(script, node))
    .filter(found => found !== null)
    .filter(found => wanted.includes(roles.role(found.target.split(".")[0]!)))
}

/** Puts `kept`, an operand of `whole`, in the place of the whole. */
export const keepOnly = (script: Script, whole: SyntaxNode, kept: SyntaxNode): Edit =>
  replace(whole, textOf(script, kept))

/** For each product or quotient in the blank that has an operand of the wanted kind: the edit that leaves it out. */
export function dropFactor(script: Script, wanted: (node: SyntaxNode) => boolean, divisors = true): Edit[] {
  const edits: Edit[] = []
  for (const node of nodesIn(script, "BinaryExpression")) {
    const binary = binaryOf(script, node)
    if (binary === null || (binary.sign !== "*" && binary.sign !== "/")) continue
    if (wanted(bare(binary.right)) && (binary.sign === "*" || divisors))
      edits.push(keepOnly(script, node, binary.left))
    if (binary.sign !== "*") continue
    if (wanted(bare(binary.left))) edits.push(keepOnly(script, node, binary.right))
    // −a * b is (−a) * b in the tree: the sign stays.
    const negated = unaryMinusOf(script, bare(binary.left))
    if (negated !== null && wanted(bare(negated)))
      edits.push(replace(node, `-(${textOf(script, binary.right)})`))
  }
  for (const node of nodesIn(script, "CallExpression")) {
    const call = callOf(script, node)
    if (call === null || call.object === null || call.args.length !== 1) continue
    if ((call.name === "times" || (call.name === "over" && divisors)) && wanted(bare(call.args[0]!)))
      edits.push(keepOnly(script, node, call.object))
  }
  return edits
}

/** A sum without one of its terms. */
export function withoutTerm(script: Script, node: SyntaxNode, index: number): Edit {
  const terms = termsOf(script, node).filter((_, i) => i !== index)
  const text = terms
    .map(({ node: term, negative }, i) =>
      i === 0
        ? negative
          ? `-${textOf(script, term)}`
          : textOf(script, term)
        : `${negative ? " - " : " + "}${textOf(script, term)}`,
    )
    .join("")
  return replace(node, text)
}

/** Turns the sign of a whole expression: takes a leading minus away, or puts one. */
export function turned(script: Script, node: SyntaxNode): Edit {
  const inner = bare(node)
  const operand = unaryMinusOf(script, inner)
  if (operand !== null) return replace(inner, textOf(script, operand))
  const first = leadingMinus(script, inner)
  if (first !== null) return replace(first.node, textOf(script, first.operand))
  return replace(node, `-(${textOf(script, node)})`)
}

/** The minus that stands at the head of a product: −a * b is (−a) * b in the tree. */
function leadingMinus(script: Script, node: SyntaxNode): { node: SyntaxNode; operand: SyntaxNode } | null {
  const binary = binaryOf(script, node)
  if (binary === null || (binary.sign !== "*" && binary.sign !== "/")) return null
  const operand = unaryMinusOf(script, binary.left)
  return operand === null ? leadingMinus(script, binary.left) : { node: binary.left, operand }
}

/** What an update adds to its own target, as terms: p = p + a + b and p += a + b both give a, b. */
export function addedTo(
  script: Script,
  update: Assignment,
): { whole: SyntaxNode; own: SyntaxNode | null } | null {
  if (update.sign === "+=" || update.sign === "-=") return { whole: update.value, own: null }
  if (update.sign !== "=") return null
  const own = termsOf(script, bare(update.value)).find(term => isName(script, bare(term.node), update.target))
  return own === undefined ? null : { whole: bare(update.value), own: own.node }
}

/** The topmost sums in the blank that are not part of a larger sum. */
export function sumsIn(script: Script): SyntaxNode[] {
  return nodesIn(script, "BinaryExpression").filter(node => {
    const binary = binaryOf(script, node)
    if (binary === null || (binary.sign !== "+" && binary.sign !== "-")) return false
    const above = node.parent === null ? null : binaryOf(script, node.parent)
    return above === null || (above.sign !== "+" && above.sign !== "-") || above.left.from !== node.from
  })
}

export interface Choice {
  readonly node: SyntaxNode
  readonly condition: SyntaxNode
  readonly then: SyntaxNode
  readonly otherwise: SyntaxNode | null
}

/** `if` statements and conditional expressions in the blank. */
export function choicesIn(script: Script): Choice[] {
  return nodesIn(script, "IfStatement", "ConditionalExpression").flatMap(node => {
    const parts = childrenOf(node)
    if (node.name === "ConditionalExpression") {
      const [condition, , then, , otherwise] = parts
      return condition && then && otherwise ? [{ node, condition, then, otherwise }] : []
    }
    const condition = parts.find(part => part.name === "ParenthesizedExpression")
    const branches = parts.filter(part => part.name === "Block" || /Statement$/.test(part.name))
    const [then, otherwise] = branches
    return condition && then ? [{ node, condition, then, otherwise: otherwise ?? null }] : []
  })
}

/** Each edit alone, and all together where they do not overlap. */
export function eachAndAll(edits: readonly Edit[]): Edit[][] {
  const alone = edits.map(edit => [edit])
  const apart = edits.every((a, i) => edits.every((b, j) => i === j || a.to <= b.from || b.to <= a.from))
  return edits.length > 1 && apart ? [...alone, [...edits]] : alone
}
