import type { Identifier, ObjectProperty } from "@babel/types"
import { made } from "../vectors/made.ts"
import type { Emitter } from "./emitter.ts"

/** A name, wherever it stands. One that may not be there yet is noted in the trace; a split vector is put together. */
export function name(e: Emitter, node: Identifier): string {
  const { emptyBlanks, hidden, scopes, split, trace } = e.o
  if (emptyBlanks.has(node.name)) return `${hidden.of("emptyBlank")}(${e.site(node, "blank")})`
  const reference = scopes.references.get(node)
  if (reference?.role === "read") {
    const parts = reference.binding && split?.parts(reference.binding)
    if (parts) return made(e, parts)
    if (trace && mayFail(e, node)) return `(${hidden.of("at")}(${e.site(node, "name")}), ${node.name})`
  }
  return e.gap(node.start!, node.end!)
}

/** Names that may not be there, or not yet. */
function mayFail(e: Emitter, node: Identifier): boolean {
  const reference = e.o.scopes.references.get(node)!
  const { binding } = reference
  if (binding === null) return !e.o.known.has(node.name)
  if (binding.kind !== "let" && binding.kind !== "const" && binding.kind !== "class") return false
  return node.start! < binding.node.start! || reference.scope.home !== binding.scope.home
}

/** `{ p }` becomes `{ p: … }` where the name is more than itself. */
export function property(e: Emitter, node: ObjectProperty): string {
  if (!node.shorthand) return e.copy(node)
  const { value } = node
  if (value.type === "AssignmentPattern") {
    const { right } = value
    return e.gap(value.start!, right.start!) + e.emit(right) + e.gap(right.end!, node.end!)
  }
  const given = e.emit(value)
  const plain = e.gap(node.start!, node.end!)
  return given === plain ? plain : `${plain}: ${given}`
}
