import type { CallExpression, ObjectExpression } from "@babel/types"
import type { Emitter } from "../emit/emitter.ts"
import { made } from "./made.ts"
import { canSplit, Pieces } from "./pieces.ts"
import { recordShape } from "./record-shape.ts"

/**
 * `record(t, { … })` written out: the numbers go straight into the row being filled while the recording is of this shape, the
 * time does not run back and all numbers are finite. In every other case record itself is called, and says what is wrong; see
 * OpenRows in host.ts. Null for a call that is no such record.
 */
export function recordCall(e: Emitter, node: CallExpression): string | null {
  if (e.o.split === null || !e.o.split.isUnused(node)) return null
  const shape = recordShape(node, e.o.scopes, e.o.kinds)
  if (shape === null || !canSplit(e, node)) return null
  const pieces = new Pieces(e)
  const time = pieces.number(shape.time)
  const words: string[] = []
  const whole = new Map<unknown, string>()
  for (const { node: value, vector } of shape.quantities) {
    if (vector) {
      const parts = pieces.simple(pieces.vector(value))
      words.push(parts.x, parts.y, parts.z)
      whole.set(value, made(e, parts))
    } else {
      const word = pieces.number(value)
      words.push(word)
      whole.set(value, word)
    }
  }
  const rows = e.rows(shape.quantities.map(q => `${q.name}:${q.vector ? "v" : "s"}`).join(" "))
  const [sum, view, next] = [e.temp(), e.temp(), e.temp()]
  const open = [time, ...words].filter(w => !/^[\d.]+$/.test(w))
  const fill = [
    `${view} = ${rows.name}.view`,
    `${next} = ${rows.name}.next`,
    `${view}.setFloat64(${next}, ${time}, true)`,
    ...words.map((w, i) => `${view}.setFloat64(${next} + ${8 * (i + 1)}, ${w}, true)`),
    `${rows.name}.lastTime = ${time}`,
    `${rows.name}.next = ${next} + ${8 * (words.length + 1)}`,
  ]
  const slow = `record(${time}, ${rebuilt(shape.literal, whole)}), ${rows.name} = ${rows.renew}`
  const quick = `${rows.name}.next <= ${rows.name}.last && ${time} >= ${rows.name}.lastTime && ${sum} - ${sum} === 0`
  return `(${[...pieces.before, `${sum} = ${open.length === 0 ? "0" : open.join(" + ")}`, `${quick} ? (${fill.join(", ")}) : (${slow})`].join(", ")})`
}

function rebuilt(object: ObjectExpression, whole: ReadonlyMap<unknown, string>): string {
  const members = object.properties.map(p => {
    if (p.type !== "ObjectProperty" || p.key.type !== "Identifier")
      throw new Error("Not the shape of a record")
    const value = p.value.type === "ObjectExpression" ? rebuilt(p.value, whole) : whole.get(p.value)
    return `${p.key.name}: ${value}`
  })
  return `{ ${members.join(", ")} }`
}
