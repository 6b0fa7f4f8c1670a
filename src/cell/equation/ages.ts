import type { Expression, Statement, Tree } from "../tree/index.ts"
import { bodies } from "./shapes.ts"

interface Update {
  readonly name: string
  readonly from: number
  readonly to: number
}

/** Tells, for a place in the text, which names are old and which already new there. */
export interface Ages {
  at(from: number): (name: string) => "new" | "old" | undefined
}

/**
 * In a loop, `p = p + F * dt` makes a new p from the old one. In each such line the name itself is old on the right;
 * any other name that is updated in the same turn of the loop is new if its update stands above, old if it stands
 * below. Names that are updated more than once in a turn are left without a mark.
 */
export function agesOf(tree: Tree): Ages {
  const turns: Update[][] = []
  const places = new Map<number, { update: Update; turn: readonly Update[] }>()

  const note = (e: Expression, turn: Update[]): void => {
    let name: string | null = null
    let old = false
    if (e.kind === "assign" && e.target.kind === "variable") {
      name = e.target.name
      old = e.op !== "=" || mentions(e.value, name)
    } else if (e.kind === "step" && e.target.kind === "name") {
      name = e.target.name
      old = true
    } else if (e.kind === "sequence") for (const item of e.items) note(item, turn)
    if (name === null || !old) return
    const update = { name, from: e.from, to: e.to }
    turn.push(update)
    places.set(e.from, { update, turn })
  }
  const walk = (s: Statement, turn: Update[]): void => {
    const loop =
      s.kind === "while" || s.kind === "do" || s.kind === "for" || s.kind === "forOf" || s.kind === "forIn"
    const inner: Update[] = loop ? [] : turn
    if (loop) turns.push(inner)
    if (s.kind === "expression") note(s.expression, turn)
    if (s.kind === "for" && s.update) note(s.update, inner)
    if (s.kind === "functionDeclaration") {
      if (Array.isArray(s.function.body)) for (const one of s.function.body) walk(one, [])
      return
    }
    for (const one of bodies(s)) walk(one, inner)
  }
  for (const one of tree.body) walk(one, [])

  return {
    at(from) {
      const place = places.get(from)
      if (!place) return () => undefined
      return name => {
        if (name === place.update.name) return "old"
        const others = place.turn.filter(one => one.name === name)
        if (others.length !== 1) return undefined
        return others[0]!.from < from ? "new" : "old"
      }
    },
  }
}

function mentions(e: Expression, name: string): boolean {
  switch (e.kind) {
    case "name":
      return e.name === name
    case "member":
      return mentions(e.object, name)
    case "index":
      return mentions(e.object, name) || mentions(e.index, name)
    case "unary":
      return mentions(e.argument, name)
    case "binary":
      return mentions(e.left, name) || mentions(e.right, name)
    case "conditional":
      return mentions(e.test, name) || mentions(e.yes, name) || mentions(e.no, name)
    case "call":
      return mentions(e.callee, name) || e.args.some(one => mentions(one, name))
    case "array":
    case "sequence":
      return e.items.some(one => mentions(one, name))
    case "object":
      return e.entries.some(one => one.kind === "property" && mentions(one.value, name))
    case "as":
    case "spread":
      return mentions(e.value, name)
    default:
      return false
  }
}
