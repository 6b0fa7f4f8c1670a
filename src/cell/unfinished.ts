import type { File, Node } from "@babel/types"
import type { Program } from "./contract.ts"
import type { Filled } from "./empty-blanks.ts"
import type { Problem } from "./problem.ts"
import { completeLine, problemAt } from "./problems.ts"
import { walk } from "./syntax.ts"

/**
 * Lines of a blank that break off after = and so take the next line, which gives a value of its own, for theirs: the language
 * reads `p =` above `r = r + v * dt` as p = r = r + v * dt.
 */
export function unfinishedLines(program: Program, file: File, { text, toProgram }: Filled): Problem[] {
  const problems: Problem[] = []
  if (!endsInSign.test(text)) return problems
  walk(file.program, node => {
    const sign = brokenOff(node, text)
    if (sign === null) return true
    const [from, to, next] = [sign.from, sign.to, sign.next].map(toProgram) as [number, number, number]
    const blank = program.blanks.find(one => one.from <= from && to <= one.to)
    // a line that the student set in further than the one before continues it on purpose
    const goesOn = blank && next < blank.to && indentAt(text, sign.next) > indentAt(text, sign.from)
    if (blank && !goesOn)
      problems.push(
        problemAt(
          program,
          from,
          to,
          "something-missing",
          `Something is missing after ${text.slice(sign.from, sign.to)}`,
          completeLine,
        ),
      )
    return true
  })
  return problems
}

/** Spares most programs the walk. */
const endsInSign = /=[^\S\n]*(?:\/\/[^\n]*)?\n/

/** The = sign, or += and the like, at the end of a line before one that is an assignment by itself. */
function brokenOff(
  node: Node,
  text: string,
): { readonly from: number; readonly to: number; readonly next: number } | null {
  const [left, right] =
    node.type === "AssignmentExpression"
      ? [node.left, node.right]
      : node.type === "VariableDeclarator"
        ? [node.id, node.init]
        : [null, null]
  if (left === null || right?.type !== "AssignmentExpression" || right.extra?.parenthesized) return null
  const between = text.slice(left.end!, right.start!)
  const sign = /^(\s*)(\S*=)[^\S\n]*(?:\/\/[^\n]*)?\n/.exec(between)
  if (sign === null) return null
  const from = left.end! + sign[1]!.length
  return { from, to: from + sign[2]!.length, next: right.start! }
}

/** How far the line on which an offset stands is set in. */
function indentAt(text: string, offset: number): number {
  const start = text.lastIndexOf("\n", offset - 1) + 1
  return /^[ \t]*/.exec(text.slice(start, offset))![0].length
}
