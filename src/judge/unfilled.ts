import { placeOf } from "../cell/assemble.ts"
import type { Program } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"

/** Blanks that hold no program: nothing, or comments such as the starter's. */
export function unfilledBlanks(program: Program): Problem[] {
  return program.blanks
    .filter(({ from, to }) => withoutComments(program.text.slice(from, to)).trim() === "")
    .map(({ name, from, to }) => ({
      code: "empty-blank",
      text: `The blank “${name}” is not filled yet.`,
      todo: "Write your answer into it.",
      where: placeOf(program, from, to),
    }))
}

/** Good enough to see whether anything is left: a comment sign inside a text only leaves more. */
const withoutComments = (text: string): string =>
  text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/\/\/[^\n]*/g, "")
