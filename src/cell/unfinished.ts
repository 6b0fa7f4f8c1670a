import type { File, Node } from "@babel/types"
import type { Program } from "./contract.ts"
import type { Filled } from "./empty-blanks.ts"
import type { Problem } from "./problem.ts"
import { problemAt } from "./problems.ts"
import { walk } from "./syntax.ts"

/**
 * Lines of a blank that break off after = and so take the next line, which gives a value of its own, for theirs: the language
 * reads `p =` above `r = r + v * dt` as p = r = r + v * dt.
 */
export function unfinishedLines(program: Program, file: File, { text, toProgram }: Filled): Problem[] {
  const problems: Problem[] = []
  walk(file.program, node => {
    const sign = brokenOff(node, text)
    if (sign !== null) {
      const from = toProgram(sign.from)
      const to = toProgram(sign.to)
      if (program.blanks.some(blank => blank.from <= from && to <= blank.to))
        problems.push(
          problemAt(
            program,
            from,
            to,
            "something-missing",
            `Something is missing after ${text.slice(sign.from, sign.to)}`,
            "Complete the line: a name, a number or a bracket belongs there.",
          ),
        )
    }
    return true
  })
  return problems
}

/** The = sign, or += and the like, at the end of a line before one that is an assignment by itself. */
function brokenOff(node: Node, text: string): { readonly from: number; readonly to: number } | null {
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
  return { from, to: from + sign[2]!.length }
}
