import type { Node } from "@babel/types"
import type { Emitter } from "../emit/emitter.ts"
import { isFunction } from "../scopes.ts"
import { walk } from "../syntax.ts"
import { isLibrary } from "./split.ts"

const stirring = new Set(["AssignmentExpression", "UpdateExpression", "YieldExpression", "AwaitExpression"])

/**
 * Whether nothing inside an expression changes a name that the expression reads: then its numbers may be read when they are
 * needed and not in the order of the text.
 */
export function isCalm(e: Emitter, root: Node): boolean {
  const { scopes, known } = e.o
  let calm = true
  let calls = false
  const read: Node[] = []
  walk(root, node => {
    if (stirring.has(node.type)) calm = false
    if (isFunction(node)) return false
    if (node.type === "Identifier") read.push(node)
    if (node.type === "NewExpression" || node.type === "TaggedTemplateExpression") calls = true
    if (node.type === "CallExpression" || node.type === "OptionalCallExpression") {
      const { callee } = node
      const ofLibrary =
        isLibrary(callee, { scopes, known }) ||
        (callee.type === "MemberExpression" && isLibrary(callee.object, { scopes, known }))
      if (!ofLibrary) calls = true
    }
    return calm
  })
  if (!calm || !calls) return calm
  return read.every(node => {
    const binding = scopes.references.get(node)?.binding
    return !binding || binding.references.every(r => r.role === "read" || r.scope.home === binding.scope.home)
  })
}
