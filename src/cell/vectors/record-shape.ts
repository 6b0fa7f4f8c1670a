import type { CallExpression, Node, ObjectExpression } from "@babel/types"
import { type Kinds, NUMBER, VECTOR } from "../infer.ts"
import type { Scopes } from "../scopes.ts"

/** A call of record whose row is known before it runs: names and kinds of all quantities, in order. */
export interface RecordShape {
  readonly time: Node
  readonly quantities: readonly RecordedQuantity[]
  readonly literal: ObjectExpression
}

export interface RecordedQuantity {
  /** dotted, as the recording names it */
  readonly name: string
  readonly vector: boolean
  readonly node: Node
}

/** More levels or quantities than this go the long way, which says what is wrong with them. */
const mostLevels = 5
const mostQuantities = 64

/** The shape of `record(t, { … })` where time is a number and every quantity a number or a vector; null for any other call. */
export function recordShape(node: CallExpression, scopes: Scopes, kinds: Kinds): RecordShape | null {
  const { callee, arguments: args } = node
  if (
    callee.type !== "Identifier" ||
    callee.name !== "record" ||
    scopes.references.get(callee)?.binding !== null
  )
    return null
  const [time, literal] = args
  if (args.length !== 2 || literal?.type !== "ObjectExpression" || kinds.of(time!) !== NUMBER) return null
  const quantities: RecordedQuantity[] = []
  if (!collect(literal, "", mostLevels, kinds, quantities)) return null
  return quantities.length > mostQuantities ? null : { time: time!, quantities, literal }
}

function collect(
  object: ObjectExpression,
  path: string,
  levels: number,
  kinds: Kinds,
  found: RecordedQuantity[],
): boolean {
  const names = new Set<string>()
  for (const property of object.properties) {
    if (property.type !== "ObjectProperty" || property.computed || property.key.type !== "Identifier")
      return false
    const { name } = property.key
    if (name === "__proto__" || names.has(name)) return false
    names.add(name)
    const full = path === "" ? name : `${path}.${name}`
    const { value } = property
    if (value.type === "ObjectExpression") {
      if (levels === 1 || !collect(value, full, levels - 1, kinds, found)) return false
      continue
    }
    const kind = kinds.of(value)
    if (kind !== NUMBER && kind !== VECTOR) return false
    found.push({ name: full, vector: kind === VECTOR, node: value })
  }
  return names.size > 0
}
