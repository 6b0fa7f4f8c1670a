import type { Expression, Statement } from "../tree/index.ts"
import { declareTarget, put } from "./assign.ts"
import { declared, declaredMeasure, empty, resolved } from "./declare.ts"
import type { Ending, Machine } from "./machine.ts"
import { bare } from "./measure.ts"
import { innerScope, type Scope } from "./scope.ts"
import { isQuantity, nothing, scalar, truth, undefinedValue, type Value } from "./value.ts"

/** Statements one after the other; functions are known before the first one runs. */
export function runAll(m: Machine, list: readonly Statement[], scope: Scope): Ending {
  for (const s of list)
    if (s.kind === "functionDeclaration" && s.function.name)
      scope.names.set(s.function.name, {
        value: { kind: "function", node: s.function, scope },
        annotation: null,
      })
  for (const s of list) {
    const ending = m.run(s, scope)
    if (ending) return ending
  }
  return null
}

export function runStatement(m: Machine, s: Statement, scope: Scope): Ending {
  m.step()
  switch (s.kind) {
    case "declare":
      for (const { target, annotation, value } of s.items) declare(m, target, annotation, value, scope)
      return null
    case "expression":
      m.evaluate(s.expression, scope)
      return null
    case "block":
      return m.runAll(s.body, innerScope(scope))
    case "if": {
      const chosen = truth(m.evaluate(s.test, scope))
      const yes = (): Ending => m.run(s.yes, scope)
      const no = (): Ending => (s.no ? m.run(s.no, scope) : null)
      if (chosen === null) {
        m.journal.tried(yes)
        m.journal.tried(no)
        return null
      }
      m.walk(s, chosen ? 2 : 1, chosen ? no : yes)
      return chosen ? yes() : no()
    }
    case "for":
    case "forOf":
    case "forIn":
    case "while":
    case "do":
      return loop(m, s, scope, null)
    case "labeled":
      return isLoop(s.body) ? loop(m, s.body, scope, s.label) : m.run(s.body, scope)
    case "switch":
      return choose(m, s, scope)
    case "try": {
      const ending = m.run(s.body, scope)
      if (s.handler) m.walk(s, 2, () => m.run(s.handler!, scope))
      const after = s.last ? m.run(s.last, scope) : null
      return after ?? (ending?.kind === "throw" ? null : ending)
    }
    case "return":
      return { kind: "return", value: returned(m, s.value, scope) }
    case "throw":
      m.evaluate(s.value, scope)
      return { kind: "throw" }
    case "break":
    case "continue":
      return { kind: s.kind, label: s.label }
    default:
      return null
  }
}

function declare(
  m: Machine,
  target: Parameters<typeof declareTarget>[1],
  annotation: Parameters<typeof declareTarget>[2],
  value: Expression | null,
  scope: Scope,
): void {
  if (!value) {
    declareTarget(m, target, annotation, null, nowhere(target), scope)
    return
  }
  const before = m.wanted
  const type = annotation && resolved(m, annotation)
  const measure = type && declaredMeasure(type)
  const wanted =
    measure && (type.kind === "scalar" || type.kind === "vector") ? empty(type.kind, measure) : nothing
  m.wanted = isQuantity(wanted) ? wanted : null
  const result = m.evaluate(value, scope)
  m.wanted = before
  declareTarget(m, target, annotation, result, value, scope)
}

const nowhere = (at: { from: number; to: number }): Expression => ({
  kind: "other",
  from: at.from,
  to: at.to,
})

function returned(m: Machine, value: Expression | null, scope: Scope): Value {
  if (!value) return undefinedValue
  const result = m.evaluate(value, scope)
  const frame = m.returns.at(-1)
  return frame ? declared(m, result, frame.annotation, { scope, e: value, name: frame.name }) : result
}

type Loop = Extract<Statement, { kind: "for" | "forOf" | "forIn" | "while" | "do" }>
const isLoop = (s: Statement): s is Loop => ["for", "forOf", "forIn", "while", "do"].includes(s.kind)

type Walk = Extract<Loop, { kind: "forOf" | "forIn" }>
const isWalk = (s: Loop): s is Walk => s.kind === "forOf" || s.kind === "forIn"

/** The first turns of a loop. A body that no turn reaches is tried once for its units. */
function loop(m: Machine, s: Loop, scope: Scope, label: string | null): Ending {
  const outer = innerScope(scope)
  let turns = 0
  /** true to go on; else how the loop ended */
  const turn = (inner: Scope): true | Ending => {
    turns++
    const ending = m.run(s.body, inner)
    if (ending?.kind === "break" && (ending.label === null || ending.label === label)) return null
    if (ending?.kind === "continue" && (ending.label === null || ending.label === label)) return true
    return ending ?? true
  }
  const most = m.turnsOf(s)
  if (isWalk(s)) {
    const list = m.evaluate(s.list, scope)
    const items = s.kind === "forOf" && list.kind === "list" ? list.items.slice(0, most) : []
    const once = (item: Value): true | Ending => {
      const inner = innerScope(scope)
      // a name that is declared outside is written to; else it is declared here
      if (s.target.kind === "place") put(m, s.target, item, nowhere(s.target), scope)
      else declareTarget(m, s.target, null, item, nowhere(s.target), inner)
      return turn(inner)
    }
    for (const item of items) {
      const ending = once(item)
      if (ending !== true) return ending
    }
    if (items.length === 0) m.walk(s, 2, () => once(nothing))
    return null
  }
  if (s.kind === "for" && s.init) m.run(s.init, outer)
  const test: Expression | null = s.test
  const goesOn = (): boolean => {
    if (!test) return true
    const known = truth(m.evaluate(test, outer))
    return known === true
  }
  if (s.kind === "do" || goesOn()) {
    do {
      const ending = turn(outer)
      if (ending !== true) return ending
      if (s.kind === "for" && s.update) m.evaluate(s.update, outer)
    } while (goesOn() && turns < most)
  } else
    m.walk(s, 2, () => {
      turn(outer)
      if (s.kind === "for" && s.update) m.evaluate(s.update, outer)
    })
  return null
}

function choose(m: Machine, s: Extract<Statement, { kind: "switch" }>, scope: Scope): Ending {
  const on = m.evaluate(s.on, scope)
  const inner = innerScope(scope)
  const matches = (test: Expression | null): boolean => {
    if (!test) return true
    const value = m.evaluate(test, scope)
    if (value.kind === "plain" && on.kind === "plain") return value.value === on.value
    return value.kind === "scalar" && on.kind === "scalar" && value.value === on.value
  }
  const at = s.cases.findIndex(one => one.test !== null && matches(one.test))
  const start = at >= 0 ? at : s.cases.findIndex(one => one.test === null)
  for (const [index, one] of s.cases.entries())
    if (index !== start) m.journal.tried(() => m.runAll(one.body, innerScope(scope)))
  if (start < 0) return null
  for (const one of s.cases.slice(start)) {
    const ending = m.runAll(one.body, inner)
    if (ending?.kind === "break" && ending.label === null) return null
    if (ending) return ending
  }
  return null
}

/** A value to call a function with that the program itself never calls: of the declared kind, of size one. */
export function sample(m: Machine, annotation: Parameters<typeof declareTarget>[2]): Value {
  const type = annotation && resolved(m, annotation)
  const measure = type && declaredMeasure(type)
  if (type?.kind === "scalar") return scalar(1, measure ?? bare)
  if (type?.kind === "vector") return { kind: "vector", x: 1, y: 1, z: 1, measure: measure ?? bare }
  return nothing
}
