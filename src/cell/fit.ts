import type { File, Node } from "@babel/types"
import type { Program } from "./contract.ts"
import type { Problem } from "./problem.ts"
import { completeLine, problemAt } from "./problems.ts"
import { walk } from "./syntax.ts"

interface Whole {
  readonly program: Program
  readonly text: string
  readonly file: File
  toProgram(offset: number): number
  /** an offset of the program's own text as an offset of `text` */
  toText(offset: number): number
}

interface Stretch {
  readonly from: number
  readonly to: number
}

/**
 * What reaches over an edge that it must respect: each cell is whole by itself, and what a student types in a
 * blank stays in the blank. Every bracket, word and part of the syntax tree that touches such a region lies inside
 * it or holds all of it; so no blank closes a bracket that given lines opened, or swallows what follows.
 */
export function fitProblems(whole: Whole): Problem[] {
  const { program, toText } = whole
  const filled = program.blanks.filter(b => program.text.slice(b.from, b.to).trim() !== "")
  if (filled.length === 0 && program.cells.length < 2) return []
  const stretches = stretchesOf(whole)
  for (const cell of program.cells.length < 2 ? [] : program.cells) {
    const over = crossing(stretches, { from: toText(cell.from), to: toText(cell.to) })
    if (over) return [cellProblem(whole, over, cell.name)]
  }
  const problems: Problem[] = []
  for (const blank of filled) {
    const region = { from: toText(blank.from), to: toText(blank.to) }
    const over = crossing(stretches, region) ?? (blank.inline ? undefined : joining(stretches, region))
    if (over)
      problems.push(brokenOff(whole, stretches, region) ?? blankProblem(whole, over, region, blank.inline))
  }
  return problems
}

interface Stretches {
  readonly nodes: readonly Stretch[]
  readonly brackets: readonly Stretch[]
  readonly words: readonly Word[]
}

interface Word extends Stretch {
  /** a remark, which no rule of the language joins to anything */
  readonly remark: boolean
  readonly label: string
}

interface Token {
  readonly type: string | { readonly label: string }
  readonly start: number
  readonly end: number
}

function stretchesOf({ file }: Whole): Stretches {
  const nodes: Stretch[] = []
  const brackets: Stretch[] = []
  const words: Word[] = []
  walk(file.program, (node: Node) => {
    nodes.push({ from: node.start!, to: node.end! })
    return true
  })
  const open: number[] = []
  for (const token of (file.tokens ?? []) as readonly Token[]) {
    const label = typeof token.type === "string" ? token.type : token.type.label
    if (token.end <= token.start) continue
    words.push({ from: token.start, to: token.end, label, remark: label.startsWith("Comment") })
    if (/^(\(|\[|\{|\$\{)$/.test(label)) open.push(token.start)
    else if (/^[)\]}]$/.test(label)) {
      const from = open.pop()
      if (from !== undefined) brackets.push({ from, to: token.end })
    }
  }
  return { nodes, brackets, words }
}

const touches = (s: Stretch, region: Stretch): boolean => s.from < region.to && s.to > region.from
const inside = (s: Stretch, region: Stretch): boolean => s.from >= region.from && s.to <= region.to
const holds = (s: Stretch, region: Stretch): boolean => s.from <= region.from && s.to >= region.to

/** The first stretch that crosses an edge of the region: a word at all, a bracket pair or a part of the tree in part. */
function crossing({ nodes, brackets, words }: Stretches, region: Stretch): Stretch | undefined {
  const cut = words.find(w => touches(w, region) && !inside(w, region))
  if (cut) return cut
  const own = words.filter(w => !w.remark && inside(w, region))
  if (own.length === 0) return undefined
  // white space and remarks at its ends belong to the region, but to no part of the tree
  const core = { from: own[0]!.from, to: own[own.length - 1]!.to }
  // so does a ; that stands behind it: it ends the last statement, and nothing more
  const next = words.find(w => !w.remark && w.from >= core.to)
  const ended = (s: Stretch): boolean => s.from >= core.from && next?.label === ";" && s.to === next.to
  const part = (s: Stretch): boolean => touches(s, core) && !inside(s, core) && !holds(s, core) && !ended(s)
  return brackets.find(part) ?? nodes.find(part)
}

/** A word at an edge of whole lines that begins or ends no part of the tree: it joins the lines to those around them. */
function joining({ nodes, words }: Stretches, region: Stretch): Stretch | undefined {
  const own = words.filter(w => !w.remark && inside(w, region) && !/^[;,]$/.test(w.label))
  const parts = nodes.filter(n => inside(n, region))
  const first = own[0]
  const last = own[own.length - 1]
  if (first && !parts.some(n => n.from === first.from)) return first
  // a statement that ends in ; ends behind its last word
  if (last && !parts.some(n => n.to === last.to || (n.from <= last.from && n.to > last.to))) return last
  return undefined
}

/** A blank whose last line ends in a sign that wants a right side: the given line behind it was taken for that. */
function brokenOff(
  { program, text, toProgram }: Whole,
  { words }: Stretches,
  region: Stretch,
): Problem | undefined {
  const last = words.findLast(w => !w.remark && inside(w, region))
  const sign = last && text.slice(last.from, last.to)
  if (!last || !sign || !/^[-+*/%=<>&|?^]+$/.test(sign) || /^(\+\+|--)$/.test(sign)) return undefined
  return problemAt(
    program,
    toProgram(last.from),
    toProgram(last.to),
    "blank-reaches-out",
    `Something is missing after ${sign}: the given line below was taken for it.`,
    completeLine,
  )
}

function cellProblem({ program, toProgram }: Whole, over: Stretch, name: string): Problem {
  return problemAt(
    program,
    toProgram(over.from),
    toProgram(over.to),
    "cell-not-whole",
    `The cell "${name}" is not whole by itself: this runs on into another cell.`,
    "Close every bracket and end every statement in the cell where it begins.",
  )
}

function blankProblem(
  { program, toProgram }: Whole,
  over: Stretch,
  region: Stretch,
  inline: boolean,
): Problem {
  const from = Math.max(over.from, region.from)
  const to = Math.min(over.to, region.to)
  return problemAt(
    program,
    toProgram(from),
    toProgram(to),
    "blank-reaches-out",
    "What is typed in this blank runs together with the given text around it.",
    inline
      ? "Put brackets ( ) around what you typed, or check that every bracket and quote in it is closed."
      : "Check that every bracket and quote is closed inside the blank, and that its last line is complete.",
  )
}
