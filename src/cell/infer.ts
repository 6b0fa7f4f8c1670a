import type { Expression, Function as FunctionNode, Node, Statement } from "@babel/types"
import type { Binding, Scopes } from "./scopes.ts"
import { returnKind, vectorMembers } from "./signatures.ts"

/** What a value may be: a set, as bits. Two numbers need no dispatch; where no vector can be, JavaScript's own operator stands. */
export type Kind = number
export const NUMBER = 1
export const VECTOR = 2
export const OTHER = 4
export const ANY = 7

export interface Kinds {
  /** what an expression may yield */
  of(node: Node): Kind
  ofBinding(binding: Binding): Kind
}

/**
 * What every expression of the program may be, found by letting kinds flow from literals, library signatures,
 * worksheet parameters and annotations of number through assignments, calls of the program's own functions and
 * their returns, until nothing changes. What cannot be told is ANY. An annotation is trusted only for numbers: a
 * false one still ends in an error in words, because a vector refuses to be read as a number.
 */
export function inferKinds(scopes: Scopes, parameters: readonly string[], known: ReadonlySet<string>): Kinds {
  const kinds = new Map<Binding, Kind>()
  const returned = new Map<FunctionNode, Kind>()
  let memo = new Map<Node, Kind>()
  const isParameter = new Set(parameters)

  for (const binding of scopes.bindings) takeArguments(binding)

  let changed = true
  while (changed) {
    changed = false
    memo = new Map()
    for (const binding of scopes.bindings) {
      // kinds only grow from round to round, so that the rounds come to an end
      const kind = bindingKind(binding) | (kinds.get(binding) ?? 0)
      if (kind !== (kinds.get(binding) ?? 0)) {
        kinds.set(binding, kind)
        changed = true
      }
    }
    for (const [fn, values] of scopes.returns) {
      const kind = returnsOf(fn, values) | (returned.get(fn) ?? 0)
      if (kind !== (returned.get(fn) ?? 0)) {
        returned.set(fn, kind)
        changed = true
      }
    }
  }

  /** A function that is only ever called by its name gets from its calls what its arguments may be. */
  function takeArguments(binding: Binding): void {
    const fn = binding.callable
    if (fn === null || binding.sources.length > 1) return
    const calls = binding.references.map(r => r.parent)
    const only = binding.references.every(
      r => r.parent.type === "CallExpression" && r.parent.callee === r.node && r.role === "read",
    )
    if (!only) return
    fn.params.forEach((param, i) => {
      const name = param.type === "AssignmentPattern" ? param.left : param
      const made = name.type === "Identifier" ? scopes.declared.get(name) : undefined
      if (made === undefined) return
      const at = made.sources.indexOf("unknown")
      if (at < 0) return
      made.sources.splice(at, 1)
      if (param.type === "AssignmentPattern") made.sources.push(param.right)
      for (const call of calls) {
        if (call.type !== "CallExpression") continue
        const spread = call.arguments.findIndex(a => a.type === "SpreadElement")
        if (spread >= 0 && spread <= i) made.sources.push("unknown")
        else if (call.arguments[i] !== undefined) made.sources.push(call.arguments[i]!)
        else if (param.type !== "AssignmentPattern") made.sources.push("nothing")
      }
    })
  }

  function bindingKind(binding: Binding): Kind {
    if (binding.kind === "function" || binding.kind === "class") return OTHER
    let kind = binding.kind === "var" ? OTHER : 0
    for (const source of binding.sources)
      kind |= source === "unknown" ? ANY : source === "nothing" ? OTHER : of(source)
    // a name declared as a number that is given a vector all the same
    const contradicted = kind !== ANY && (kind & VECTOR) !== 0
    if (isNumberType(binding) && !contradicted) return NUMBER
    return kind
  }

  function returnsOf(fn: FunctionNode, values: readonly (Node | null)[]): Kind {
    if (fn.generator || fn.async) return OTHER
    let kind = fn.body.type === "BlockStatement" && !alwaysReturns(fn.body.body) ? OTHER : 0
    for (const value of values) kind |= value === null ? OTHER : of(value)
    return kind
  }

  function of(node: Node): Kind {
    const before = memo.get(node)
    if (before !== undefined) return before
    memo.set(node, 0)
    const kind = find(node as Expression)
    memo.set(node, kind)
    return kind
  }

  function find(node: Expression): Kind {
    switch (node.type) {
      case "NumericLiteral":
        return NUMBER
      case "StringLiteral":
      case "BooleanLiteral":
      case "NullLiteral":
      case "BigIntLiteral":
      case "RegExpLiteral":
      case "TemplateLiteral":
      case "ObjectExpression":
      case "ArrayExpression":
      case "FunctionExpression":
      case "ArrowFunctionExpression":
      case "ClassExpression":
        return OTHER
      case "Identifier":
        return ofName(node)
      case "UnaryExpression":
        return node.operator === "-"
          ? negated(of(node.argument))
          : node.operator === "+"
            ? NUMBER
            : node.operator === "~"
              ? numeric(of(node.argument), NUMBER)
              : OTHER
      case "UpdateExpression":
        return numeric(of(node.argument), NUMBER)
      case "BinaryExpression":
        return node.left.type === "PrivateName" ? OTHER : binary(node.operator, of(node.left), of(node.right))
      case "LogicalExpression":
        return of(node.left) | of(node.right)
      case "ConditionalExpression":
        return of(node.consequent) | of(node.alternate)
      case "SequenceExpression":
        return of(node.expressions[node.expressions.length - 1]!)
      case "AssignmentExpression":
        if (node.operator === "=") return of(node.right)
        if (/^(&&|\|\||\?\?)=$/.test(node.operator)) return of(node.left) | of(node.right)
        return binary(node.operator.slice(0, -1), of(node.left), of(node.right))
      case "ParenthesizedExpression":
      case "TSNonNullExpression":
      case "TSSatisfiesExpression":
      case "TSAsExpression":
      case "TSTypeAssertion":
        return of(node.expression)
      case "MemberExpression":
        return ofMember(node.object, node.property, node.computed)
      case "CallExpression":
        return ofCall(node.callee)
      default:
        return ANY
    }
  }

  function ofName(node: Node & { name: string }): Kind {
    const reference = scopes.references.get(node)
    if (reference?.binding) return kinds.get(reference.binding) ?? 0
    if (isParameter.has(node.name)) return NUMBER
    if (node.name === "Infinity" || node.name === "NaN") return NUMBER
    return node.name === "undefined" || known.has(node.name) ? OTHER : ANY
  }

  function isFree(node: Node): node is Node & { type: "Identifier"; name: string } {
    return (
      node.type === "Identifier" &&
      scopes.references.get(node)?.binding === null &&
      known.has(node.name) &&
      !isParameter.has(node.name)
    )
  }

  function ofMember(object: Node, property: Node, computed: boolean): Kind {
    if (computed || property.type !== "Identifier") return ANY
    if (isFree(object)) {
      if (object.name === "Math" && property.name === property.name.toUpperCase()) return NUMBER
      if (object.name === "Number" && property.name !== "prototype")
        return property.name === property.name.toUpperCase() ? NUMBER : OTHER
    }
    const kind = of(object)
    if (kind === 0) return 0
    return kind === VECTOR ? (vectorMembers.get(property.name)?.value ?? ANY) : ANY
  }

  function ofCall(callee: Node): Kind {
    if (callee.type === "Identifier") {
      const binding = scopes.references.get(callee)?.binding
      if (binding) return binding.callable === null ? ANY : (returned.get(binding.callable) ?? 0)
      return isFree(callee) ? (returnKind(callee.name) ?? ANY) : ANY
    }
    if (callee.type !== "MemberExpression" || callee.computed || callee.property.type !== "Identifier")
      return ANY
    if (isFree(callee.object) && callee.object.name === "Math") return NUMBER
    if (isFree(callee.object) && callee.object.name === "Number") return NUMBER | OTHER
    const kind = of(callee.object)
    if (kind === 0) return 0
    return kind === VECTOR ? (vectorMembers.get(callee.property.name)?.call ?? ANY) : ANY
  }

  return { of, ofBinding: binding => kinds.get(binding) ?? ANY }
}

