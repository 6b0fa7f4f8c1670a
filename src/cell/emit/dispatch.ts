import type { Node } from "@babel/types"
import { NUMBER } from "../infer.ts"
import type { Emitter } from "./emitter.ts"

/** The operators that know vectors, by the name of their function. */
export const operatorNames: Readonly<Record<string, string>> = {
  "+": "add",
  "-": "subtract",
  "*": "multiply",
  "/": "divide",
  "**": "power",
}

export interface Operand {
  readonly node: Node
  readonly text: string
}

/**
 * An operator that knows vectors. In the fast text two numbers are looked at on the spot and everything else is left to the
 * function: an engine that has many operators in one loop stops putting functions in place after a while.
 */
export function dispatched(e: Emitter, sign: string, a: Operand, b: Operand): string {
  const called = (x: string, y: string): string => `${e.o.hidden.of(operatorNames[sign]!)}(${x}, ${y})`
  if (e.o.trace || e.o.split === null || sign === "**" || e.frame === null) return called(a.text, b.text)
  const number = (o: Operand): boolean => e.o.kinds.of(o.node) === NUMBER
  if (neverNumbers(e, a) || neverNumbers(e, b)) return called(a.text, b.text)
  const before: string[] = []
  const word = (o: Operand, other: Operand): string => {
    if (isStill(e, o) || (isName(o) && (isStill(e, other) || isName(other)))) return o.text
    const name = e.temp()!
    before.push(`${name} = ${o.text}`)
    return name
  }
  const x = word(a, b)
  const y = word(b, a)
  const tests = [a, b].flatMap((o, i) => (number(o) ? [] : [`typeof ${i === 0 ? x : y} === "number"`]))
  const plain = `${x} ${sign} ${y}`
  const value = `${tests.join(" && ")} ? ${plain} : ${called(x, y)}`
  return `(${[...before, value].join(", ")})`
}

const neverNumbers = (e: Emitter, o: Operand): boolean => {
  const kind = e.o.kinds.of(o.node)
  return kind !== 0 && (kind & NUMBER) === 0
}

const isName = (o: Operand): boolean => o.node.type === "Identifier" && /^[\p{ID_Continue}$]+$/u.test(o.text)

/** A number as it stands, or a name that never changes. */
function isStill(e: Emitter, o: Operand): boolean {
  if (o.node.type === "NumericLiteral") return true
  if (o.node.type !== "Identifier" || !isName(o)) return false
  const binding = e.o.scopes.references.get(o.node)?.binding
  return binding ? binding.references.every(r => r.role === "read") : false
}
