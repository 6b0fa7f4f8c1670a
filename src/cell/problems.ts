import { lineAt, placeOf } from "./assemble.ts"
import type { Program } from "./contract.ts"
import { operatorProblemCodes } from "./operator-error.ts"
import type { Problem } from "./problem.ts"

/** Codes of the problems that this room words; each has a page in public/problems. */
export const cellProblemCodes = [
  ...operatorProblemCodes,
  "became-not-finite",
  "blank-reaches-out",
  "bracket-not-closed",
  "bracket-not-opened",
  "broken-character",
  "cannot-understand",
  "cell-not-whole",
  "constant-changed",
  "decimal-comma",
  "declared-twice",
  "empty-blank",
  "grew-without-bound",
  "kinds-disagree",
  "may-be-unset",
  "nested-too-deep",
  "no-effect",
  "no-such-property",
  "not-a-function",
  "not-allowed-here",
  "nothing-returned",
  "program-error",
  "sign-missing",
  "sign-of-paper",
  "something-missing",
  "text-not-closed",
  "thrown-value",
  "time-step-too-long",
  "too-deep",
  "too-large",
  "unknown-name",
  "used-before-made",
  "wrong-kind",
  "wrong-operand",
] as const

export type CellProblemCode = (typeof cellProblemCodes)[number]

/** What to do about a line that breaks off behind a sign. */
export const completeLine = "Complete the line: a name, a number or a bracket belongs there."

/** A problem with a stretch of the program, with the line it stands on. */
export function problemAt(
  program: Program,
  from: number,
  to: number,
  code: CellProblemCode,
  text: string,
  todo: string,
): Problem {
  const excerpt = lineAt(program.text, Math.min(from, program.text.length)).slice(0, 200)
  return { code, text, todo, where: placeOf(program, from, to), ...(excerpt === "" ? {} : { excerpt }) }
}
