import type { Node } from "@babel/types"
import type { EndlessWords } from "../contract.ts"
import type { Binding, Scopes } from "../scopes.ts"
import { walk } from "../syntax.ts"

/**
 * What keeps a loop going if a run has to stop it: its condition, and which of the names in it nothing in the loop
 * changes. Told while the program is compiled, so that where it runs needs no parser. Undefined where nothing more
 * can be told than that it never ended.
 *
 * @param text the text that the loop's tree was read from
 */
export function endlessLoopWords(loop: Node, text: string, scopes: Scopes): EndlessWords | undefined {
  if (loop.type !== "WhileStatement" && loop.type !== "DoWhileStatement" && loop.type !== "ForStatement")
    return undefined
  if (!loop.test) {
    return {
      text: "This loop has no condition, and nothing inside ended it.",
      todo: "Give it a condition, such as while (t < tEnd), or leave it with break.",
    }
  }
  const condition = text.slice(loop.test.start!, loop.test.end!).replace(/\s+/g, " ")
  const names = conditionNames(loop.test, scopes)
  if (names === null) return undefined
  const still = names.filter(b => !changes(b, loop))
  const moving = names.filter(b => changes(b, loop))
  if (moving.length > 0) {
    return {
      text: `The loop went on and on: ${condition} stayed true, although ${list(moving)} ${moving.length === 1 ? "is" : "are"} given new values inside it.`,
      todo: `Print ${list(moving)} in the loop: ${moving.length === 1 ? "it may grow" : "they may move"} the wrong way, too slowly, or not at all.`,
    }
  }
  if (still.length === 0) {
    return {
      text: `The loop cannot end by itself: its condition ${condition} never changes.`,
      todo: "Put something into the condition that changes in the loop, or leave the loop with break.",
    }
  }
  return {
    text: `The loop cannot end: nothing inside it changes ${list(still, "or")}, so ${condition} stays true.`,
    todo: `Give ${still.length === 1 ? "it" : "one of them"} a new value at every turn, such as ${still[0]!.name} = ${still[0]!.name} + …`,
  }
}

/** Names in a condition; null where it calls something, since that may look at anything. */
function conditionNames(test: Node, scopes: Scopes): Binding[] | null {
  const names = new Set<Binding>()
  let plain = true
  walk(test, node => {
    if (node.type === "CallExpression") {
      const ofLibrary =
        node.callee.type === "MemberExpression" || scopes.references.get(node.callee)?.binding === null
      if (!ofLibrary) plain = false
    }
    const binding = node.type === "Identifier" ? scopes.references.get(node)?.binding : undefined
    if (binding) names.add(binding)
    return plain
  })
  return plain ? [...names] : null
}

/** Whether the loop, or a function that it could call, gives the name a value or changes a part of it. */
function changes(binding: Binding, loop: Node): boolean {
  return binding.references.some(r => {
    const within = r.node.start! >= loop.start! && r.node.end! <= loop.end!
    const inFunction = r.scope.home !== binding.scope.home
    if (!within && !inFunction) return false
    // what a const holds may change inside: a list that grows, an object whose part is written
    return r.role !== "read" || (r.parent.type === "MemberExpression" && binding.kind === "const")
  })
}

function list(bindings: readonly Binding[], word = "and"): string {
  const names = bindings.map(b => b.name)
  const last = names.pop()!
  return names.length === 0 ? last : `${names.join(", ")} ${word} ${last}`
}
