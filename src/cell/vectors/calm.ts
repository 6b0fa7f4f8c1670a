import type { Node } from "@babel/types"
import type { Emitter } from "../emit/emitter.ts"
import { isFunction } from "../scopes.ts"
import { childrenOf, walk } from "../syntax.ts"
import { isLibrary } from "./split.ts"

const changes = 1
const callsOthers = 2

const stirring = new Set(["AssignmentExpression", "UpdateExpression", "YieldExpression", "AwaitExpression"])
const calling = new Set([
  "CallExpression",
  "OptionalCallExpression",
  "NewExpression",
  "TaggedTemplateExpression",
])

/** Nodes with nothing below them that could change anything. */
const still = new Set(["Identifier", "NumericLiteral", "StringLiteral", "BooleanLiteral", "NullLiteral"])

/** What was found out about a node, so that an expression within an expression is not looked through twice. */
const known = new WeakMap<Node, number>()

/**
 * Whether nothing inside an expression changes a name that the expression reads: then its numbers may be read when they are
 * needed and not in the order of the text.
 */
export function isCalm(e: Emitter, root: Node): boolean {
  const found = stir(e, root)
  if (found & changes) return false
  return (found & callsOthers) === 0 || namesOf(root).every(node => !isChangedElsewhere(e, node))
}

function stir(e: Emitter, node: Node): number {
  if (still.has(node.type)) return 0
  const before = known.get(node)
  if (before !== undefined) return before
  let found = stirring.has(node.type) ? changes : 0
  if (calling.has(node.type) && !isLibraryCall(e, node)) found |= callsOthers
  if (!isFunction(node)) for (const child of childrenOf(node)) found |= stir(e, child)
  known.set(node, found)
  return found
}

function isLibraryCall(e: Emitter, node: Node): boolean {
  if (node.type !== "CallExpression" && node.type !== "OptionalCallExpression") return false
  const { callee } = node
  return isLibrary(callee, e.o) || (callee.type === "MemberExpression" && isLibrary(callee.object, e.o))
}

function namesOf(root: Node): Node[] {
  const names: Node[] = []
  walk(root, node => {
    if (node.type === "Identifier") names.push(node)
    return !isFunction(node)
  })
  return names
}

function isChangedElsewhere(e: Emitter, node: Node): boolean {
  const binding = e.o.scopes.references.get(node)?.binding
  return binding?.references.some(r => r.role !== "read" && r.scope.home !== binding.scope.home) ?? false
}
