import { type ParserOptions, parse } from "@babel/parser"
import type { Comment, File, Node } from "@babel/types"

const options: ParserOptions = {
  sourceType: "script",
  strictMode: true,
  plugins: ["typescript"],
  annexB: false,
  // misplaced.ts says it in our words
  allowImportExportEverywhere: true,
  tokens: true,
  attachComment: false,
}

/** What the parser said of a text that is no program. */
export interface SyntaxFault {
  readonly offset: number
  /** the parser's own short name for the fault, "" if it has none */
  readonly reason: string
  readonly message: string
  readonly tooDeep: boolean
}

export type Parsed =
  | { readonly ok: true; readonly file: File }
  | { readonly ok: false; readonly fault: SyntaxFault }

/** The syntax tree of a TypeScript text in strict mode, or the first fault. Never throws. */
export function parseText(text: string): Parsed {
  try {
    return { ok: true, file: parse(text, options) }
  } catch (cause) {
    const fault = cause as { pos?: number; reasonCode?: string; message?: string }
    return {
      ok: false,
      fault: {
        offset: typeof fault.pos === "number" ? Math.min(fault.pos, text.length) : 0,
        reason: fault.reasonCode ?? "",
        message: String(fault.message ?? cause).replace(/ \(\d+:\d+\)$/, ""),
        tooDeep: cause instanceof RangeError,
      },
    }
  }
}

/** Nodes of the tree with types beside them that stand for something when the program runs. */
const running = new Set([
  "TSAsExpression",
  "TSSatisfiesExpression",
  "TSNonNullExpression",
  "TSTypeAssertion",
  "TSInstantiationExpression",
  "TSParameterProperty",
  "TSModuleDeclaration",
  "TSModuleBlock",
])

/** True for what the type stripper takes away or handles alone: copied as it stands, never looked into. */
export function isTypeOnly(node: Node): boolean {
  const { type } = node
  if (type.charCodeAt(0) === 84 && type.charCodeAt(1) === 83) return !running.has(type)
  return (node as { declare?: boolean }).declare === true
}

const notChildren = new Set(["type", "start", "end", "loc", "range", "extra", "errors", "tokens", "comments"])

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as { type?: unknown }).type === "string"

/** Where a node keeps the nodes below it once they were asked for: every part of compiling asks again. */
const below = Symbol("below")
type Remembering = Node & { [below]?: readonly Node[] }

const none: readonly Node[] = []

/** The nodes right below a node, types left out, in the order of the text. */
export function childrenOf(node: Node): readonly Node[] {
  return ((node as Remembering)[below] ??= findChildren(node))
}

function findChildren(node: Node): readonly Node[] {
  const found: Node[] = []
  for (const key in node) {
    if (notChildren.has(key)) continue
    const value = (node as unknown as Record<string, unknown>)[key]
    if (typeof value !== "object" || value === null) continue
    if (Array.isArray(value)) {
      for (const item of value) if (isNode(item) && !isTypeOnly(item)) found.push(item)
    } else if (isNode(value) && !isTypeOnly(value)) found.push(value)
  }
  for (let i = 1; i < found.length; i++) {
    if (found[i]!.start! < found[i - 1]!.start!) return found.sort((a, b) => a.start! - b.start!)
  }
  return found.length === 0 ? none : found
}

/** Calls `visit` for every node that runs, parents first. Return false to leave out what is below. */
export function walk(root: Node, visit: (node: Node, parent: Node | null) => boolean | undefined): void {
  const pending: Node[] = [root]
  const parents: (Node | null)[] = [null]
  while (pending.length > 0) {
    const node = pending.pop()!
    if (visit(node, parents.pop()!) === false) continue
    const children = childrenOf(node)
    for (let i = children.length - 1; i >= 0; i--) {
      pending.push(children[i]!)
      parents.push(node)
    }
  }
}

export const commentsOf = (file: File): readonly Comment[] => file.comments ?? []
