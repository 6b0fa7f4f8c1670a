import type { Problem } from "../cell/problem.ts"
import type { Asked } from "./asked.ts"
import type { ExitCode } from "./main.ts"

/** A problem as lines of text: what, where, the line itself, what to do, the page of its code. */
export function sayProblem(problem: Problem): string {
  const { where } = problem
  const place = where
    ? [
        where.file,
        where.cell && `cell “${where.cell}”`,
        where.blank && `blank “${where.blank}”`,
        `line ${where.line}${where.column > 1 ? `, column ${where.column}` : ""}`,
      ]
        .filter(Boolean)
        .join(", ")
    : ""
  const lines = [
    place ? `${place}: ${problem.text}` : problem.text,
    problem.excerpt === undefined ? "" : `    ${problem.excerpt}`,
    `    ${problem.todo}  (${problem.code})`,
  ]
  return lines.filter(Boolean).join("\n")
}

/** Characters that steer a terminal or turn its text round, but for tab and line end. */
const steering = /(?![\t\n])[\p{Cc}\p{Bidi_Control}]/gu

/**
 * What strangers wrote, as text that a terminal only shows: what would steer it stands there as its escape, which in
 * JSON means the same character.
 */
export const shown = (text: string): string =>
  text.replace(steering, sign => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`)

export const out = (text: string): void => void process.stdout.write(`${shown(text)}\n`)
export const err = (text: string): void => void process.stderr.write(`${shown(text)}\n`)

/** "1 blank", "3 blanks" */
export function count(n: number, word: string, plural = `${word}s`): string {
  return `${n.toLocaleString("en-GB")} ${n === 1 ? word : plural}`
}

/** Points without a tail of zeros. */
export function shortNumber(n: number): string {
  return String(Math.round(n * 100) / 100)
}

/** Says why a command does not go on, as text or as JSON, and gives the code it ends with. */
export function refuse(
  asked: Pick<Asked, "json">,
  problems: readonly Problem[],
  code: ExitCode = 2,
): ExitCode {
  if (asked.json) out(JSON.stringify({ problems }, null, 2))
  else for (const problem of problems) err(sayProblem(problem))
  return code
}
