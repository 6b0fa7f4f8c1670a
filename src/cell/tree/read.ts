import type { SyntaxNode } from "@lezer/common"
import { parser } from "@lezer/javascript"
import { annotationOf } from "./annotation.ts"
import { children, parts } from "./children.ts"
import { deepest, expressionOf, functionOf, type Reading, targetOf } from "./expressions.ts"
import type { Declarator, Expression, Statement, Tree } from "./nodes.ts"

const typescript = parser.configure({ dialect: "ts" })

/** Longer texts than this are not read: no cell that a person writes comes near it. */
const longest = 1_000_000

/** Reads a program or a piece of one. Never throws; what does not parse becomes `other` and leaves the rest whole. */
export function readTree(text: string): Tree {
  if (text.length > longest) return { text, body: [] }
  const top = typescript.parse(text).topNode
  return { text, body: children(top).flatMap(node => statementOf(node, { text, block, depth: 0 })) }
}

const block = (node: SyntaxNode, reading: Reading): readonly Statement[] =>
  parts(node).flatMap(child => statementOf(child, reading))

/** One statement; none for what stands between statements. */
function statementOf(node: SyntaxNode, outer: Reading): Statement[] {
  const at = { from: node.from, to: node.to }
  if (node.name === ";") return []
  if (outer.depth > deepest || node.type.isError) return [{ ...at, kind: "otherStatement" }]
  const reading = { ...outer, depth: outer.depth + 1 }
  const list = children(node)
  const nothing: Statement = { ...at, kind: "block", body: [] }
  const other: Expression = { ...at, kind: "other" }
  const expression = (child: SyntaxNode | null | undefined): Expression =>
    child ? expressionOf(child, reading) : other
  const inner = (child: SyntaxNode | null | undefined): Statement =>
    (child ? statementOf(child, reading)[0] : undefined) ?? nothing
  const slice = (child: SyntaxNode | undefined | null): string | null =>
    child ? reading.text.slice(child.from, child.to) : null
  /** the body of a loop: what comes last */
  const body = (): Statement => inner(list.at(-1))
  switch (node.name) {
    case "VariableDeclaration":
      return [
        {
          ...at,
          kind: "declare",
          keyword: slice(list[0]) ?? "let",
          items: declarators(list.slice(1), reading),
        },
      ]
    case "ExpressionStatement":
      return list[0] ? [{ ...at, kind: "expression", expression: expression(list[0]) }] : []
    case "Block":
      return [{ ...at, kind: "block", body: block(node, reading) }]
    case "IfStatement": {
      const otherwise = list.findIndex(child => child.name === "else")
      return [
        {
          ...at,
          kind: "if",
          test: expression(node.getChild("ParenthesizedExpression")),
          yes: inner(list[2]),
          no: otherwise < 0 ? null : inner(list[otherwise + 1]),
        },
      ]
    }
    case "WhileStatement":
      return [
        { ...at, kind: "while", test: expression(node.getChild("ParenthesizedExpression")), body: body() },
      ]
    case "DoStatement":
      return [
        {
          ...at,
          kind: "do",
          test: expression(node.getChild("ParenthesizedExpression")),
          body: inner(list[1]),
        },
      ]
    case "ForStatement":
      return [forOf(node, reading, body()) ?? { ...at, kind: "otherStatement" }]
    case "ReturnStatement": {
      const value = list.find(child => child.name !== "return" && child.name !== ";")
      return [{ ...at, kind: "return", value: value ? expression(value) : null }]
    }
    case "ThrowStatement":
      return [{ ...at, kind: "throw", value: expression(list[1]) }]
    case "BreakStatement":
      return [{ ...at, kind: "break", label: slice(node.getChild("Label")) }]
    case "ContinueStatement":
      return [{ ...at, kind: "continue", label: slice(node.getChild("Label")) }]
    case "LabeledStatement":
      return [{ ...at, kind: "labeled", label: slice(list[0]) ?? "", body: body() }]
    case "SwitchStatement":
      return [switchOf(node, reading)]
    case "TryStatement": {
      const handler = node.getChild("CatchClause")?.getChild("Block")
      const last = node.getChild("FinallyClause")?.getChild("Block")
      return [
        {
          ...at,
          kind: "try",
          body: inner(node.getChild("Block")),
          handler: handler ? inner(handler) : null,
          last: last ? inner(last) : null,
        },
      ]
    }
    case "FunctionDeclaration":
      return [{ ...at, kind: "functionDeclaration", function: functionOf(node, reading) }]
    case "TypeAliasDeclaration":
    case "InterfaceDeclaration": {
      const name = slice(node.getChild("TypeDefinition"))
      const type = list.find(child => child.name === "ObjectType") ?? list.at(-1)
      return name && type
        ? [{ ...at, kind: "type", name, annotation: annotationOf(type, reading.text) }]
        : [{ ...at, kind: "otherStatement" }]
    }
    case "ExportDeclaration": {
      const exported = list.find(child => child.name.endsWith("Declaration"))
      return exported ? statementOf(exported, reading) : []
    }
    default:
      return [{ ...at, kind: "otherStatement" }]
  }
}

