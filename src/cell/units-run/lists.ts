import type { Expression } from "../tree/index.ts"
import { declared } from "./declare.ts"
import type { Machine } from "./machine.ts"
import { bare, plain } from "./measure.ts"
import { innerScope } from "./scope.ts"
import { nothing, scalar, settled, truth, undefinedValue, type Value } from "./value.ts"

type List = Extract<Value, { kind: "list" }>

/** More items than this are like the first ones. */
const most = 16

/** A method of a list, as far as mechanics uses them; others give nothing. */
export function callListMethod(
  m: Machine,
  list: List,
  method: string,
  args: readonly Value[],
  site: Extract<Expression, { kind: "call" }>,
): Value {
  const [first] = args
  const each = (use: (result: Value, item: Value) => void): void => {
    list.items.slice(0, most).forEach((item, at) => {
      use(m.call(first ?? nothing, [item, scalar(at, bare), list], [site, site, site], site), item)
    })
  }
  const listed = (items: Value[]): Value => ({ kind: "list", items, of: list.of })
  switch (method) {
    case "push": {
      const { length } = list.items
      m.journal.note(() => {
        list.items.length = length
      })
      args.forEach((value, at) => {
        const giving = { scope: innerScope(null), e: site.args[at] ?? site, name: "The item" }
        if (list.items.length < 10_000) list.items.push(declared(m, value, list.of, giving))
      })
      return scalar(list.items.length, bare)
    }
    case "forEach":
      each(() => {})
      return undefinedValue
    case "map": {
      const items: Value[] = []
      each(result => items.push(settled(result)))
      return { kind: "list", items, of: null }
    }
    case "filter": {
      each(() => {})
      return listed([...list.items])
    }
    case "find":
      each(() => {})
      return list.items[0] ?? nothing
    case "some":
    case "every": {
      let found: boolean | null = null
      each(result => {
        found = truth(result)
      })
      return found === null ? nothing : { kind: "plain", value: found }
    }
    case "reduce": {
      const rest = list.items.slice(0, most)
      let sum = args[1] ?? rest.shift() ?? nothing
      for (const item of rest) sum = m.call(first ?? nothing, [sum, item], [site, site], site)
      return sum
    }
    case "at":
    case "pop":
    case "shift":
      return list.items[0] ?? nothing
    case "slice":
    case "concat":
    case "toReversed":
    case "reverse":
      return listed([...list.items, ...args.flatMap(one => (one.kind === "list" ? one.items : []))])
    case "indexOf":
      return scalar(0, plain)
    default:
      return nothing
  }
}
