import type { File, Node } from "@babel/types"
import { childrenOf, isTypeOnly } from "./syntax.ts"

/** A stretch of the text that does not run. */
export interface Skip {
  readonly from: number
  readonly to: number
  /** what stands in its place: a line end where one may end a statement */
  readonly as: " " | "\n"
}

/** Remarks, in the order of the text. A remark over several lines leaves a line end: it can end a statement. */
export function remarksOf(file: File): Skip[] {
  return (file.comments ?? []).map(c => ({
    from: c.start!,
    to: c.end!,
    as: c.value.includes("\n") ? "\n" : " ",
  }))
}

/**
 * All that does not run: remarks, and the types, where taking them away is all that is needed. Null where types stand for something
 * that runs (an enum, a field made from a parameter) or the form is a rare one: then the stripper does it.
 */
export function skipsOf(file: File, text: string): Skip[] | null {
  const types: Skip[] = []
  const take = (from: number, to: number): void => {
    if (to > from) types.push({ from, to, as: " " })
  }
  const visit = (node: Node): boolean => {
    if (untyped.has(node.type)) {
      for (const child of childrenOf(node)) if (!visit(child)) return false
      return true
    }
    if (!plainForm(node)) return false
    switch (node.type) {
      case "TSAsExpression":
      case "TSSatisfiesExpression":
      case "TSNonNullExpression":
        take(afterBrackets(node.expression, text), node.end!)
        break
      case "Identifier":
        if (node.optional) take(text.indexOf("?", node.start!), node.end!)
    }
    const typed = node as unknown as Record<(typeof typeSlots)[number], Node | null | undefined>
    for (const slot of typeSlots) {
      const type = typed[slot]
      if (type && typeof type === "object" && type.type?.startsWith("TS")) take(type.start!, type.end!)
    }
    for (const child of typeStatements(node)) take(child.start!, child.end!)
    for (const child of childrenOf(node)) if (!visit(child)) return false
    return true
  }
  if (!visit(file.program)) return null
  const all = [...remarksOf(file), ...types].sort((a, b) => a.from - b.from || b.to - a.to)
  // what lies within another goes with it
  const outer: Skip[] = []
  for (const skip of all) {
    const last = outer[outer.length - 1]
    if (last === undefined || skip.from >= last.to) outer.push(skip)
    else if (skip.to > last.to) return null
  }
  return outer
}

/** Most of a program: nodes that have no place for a type of their own. */
const untyped: ReadonlySet<string> = new Set([
  "ArrayExpression",
  "AssignmentExpression",
  "BinaryExpression",
  "BooleanLiteral",
  "ConditionalExpression",
  "ExpressionStatement",
  "ForStatement",
  "IfStatement",
  "LogicalExpression",
  "MemberExpression",
  "NumericLiteral",
  "ObjectExpression",
  "ObjectProperty",
  "ReturnStatement",
  "StringLiteral",
  "UnaryExpression",
  "UpdateExpression",
  "WhileStatement",
])

const typeSlots = [
  "typeAnnotation",
  "returnType",
  "typeParameters",
  "superTypeParameters",
  "typeArguments",
] as const

/** Interfaces and names of types among statements: childrenOf leaves them out. */
function typeStatements(node: Node): Node[] {
  const body = (node as { body?: unknown }).body
  if (!Array.isArray(body)) return []
  return (body as Node[]).filter(isErasable)
}

const isErasable = (node: Node): boolean =>
  (node.type === "TSInterfaceDeclaration" || node.type === "TSTypeAliasDeclaration") && !node.declare

/** An `as` stands behind the brackets around its expression. */
function afterBrackets(node: Node, text: string): number {
  let at = node.end!
  if (node.extra?.parenthesized !== true) return at
  for (
    let depth = text.slice(node.extra.parenStart as number, node.start!).split("(").length - 1;
    depth > 0;
    depth--
  ) {
    at = text.indexOf(")", at) + 1
  }
  return at
}

const rareFlags = [
  "accessibility",
  "abstract",
  "override",
  "declare",
  "definite",
  "readonly",
  "implements",
  "decorators",
] as const

/** Whether nothing about the node itself but its types must go. */
function plainForm(node: Node): boolean {
  const flags = node as unknown as Record<string, unknown>
  for (const flag of rareFlags) {
    const value = flags[flag]
    if (value && !(Array.isArray(value) && value.length === 0)) return false
  }
  switch (node.type) {
    case "TSTypeAssertion":
    case "TSInstantiationExpression":
    case "TSParameterProperty":
    case "TSModuleDeclaration":
    case "TSExportAssignment":
      return false
    case "Identifier":
      return node.name !== "this"
    case "BlockStatement":
    case "Program":
    case "StaticBlock":
      return node.body.every(s => isErasable(s) || !isTypeOnly(s))
    case "SwitchCase":
      return node.consequent.every(s => !isTypeOnly(s))
    case "ClassBody":
      return node.body.every(m => !isTypeOnly(m))
    case "ClassProperty":
    case "ClassMethod":
    case "ObjectMethod":
      return !(node as { optional?: boolean }).optional
    default:
      return true
  }
}
