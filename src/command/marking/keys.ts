import { createHash } from "node:crypto"
import { existsSync, readFileSync } from "node:fs"
import { dirname, join } from "node:path"
import { fileURLToPath } from "node:url"
import { drawPlaces } from "../../judge/index.ts"
import type { AnswerFile, Worksheet } from "../../worksheet/index.ts"

const sha = (text: string | Uint8Array): string => createHash("sha256").update(text).digest("hex")

/**
 * The program itself, with the versions of the libraries that it reads programs by: another build may judge otherwise, so it
 * starts anew.
 *
 * @param runnerFile the built child process
 */
export function programDigest(runnerFile: string): string {
  const own = fileURLToPath(import.meta.url)
  return sha([own, runnerFile, ...lockFile(own)].map(file => sha(readFileSync(file))).join(" "))
}

/** The nearest list of the libraries' versions above a file; none where it was taken away. */
function lockFile(from: string): string[] {
  for (let folder = dirname(from); folder !== dirname(folder); folder = dirname(folder)) {
    const file = join(folder, "package-lock.json")
    if (existsSync(file)) return [file]
  }
  return []
}

/** All of a worksheet that a verdict depends on: the task, its checks and keys, and the author's answers. */
export function marksDigest({ sheet, answers, keys }: Worksheet): string {
  const { digest, timeStep, parameters, cells, checks, questions } = sheet
  return sha(JSON.stringify([digest, timeStep, parameters, cells, checks, questions, answers, keys]))
}

/**
 * What the verdict over one set of answers depends on: worksheet, program, the text of each blank, the answer to each
 * question, and the hidden draws. Not the student: equal answers with the same draws have one verdict.
 */
export function verdictKey(program: string, marks: string, worksheet: Worksheet, file: AnswerFile): string {
  const { sheet } = worksheet
  const blanks = sheet.cells.flatMap(cell => cell.segments.flatMap(s => (s.kind === "blank" ? [s.name] : [])))
  const most = Math.max(0, ...sheet.checks.map(check => check.draws))
  return sha(
    JSON.stringify([
      program,
      marks,
      blanks.map(name => (Object.hasOwn(file.answers, name) ? file.answers[name] : null)),
      sheet.questions.map(({ name }) => file.questions[name] ?? null),
      drawPlaces(worksheet, file.student, most),
    ]),
  )
}
