import type { SyntaxNode } from "@lezer/common"
import { annotationOf } from "./annotation.ts"
import { broken, children, parts } from "./children.ts"
import type { Annotation, Entry, Expression, FunctionNode, Statement, Target } from "./nodes.ts"

/** What reading an expression needs: the text, how deep it already is, and how to read a function's block. */
export interface Reading {
  readonly text: string
  readonly block: (node: SyntaxNode, reading: Reading) => readonly Statement[]
  readonly depth: number
}

/** Deeper nesting than this is not followed: nobody reads it, and the stack has an end. */
export const deepest = 200

export function expressionOf(node: SyntaxNode, outer: Reading): Expression {
  const at = { from: node.from, to: node.to }
  const other: Expression = { ...at, kind: "other" }
  if (outer.depth > deepest || node.type.isError || broken(node)) return other
  const reading = { ...outer, depth: outer.depth + 1 }
  const { text } = reading
  const slice = (child: SyntaxNode): string => text.slice(child.from, child.to)
  const read = (child: SyntaxNode | undefined): Expression => (child ? expressionOf(child, reading) : other)
  switch (node.name) {
    case "Number": {
      const written = slice(node)
      const value = Number(written.replaceAll("_", ""))
      return Number.isNaN(value) ? other : { ...at, kind: "number", value, text: written }
    }
    case "String":
      return { ...at, kind: "string", value: text.slice(node.from + 1, node.to - 1) }
    case "TemplateString":
      return {
        ...at,
        kind: "template",
        parts: node
          .getChildren("Interpolation")
          .map(hole => read(children(hole).find(child => !child.name.startsWith("Interpolation")))),
      }
    case "BooleanLiteral":
    case "null":
    case "VariableName":
    case "this":
      return { ...at, kind: "name", name: slice(node) }
    case "ParenthesizedExpression": {
      const inner = children(node)[1]
      return inner && inner.name !== ")" ? read(inner) : other
    }
    case "InstantiationExpression":
      return read(node.firstChild ?? undefined)
    case "SequenceExpression":
      return { ...at, kind: "sequence", items: parts(node).map(read) }
    case "ArrayExpression":
      return { ...at, kind: "array", items: listed(node, reading) }
    case "ObjectExpression":
      return {
        ...at,
        kind: "object",
        entries: node.getChildren("Property").map(one => entryOf(one, reading)),
      }
    case "MemberExpression":
      return memberOf(node, reading)
    case "CallExpression":
    case "NewExpression": {
      const isNew = node.name === "NewExpression"
      const list = node.getChild("ArgList")
      const callee = children(node)[isNew ? 1 : 0]
      if (!callee || (list && broken(list))) return other
      return { ...at, kind: "call", callee: read(callee), args: list ? listed(list, reading) : [], isNew }
    }
    case "UnaryExpression": {
      const [op, argument] = children(node)
      if (!op || !argument) return other
      const sign = slice(op)
      if (sign === "++" || sign === "--")
        return { ...at, kind: "step", op: sign, prefix: true, target: read(argument) }
      return { ...at, kind: "unary", op: sign, argument: read(argument) }
    }
    case "PostfixExpression": {
      const [target, op] = children(node)
      if (!target || !op) return other
      const sign = slice(op)
      if (sign === "!") return read(target)
      return { ...at, kind: "step", op: sign === "--" ? "--" : "++", prefix: false, target: read(target) }
    }
    case "BinaryExpression": {
      const [left, op, right] = children(node)
      if (!left || !op || !right) return other
      const sign = slice(op)
      if (sign === "as" || sign === "satisfies")
        return { ...at, kind: "as", value: read(left), annotation: annotationOf(right, text) }
      return { ...at, kind: "binary", op: sign, opFrom: op.from, left: read(left), right: read(right) }
    }
    case "ConditionalExpression": {
      const [test, , yes, , no] = children(node)
      return { ...at, kind: "conditional", test: read(test), yes: read(yes), no: read(no) }
    }
    case "AssignmentExpression": {
      const [target, op, value] = children(node)
      if (!target || !op || !value) return other
      return {
        ...at,
        kind: "assign",
        op: slice(op),
        opFrom: op.from,
        target: targetOf(target, reading),
        value: read(value),
      }
    }
    case "ArrowFunction":
    case "FunctionExpression":
      return { ...at, kind: "function", function: functionOf(node, reading) }
    default:
      return other
  }
}

function memberOf(node: SyntaxNode, reading: Reading): Expression {
  const at = { from: node.from, to: node.to }
  const [object, ...rest] = children(node)
  const name = rest.find(child => child.name === "PropertyName")
  if (!object) return { ...at, kind: "other" }
  if (name)
    return {
      ...at,
      kind: "member",
      object: expressionOf(object, reading),
      property: reading.text.slice(name.from, name.to),
      propertyFrom: name.from,
    }
  const index = rest.find(child => !["[", "]", "?.", "."].includes(child.name))
  if (!index || !rest.some(child => child.name === "[")) return { ...at, kind: "other" }
  return { ...at, kind: "index", object: expressionOf(object, reading), index: expressionOf(index, reading) }
}

