import type { Program } from "./contract.ts"
import type { Problem } from "./problem.ts"
import { problemAt } from "./problems.ts"

/** The parser's time grows with the square of the remarks that follow one upon the other: at this many it is a tenth of a second. */
const mostRemarks = 5_000

/** More remarks in a row than the parser can pass in good time; undefined in any text that a person wrote. */
export function tooManyRemarks(program: Program): Problem | undefined {
  const { text } = program
  let row = 0
  let start = 0
  let at = 0
  while (at < text.length) {
    const sign = text.charCodeAt(at)
    if (sign <= 32) {
      at++
      continue
    }
    const next = sign === 47 ? text[at + 1] : ""
    if (next !== "/" && next !== "*") {
      row = 0
      // on to the next place where a remark could begin
      const slash = text.indexOf("/", at + 1)
      if (slash < 0) return undefined
      at = slash
      continue
    }
    if (row === 0) start = at
    if (++row > mostRemarks) {
      return problemAt(
        program,
        start,
        start + 2,
        "cannot-understand",
        `More than ${mostRemarks} remarks follow one upon the other from here on.`,
        "Take most of them away.",
      )
    }
    const end = next === "/" ? text.indexOf("\n", at) : text.indexOf("*/", at + 2)
    if (end < 0) return undefined
    at = next === "/" ? end + 1 : end + 2
  }
  return undefined
}
