import type {
  Expression,
  ExpressionStatement,
  IfStatement,
  LabeledStatement,
  Statement,
  SwitchCase,
} from "@babel/types"
import { isTypeOnly } from "../syntax.ts"
import { endlessLoopWords } from "../trouble/endless-loop.ts"
import { countUnused } from "./assignments.ts"
import type { Emitter } from "./emitter.ts"

/** Statements one below the other; in the trace each notes its place first. */
export function list(e: Emitter, statements: readonly Statement[]): string {
  let out = ""
  for (const s of statements) {
    const one = statement(e, s)
    if (one !== "") out += `${one}\n`
  }
  return out
}

const unmarked = new Set(["FunctionDeclaration", "ClassDeclaration", "BlockStatement", "EmptyStatement"])

export function statement(e: Emitter, node: Statement): string {
  const marked = e.o.trace && !unmarked.has(node.type) && !isTypeOnly(node)
  const mark = marked ? `${e.o.hidden.of("at")}(${e.site(node, "statement")}); ` : ""
  return mark + bare(e, node)
}

function bare(e: Emitter, node: Statement): string {
  switch (node.type) {
    case "EmptyStatement":
      return ""
    case "ExpressionStatement":
    case "VariableDeclaration":
    case "ReturnStatement":
    case "ThrowStatement":
    case "BreakStatement":
    case "ContinueStatement":
    case "DoWhileStatement":
    case "DebuggerStatement":
      // every statement gets its own end, so that nothing emitted next can run on from it
      return `${(node.type === "ExpressionStatement" ? unusedStatement(e, node) : e.emit(node)).replace(/;\s*$/, "")};`
    default:
      return e.emit(node)
  }
}

const unusedStatement = (e: Emitter, node: ExpressionStatement): string =>
  e.copy(node, child => unused(e, child as Expression))

export const block = (e: Emitter, statements: readonly Statement[], first = ""): string =>
  `{ ${first}\n${list(e, statements)}}`

/** A statement that stands alone under if, else or a loop, always in braces. */
const under = (e: Emitter, node: Statement, first = ""): string =>
  node.type === "BlockStatement" ? block(e, node.body, first) : block(e, [node], first)

export function loop(e: Emitter, node: Statement & { body: Statement }): string {
  const end = node.type === "DoWhileStatement" ? node.end! : e.trimmedEnd(node.start!, node.body.start!)
  // a name that stands in for an empty blank is nothing to speak of
  const endless = e.o.emptyBlanks.size > 0 ? undefined : endlessLoopWords(node, e.o.text, e.o.scopes)
  const turn = e.o.trace ? ` ${e.o.hidden.of("at")}(${e.site(node, "turn")});` : ""
  return e.copy(node, child => {
    if (child === node.body) return under(e, node.body, e.guard(node.start!, end, "loop", endless) + turn)
    return node.type === "ForStatement" && child === node.update ? unused(e, child) : null
  })
}

/** An expression whose value nobody takes. */
const unused = (e: Emitter, node: Expression): string =>
  node.type === "UpdateExpression" ? countUnused(e, node) : e.emit(node)

export const branch = (e: Emitter, node: IfStatement): string =>
  e.copy(node, child =>
    child === node.consequent || (child === node.alternate && child.type !== "IfStatement")
      ? under(e, child as Statement)
      : null,
  )

export const labelled = (e: Emitter, node: LabeledStatement): string =>
  e.copy(node, child => (child === node.body ? bare(e, node.body) || ";" : e.gap(child.start!, child.end!)))

export const switchCase = (e: Emitter, node: SwitchCase): string =>
  `${node.test ? `case ${e.argument(node.test)}` : "default"}:\n${list(e, node.consequent)}`