/** Items of an argument list or an array, spreads included. */
function listed(node: SyntaxNode, reading: Reading): Expression[] {
  const items: Expression[] = []
  let spread = -1
  for (const child of parts(node)) {
    if (child.name === "Spread") spread = child.from
    else {
      const value = expressionOf(child, reading)
      items.push(spread < 0 ? value : { kind: "spread", value, from: spread, to: child.to })
      spread = -1
    }
  }
  return items
}

function entryOf(node: SyntaxNode, reading: Reading): Entry {
  const [first, second, ...rest] = children(node)
  if (!first || broken(node)) return { kind: "other" }
  if (first.name === "Spread" && second) return { kind: "spread", value: expressionOf(second, reading) }
  if (first.name === "[" && second) {
    const value = rest.at(-1)
    if (!value || value.name === "]") return { kind: "other" }
    return { kind: "computed", key: expressionOf(second, reading), value: expressionOf(value, reading) }
  }
  const written = reading.text.slice(first.from, first.to)
  const key = first.name === "String" ? written.slice(1, -1) : written
  if (node.getChild("ParamList")) {
    if (first.name !== "PropertyDefinition") return { kind: "other" }
    const value: Expression = {
      kind: "function",
      function: functionOf(node, reading),
      from: node.from,
      to: node.to,
    }
    return { kind: "property", key, value }
  }
  if (!second)
    return { kind: "property", key, value: { kind: "name", name: key, from: first.from, to: first.to } }
  const value = rest[0]
  return value ? { kind: "property", key, value: expressionOf(value, reading) } : { kind: "other" }
}

/** A name, a place or a pattern: what stands left of `=`, in a declaration or in a parameter list. */
export function targetOf(node: SyntaxNode, reading: Reading): Target {
  const at = { from: node.from, to: node.to }
  const { text } = reading
  if (reading.depth > deepest || broken(node)) return { ...at, kind: "otherTarget" }
  const inner = { ...reading, depth: reading.depth + 1 }
  switch (node.name) {
    case "VariableDefinition":
    case "VariableName":
      return { ...at, kind: "variable", name: text.slice(node.from, node.to) }
    case "MemberExpression":
      return { ...at, kind: "place", expression: expressionOf(node, reading) }
    case "ObjectPattern": {
      const entries = []
      let rest: Target | null = null
      for (const property of node.getChildren("PatternProperty")) {
        const [key, sign, target, , fallback] = children(property)
        if (!key) continue
        if (key.name === "Spread" && sign) rest = targetOf(sign, inner)
        else if (sign?.name === ":" && target)
          entries.push({
            key: text.slice(key.from, key.to),
            target: targetOf(target, inner),
            fallback: fallback ? expressionOf(fallback, inner) : null,
          })
        else
          entries.push({
            key: text.slice(key.from, key.to),
            target: targetOf(key, inner),
            fallback: sign?.name === "Equals" && target ? expressionOf(target, inner) : null,
          })
      }
      return { ...at, kind: "objectPattern", entries, rest }
    }
    case "ArrayPattern": {
      const items: { target: Target; fallback: Expression | null }[] = []
      const list = parts(node)
      for (let i = 0; i < list.length; i++) {
        const child = list[i]!
        if (child.name === "Equals" && items.length > 0)
          items.push({
            target: items.pop()!.target,
            fallback: list[++i] ? expressionOf(list[i]!, inner) : null,
          })
        else items.push({ target: targetOf(child, inner), fallback: null })
      }
      return { ...at, kind: "arrayPattern", items }
    }
    default:
      return { ...at, kind: "otherTarget" }
  }
}

/** A function of any notation: declaration, expression, arrow or method. */
export function functionOf(node: SyntaxNode, outer: Reading): FunctionNode {
  const reading = { ...outer, depth: outer.depth + 1 }
  const list = children(node)
  const name = node.getChild("VariableDefinition")
  const parameters: FunctionNode["parameters"][number][] = []
  let rest = false
  const all = node.getChild("ParamList")
  for (const child of all ? parts(all) : []) {
    const last = parameters.at(-1)
    if (child.name === "Spread") rest = true
    else if (child.name === "TypeAnnotation" && last)
      parameters.push({ ...parameters.pop()!, annotation: annotationOf(child, reading.text) })
    else if (child.prevSibling?.name === "Equals" && last)
      parameters.push({ ...parameters.pop()!, fallback: expressionOf(child, reading) })
    else if (["VariableDefinition", "ObjectPattern", "ArrayPattern"].includes(child.name))
      parameters.push({ target: targetOf(child, reading), annotation: null, fallback: null, rest })
  }
  const returned = node.getChild("TypeAnnotation")
  const returns: Annotation | null = returned ? annotationOf(returned, reading.text) : null
  const block = node.getChild("Block")
  const short = list.at(-1)
  return {
    from: node.from,
    to: node.to,
    name: name ? reading.text.slice(name.from, name.to) : null,
    parameters,
    returns,
    body: block ? reading.block(block, reading) : short ? expressionOf(short, reading) : [],
    plain: !list.some(child => child.name === "async" || child.name === "Star" || child.name === "*"),
  }
}
