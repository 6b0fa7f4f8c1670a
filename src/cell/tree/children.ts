import type { SyntaxNode } from "@lezer/common"

const comments = new Set(["LineComment", "BlockComment"])
const closing = new Set([")", "]", "}", ";"])

/** The children of a syntax node, comments left out. */
export function children(node: SyntaxNode): SyntaxNode[] {
  const found: SyntaxNode[] = []
  for (let child = node.firstChild; child; child = child.nextSibling)
    if (!comments.has(child.name)) found.push(child)
  return found
}

/** Children without brackets, commas and semicolons. */
export const parts = (node: SyntaxNode): SyntaxNode[] =>
  children(node).filter(child => !"()[]{},;".includes(child.name))

/** Whether something is missing or too much directly inside a node; a closing bracket or semicolon at its end may be. */
export function broken(node: SyntaxNode): boolean {
  for (let child = node.firstChild; child; child = child.nextSibling)
    if (child.type.isError && !(child.from === child.to && !child.nextSibling && closing.has(opened(node))))
      return true
  return false
}

/** What a node that opened a bracket must end with. */
function opened(node: SyntaxNode): string {
  const first = node.firstChild?.name
  return first === "(" ? ")" : first === "[" ? "]" : first === "{" ? "}" : ""
}
