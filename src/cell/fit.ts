import type { File, Node } from "@babel/types"
import type { Program } from "./contract.ts"
import type { Problem } from "./problem.ts"
import { problemAt } from "./problems.ts"
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
  const stretches = stretchesOf(whole)
  for (const cell of program.cells) {
    const over = crossing(stretches, { from: toText(cell.from), to: toText(cell.to) })
    if (over) return [cellProblem(whole, over, cell.name)]
  }
  const problems: Problem[] = []
  for (const blank of program.blanks) {
    const region = { from: toText(blank.from), to: toText(blank.to) }
    if (region.to <= region.from || program.text.slice(blank.from, blank.to).trim() === "") continue
    const over = crossing(stretches, region)
    if (over) problems.push(blankProblem(whole, over, region, blank.inline))
  }
  return problems
}

interface Stretches {
  /** may hold a region whole: nodes of the tree, bracket pairs */
  readonly wide: readonly Stretch[]
  /** may not even hold it: words, numbers, texts, comments */
  readonly narrow: readonly Stretch[]
}

interface Token {
  readonly type: string | { readonly label: string }
  readonly start: number
  readonly end: number
}

function stretchesOf({ file }: Whole): Stretches {
  const wide: Stretch[] = []
  const narrow: Stretch[] = []
  walk(file.program, (node: Node) => {
    wide.push({ from: node.start!, to: node.end! })
    return true
  })
  const open: number[] = []
  for (const token of (file.tokens ?? []) as readonly Token[]) {
    const label = typeof token.type === "string" ? token.type : token.type.label
    if (token.end > token.start) narrow.push({ from: token.start, to: token.end })
    if (/^(\(|\[|\{|\$\{|\{\||#\{|\[\||#\[)$/.test(label)) open.push(token.start)
    else if (/^(\)|\]|\}|\|\}|\|\])$/.test(label)) {
      const from = open.pop()
      if (from !== undefined) wide.push({ from, to: token.end })
    }
  }
  return { wide, narrow }
}

/** The first stretch that crosses an edge of the region. */
function crossing({ wide, narrow }: Stretches, region: Stretch): Stretch | undefined {
  const touches = (s: Stretch) => s.from < region.to && s.to > region.from
  const inside = (s: Stretch) => s.from >= region.from && s.to <= region.to
  const holds = (s: Stretch) => s.from <= region.from && s.to >= region.to
  return narrow.find(s => touches(s) && !inside(s)) ?? wide.find(s => touches(s) && !inside(s) && !holds(s))
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
