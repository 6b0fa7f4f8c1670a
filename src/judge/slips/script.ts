import type { SyntaxNode, Tree } from "@lezer/common"
import { parser } from "@lezer/javascript"
import type { Program } from "../../cell/contract.ts"

/** The author's program as a syntax tree, and the blank whose answer is to be rewritten. */
export interface Script {
  readonly text: string
  readonly tree: Tree
  readonly timeStep: string
  readonly blank: {
    readonly name: string
    readonly from: number
    readonly to: number
    readonly inline: boolean
  }
}

/** A change of the text within a blank. */
export interface Edit {
  readonly from: number
  readonly to: number
  readonly insert: string
}

const typescript = parser.configure({ dialect: "ts" })

/** One script a blank, in document order. */
export function scriptsOf(program: Program): Script[] {
  const tree = typescript.parse(program.text)
  return program.blanks.map(blank => ({ text: program.text, tree, timeStep: program.timeStep, blank }))
}

export const textOf = (script: Pick<Script, "text">, node: SyntaxNode): string =>
  script.text.slice(node.from, node.to)

/** All nodes inside the blank, outermost first, in the order of the text. */
export function nodesIn(script: Script, ...names: readonly string[]): SyntaxNode[] {
  const { from, to } = script.blank
  const out: SyntaxNode[] = []
  script.tree.iterate({
    from,
    to,
    enter: ref => {
      if (ref.from >= from && ref.to <= to && ref.to > ref.from && names.includes(ref.name))
        out.push(ref.node)
    },
  })
  return out
}

export function everyNode(script: Pick<Script, "tree">, ...names: readonly string[]): SyntaxNode[] {
  const out: SyntaxNode[] = []
  script.tree.iterate({
    enter: ref => {
      if (names.includes(ref.name)) out.push(ref.node)
    },
  })
  return out
}

export function childrenOf(node: SyntaxNode): SyntaxNode[] {
  const out: SyntaxNode[] = []
  for (let child = node.firstChild; child !== null; child = child.nextSibling) {
    if (child.name !== "LineComment" && child.name !== "BlockComment") out.push(child)
  }
  return out
}

/** The text of a blank after some edits; edits do not overlap. */
export function applyEdits(script: Script, edits: readonly Edit[]): string {
  const { from, to } = script.blank
  let out = ""
  let at = from
  for (const edit of [...edits].sort((a, b) => a.from - b.from)) {
    out += script.text.slice(at, edit.from) + edit.insert
    at = edit.to
  }
  return out + script.text.slice(at, to)
}

export const replace = (node: SyntaxNode, insert: string): Edit => ({ from: node.from, to: node.to, insert })
