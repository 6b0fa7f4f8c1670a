import type { Node, TryStatement } from "@babel/types"
import type { Emitter } from "./emitter.ts"
import { block } from "./statements.ts"

/*
 * How deep calls go before the engine's stack is full is chance, so no program may catch that and go on. Each place that
 * catches asks the host first. The question is itself a call and may find no room: therefore it is counted around the
 * call, in the program's own text, and a count that stays open is found at the next place with room, or at the end.
 */

/** Asks the host whether what was thrown may be caught. */
function question(e: Emitter, node: Node, thrown: string): string {
  const asked = e.o.hidden.of("asked")
  return `${asked}++; ${e.o.hidden.of("caught")}(${thrown}, ${e.site(node, "try")}, ${asked}); ${asked}--;`
}

/** Statements whose error is looked at by the host on its way out. */
export function watched(e: Emitter, node: Node, statements: string): string {
  const thrown = e.looseName()
  return `try { ${statements}} catch (${thrown}) { ${question(e, node, thrown)} throw ${thrown}; }`
}

export function attempt(e: Emitter, node: TryStatement): string {
  const { handler, finalizer } = node
  const last = finalizer ? ` finally ${e.emit(finalizer)}` : ""
  if (!handler) return `${watched(e, node, `${e.emit(node.block)}\n`)}${last}`
  const { param, body } = handler
  const head = `try ${e.emit(node.block)}`
  if (param?.type === "Identifier") {
    const inside = block(e, body.body, question(e, node, param.name))
    return `${head} catch (${e.emit(param)}) ${inside}${last}`
  }
  // a pattern takes the error apart, which may run code of the program's: the question comes before
  const thrown = e.looseName()
  const inside = param ? `let ${e.emit(param)} = ${thrown}; ${e.emit(body)}` : e.emit(body)
  return `${head} catch (${thrown}) { ${question(e, node, thrown)} ${inside} }${last}`
}
