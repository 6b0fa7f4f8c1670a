import * as physics from "../../physics/index.ts"
import type { Expression, FunctionNode } from "../tree/index.ts"
import { powerOf } from "./arithmetic.ts"
import { declareTarget } from "./assign.ts"
import { declared, declaredMeasure, empty, resolved } from "./declare.ts"
import { itemsOf } from "./evaluate.ts"
import { librarySignatures, mathSignatures, methodSignatures, type Signatures } from "./library.ts"
import { callListMethod } from "./lists.ts"
import type { Machine } from "./machine.ts"
import { bare } from "./measure.ts"
import { noteRecord } from "./recorded.ts"
import { find, innerScope, type Scope } from "./scope.ts"
import { callKnown } from "./signature.ts"
import { nothing, scalar, settled, undefinedValue, type Value } from "./value.ts"

/** Calls inside one another beyond this are not followed. */
const deepest = 24

type Call = Extract<Expression, { kind: "call" }>

/** A call: of the library, of mathematics, of a method, or of a function of the program. */
export function callExpression(m: Machine, e: Call, scope: Scope): Value {
  const { callee } = e
  const wanted = m.wanted
  m.wanted = null
  try {
    if (callee.kind === "name" && !find(scope, callee.name)) {
      const args = itemsOf(m, e.args, scope)
      if (callee.name === "record") {
        noteRecord(m, args)
        return undefinedValue
      }
      if (callee.name === "random") return scalar(0.5, bare)
      return callLibrary(m, scope, callee.name, args, e)
    }
    if (callee.kind === "member") return callMember(m, e, callee, scope)
    const fn = m.evaluate(callee, scope)
    return m.call(fn, itemsOf(m, e.args, scope), e.args, e)
  } finally {
    m.wanted = wanted
  }
}

type Functions = Readonly<Record<string, ((...args: never[]) => unknown) | undefined>>

function callLibrary(m: Machine, scope: Scope, name: string, args: readonly Value[], e: Call): Value {
  return callSignature(m, scope, name, librarySignatures, physics as unknown as Functions, args, e.args, e)
}

function callSignature(
  m: Machine,
  scope: Scope,
  name: string,
  signatures: Signatures,
  functions: Functions,
  args: readonly Value[],
  sites: readonly Expression[],
  e: Call,
): Value {
  const signature = signatures.get(name)
  const fn = Object.hasOwn(functions, name) ? functions[name] : undefined
  if (!signature || typeof fn !== "function") return nothing
  const shown = signatures === mathSignatures ? `Math.${name}` : name
  return callKnown(m, scope, shown, signature, fn, args, sites, e)
}

const mathematics = Object.fromEntries(
  [...mathSignatures.keys()].map(name => [name, (Math as unknown as Functions)[name]]),
)

const methods: Functions = Object.fromEntries(
  [...methodSignatures.keys()].map(name => [
    name,
    (v: physics.Vec3, ...rest: unknown[]): unknown =>
      (v as unknown as Readonly<Record<string, (...args: unknown[]) => unknown>>)[name]!(...rest),
  ]),
)

function callMember(
  m: Machine,
  e: Call,
  callee: Extract<Expression, { kind: "member" }>,
  scope: Scope,
): Value {
  const { object, property } = callee
  if (object.kind === "name" && object.name === "Math" && !find(scope, "Math")) {
    const args = itemsOf(m, e.args, scope)
    if (property === "pow" && args[0] && args[1] && e.args[1]) return powerOf(m, e.args[1], args[0], args[1])
    return callSignature(m, scope, property, mathSignatures, mathematics, args, e.args, e)
  }
  const value = m.evaluate(object, scope)
  const args = itemsOf(m, e.args, scope)
  if (value.kind === "vector")
    return callSignature(
      m,
      scope,
      property,
      methodSignatures,
      methods,
      [value, ...args],
      [object, ...e.args],
      e,
    )
  if (value.kind === "record") return m.call(value.fields.get(property) ?? nothing, args, e.args, e)
  if (value.kind === "list") return callListMethod(m, value, property, args, e)
  return nothing
}

/** Calls a function of the program; a library function handed around by name too. */
export function callValue(
  m: Machine,
  fn: Value,
  args: readonly Value[],
  sites: readonly Expression[],
  site: Expression,
): Value {
  if (fn.kind === "library" && site.kind === "call")
    return callLibrary(m, innerScope(null), fn.name, args, { ...site, args: sites })
  if (fn.kind !== "function" || !fn.node.plain) return nothing
  if (m.depth >= deepest) return resultKnown(m, fn.node)
  const scope = innerScope(fn.scope)
  m.called.add(fn.node)
  m.depth++
  const wanted = m.wanted
  m.wanted = null
  try {
    fn.node.parameters.forEach((parameter, at) => {
      const given = parameter.rest
        ? ({ kind: "list", items: args.slice(at).map(settled), of: null } as const)
        : args[at]
      const value = given ?? (parameter.fallback ? m.evaluate(parameter.fallback, scope) : nothing)
      declareTarget(m, parameter.target, parameter.annotation, value, sites[at] ?? site, scope)
    })
    return resultOf(m, fn.node, scope)
  } finally {
    m.depth--
    m.wanted = wanted
  }
}

function resultOf(m: Machine, node: FunctionNode, scope: Scope): Value {
  const name = `The result of ${node.name ?? "the function"}`
  if (!Array.isArray(node.body)) {
    const e = node.body as Expression
    return declared(m, m.evaluate(e, scope), node.returns, { scope, e, name })
  }
  m.returns.push({ annotation: node.returns, name })
  try {
    const ending = m.runAll(node.body, scope)
    return ending?.kind === "return" ? ending.value : resultKnown(m, node)
  } finally {
    m.returns.pop()
  }
}

/** What a function is declared to give, when its body is not walked to the end. */
function resultKnown(m: Machine, node: FunctionNode): Value {
  const type = node.returns && resolved(m, node.returns)
  const measure = type && declaredMeasure(type)
  return measure && (type.kind === "scalar" || type.kind === "vector") ? empty(type.kind, measure) : nothing
}
