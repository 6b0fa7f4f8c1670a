import type { ArrowFunctionExpression, Expression, Function as FunctionNode } from "@babel/types"
import { childrenOf } from "../syntax.ts"
import { watched } from "./catches.ts"
import type { Emitter } from "./emitter.ts"
import { declareTemps, openFrame } from "./frame.ts"
import { openQuestions } from "./questions.ts"
import { list } from "./statements.ts"

/** A function of any kind; each call counts as a turn. An async one catches its errors without a word. */
export function functionOf(e: Emitter, node: FunctionNode): string {
  // no call of it is noted: the stretch itself tells whoever follows values which lines stand in a function
  if (e.o.trace) e.site(node, "function body")
  if (node.type === "ArrowFunctionExpression" && node.body.type !== "BlockStatement") return arrow(e, node)
  const { body } = node
  if (body?.type !== "BlockStatement") return e.copy(node)
  return e.copy(node, child => {
    if (child !== body) return child.type === "Decorator" ? null : e.inFrame(null, () => e.emit(child))
    const inner = openFrame()
    const inside = e.inFrame(inner, () => list(e, body.body))
    const guard = e.guard(node.start!, e.trimmedEnd(node.start!, body.start!), "function")
    const all = `${guard}\n${inside}`
    return `{ ${declareTemps(inner)}${node.async ? watched(e, node, all) : all}}`
  })
}

/** `x => value`: the turn is counted before the value. */
function arrow(e: Emitter, node: ArrowFunctionExpression): string {
  const { hidden } = e.o
  let head = ""
  let from = node.start!
  for (const child of childrenOf(node)) {
    head += e.gap(from, child.start!)
    if (child === node.body) break
    head += e.inFrame(null, () => e.emit(child))
    from = child.end!
  }
  // brackets around the value stand in the gap before it: it gets its own
  head = head.replace(/[\s(]+$/, "")
  const inner = openFrame()
  const value = e.inFrame(inner, () => e.argument(node.body))
  const site = e.o.site(node.start!, Math.min(node.body.start!, node.start! + head.length), "function")
  const over = `++${hidden.of("turns")} > ${hidden.of("max")} && ${hidden.of("overrun")}(${site}${openQuestions(e.o)})`
  if (node.async) return `${head} { ${declareTemps(inner)}${watched(e, node, `${over}; return ${value}; `)} }`
  return inner.temps.length === 0
    ? `${head} (${over}, ${value})`
    : `${head} { ${declareTemps(inner)}${over}; return ${value}; }`
}

/** Functions and classes take their name from what they are given to; handing them through a call would lose it. */
export function isAnonymous(node: Expression): boolean {
  return (
    node.type === "ArrowFunctionExpression" ||
    (node.type === "FunctionExpression" && !node.id) ||
    (node.type === "ClassExpression" && !node.id)
  )
}