/** `a: T = 1, b = 2` after the keyword. */
function declarators(list: readonly SyntaxNode[], reading: Reading): Declarator[] {
  const found: Declarator[] = []
  for (let i = 0; i < list.length; i++) {
    const child = list[i]!
    const last = found.at(-1)
    if (
      ["VariableDefinition", "ObjectPattern", "ArrayPattern"].includes(child.name) &&
      list[i - 1]?.name !== "Equals"
    )
      found.push({
        target: targetOf(child, reading),
        annotation: null,
        value: null,
        from: child.from,
        to: child.to,
      })
    else if (last && child.name === "TypeAnnotation")
      found[found.length - 1] = { ...last, annotation: annotationOf(child, reading.text), to: child.to }
    else if (last && child.name === "Equals") {
      const value = list[++i]
      if (value && value.name !== ";")
        found[found.length - 1] = { ...last, value: expressionOf(value, reading), to: value.to }
    }
  }
  return found
}

function forOf(node: SyntaxNode, reading: Reading, body: Statement): Statement | null {
  const at = { from: node.from, to: node.to }
  const head = children(node)[1]
  if (!head) return null
  if (head.name === "ForOfSpec" || head.name === "ForInSpec") {
    const list = children(head)
    const between = list.findIndex(child => child.name === "of" || child.name === "in")
    const target = list[between - 1]
    const iterated = list[between + 1]
    if (!target || !iterated) return null
    return {
      ...at,
      kind: head.name === "ForOfSpec" ? "forOf" : "forIn",
      target: targetOf(target, reading),
      list: expressionOf(iterated, reading),
      body,
    }
  }
  if (head.name !== "ForSpec") return null
  // the declaration swallows its own semicolon; the other parts are told apart by counting them
  let init: Statement | null = null
  let test: Expression | null = null
  let update: Expression | null = null
  let semicolons = 0
  for (const child of children(head)) {
    if (child.name === ";") semicolons++
    else if (child.name === "VariableDeclaration") {
      init = statementOf(child, reading)[0] ?? null
      semicolons++
    } else if (child.name !== "(" && child.name !== ")") {
      const expression = expressionOf(child, reading)
      if (semicolons === 0) init = { kind: "expression", expression, from: child.from, to: child.to }
      else if (semicolons === 1) test = expression
      else update = expression
    }
  }
  return { ...at, kind: "for", init, test, update, body }
}

function switchOf(node: SyntaxNode, reading: Reading): Statement {
  const on = node.getChild("ParenthesizedExpression")
  const cases: { test: Expression | null; body: Statement[] }[] = []
  const bodyNode = node.getChild("SwitchBody")
  for (const child of bodyNode ? parts(bodyNode) : []) {
    if (child.name === "CaseLabel" || child.name === "DefaultLabel") {
      const test = children(child).find(one => !["case", "default", ":"].includes(one.name))
      cases.push({ test: test ? expressionOf(test, reading) : null, body: [] })
    } else cases.at(-1)?.body.push(...statementOf(child, reading))
  }
  const at = { from: node.from, to: node.to }
  return {
    ...at,
    kind: "switch",
    on: on ? expressionOf(on, reading) : { ...at, kind: "other" },
    cases,
  }
}
