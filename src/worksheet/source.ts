import type { Problem } from "../cell/problem.ts"

/** Collects what is wrong with one worksheet file, each with its line. */
export interface Findings {
  readonly file: string
  readonly problems: Problem[]
}

/** Adds one problem at a line of the file. */
export function report(
  findings: Findings,
  line: number,
  problem: { code: string; text: string; todo: string; column?: number; excerpt?: string },
): void {
  findings.problems.push({
    code: problem.code,
    text: problem.text,
    todo: problem.todo,
    where: { file: findings.file, line, column: problem.column ?? 1 },
    ...(problem.excerpt === undefined ? {} : { excerpt: problem.excerpt }),
  })
}

/** Line ends to "\n", byte-order mark off: the text as every later stage counts it. */
export function normalise(text: string): string {
  return text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n")
}

/** What names a worksheet, cell, blank, parameter or check may have. */
export const identifier = /^[A-Za-z][A-Za-z0-9_]*$/
export const hyphenated = /^[A-Za-z][A-Za-z0-9_-]*$/