/** What an operator may yield. Combinations that always end in an error count as ANY: they are never left alone. */
function binary(operator: string, a: Kind, b: Kind): Kind {
  if (a === 0 || b === 0) return 0
  let kind = 0
  const other = ((a | b) & OTHER) !== 0
  const numbers = (a & b & NUMBER) !== 0
  switch (operator) {
    case "+":
    case "-":
      if (numbers) kind |= NUMBER
      if (a & b & VECTOR) kind |= VECTOR
      if (other) kind |= NUMBER | OTHER
      break
    case "*":
      if (numbers) kind |= NUMBER
      if ((a & NUMBER && b & VECTOR) || (a & VECTOR && b & NUMBER)) kind |= VECTOR
      if (other) kind |= NUMBER | OTHER
      break
    case "/":
      if (numbers) kind |= NUMBER
      if (a & VECTOR && b & NUMBER) kind |= VECTOR
      if (other) kind |= NUMBER | OTHER
      break
    case "**":
    case "%":
    case "&":
    case "|":
    case "^":
    case "<<":
    case ">>":
    case ">>>":
      if (numbers) kind |= NUMBER
      if (other) kind |= NUMBER | OTHER
      break
    default:
      return OTHER
  }
  return kind === 0 ? ANY : kind
}

const negated = (a: Kind): Kind => (a & OTHER ? a | NUMBER : a)
const numeric = (a: Kind, kind: Kind): Kind => (a === 0 ? 0 : a === NUMBER ? kind : NUMBER | OTHER)

/** A declared `number`, or a scalar with its unit. */
function isNumberType(binding: Binding): boolean {
  const annotation = binding.node.typeAnnotation
  if (annotation?.type !== "TSTypeAnnotation" || binding.node.optional) return false
  const type = annotation.typeAnnotation
  if (type.type === "TSNumberKeyword") return true
  return (
    type.type === "TSTypeReference" && type.typeName.type === "Identifier" && type.typeName.name === "Scalar"
  )
}

function alwaysReturns(statements: readonly Statement[]): boolean {
  const last = statements[statements.length - 1]
  if (last === undefined) return false
  switch (last.type) {
    case "ReturnStatement":
    case "ThrowStatement":
      return true
    case "BlockStatement":
      return alwaysReturns(last.body)
    case "IfStatement":
      return last.alternate != null && alwaysReturns([last.consequent]) && alwaysReturns([last.alternate])
    default:
      return false
  }
}
