import type { Compiled } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { AnswerFile, StudentSheet, Worksheet } from "../worksheet/contract.ts"
import type { CheckResult, Evidence, Judgement, Reference } from "./contract.ts"
import { drawParameters, drawSeeds, ownParameters } from "./draws.ts"
import { collectEvidence, noEvidence } from "./evidence.ts"
import { lookAt } from "./look.ts"
import { numberWords, withUnit } from "./quantity.ts"
import { markQuestions } from "./questions.ts"
import { NoReference, programOf } from "./reference.ts"
import type { References } from "./references.ts"
import { judgeSheet } from "./sheet.ts"
import type { JudgeTools } from "./tools.ts"
import { unfilledBlanks } from "./unfilled.ts"

/**
 * Marks one answer: every check at the sheet's own parameters, then those that are met also at hidden draws, and
 * the questions that have keys. The same worksheet, answers and seed give the same judgement, byte for byte.
 *
 * @param references kept by the caller over all answers of a batch
 * @param seen handed the evidence at the sheet's own parameters and its reference: for reports that draw the motions
 * @throws NoReference when the worksheet's own answers do not run
 */
export async function markAnswer(
  worksheet: Worksheet,
  answers: AnswerFile,
  tools: JudgeTools,
  references: References,
  seen?: (evidence: Evidence, reference: Reference) => void,
): Promise<Judgement> {
  const { sheet } = worksheet
  const program = programOf(worksheet, answers.answers)
  const result = await tools.compile(program)
  const reference = await references.get(worksheet, tools, ownParameters(sheet), true)
  const evidence = result.ok
    ? (await collectEvidence(sheet, result.compiled, tools, reference, { look: lookAt(sheet) }))!
    : noEvidence(result.problems[0] ?? null, unfilledBlanks(program))
  seen?.(evidence, reference)
  let checks = judgeSheet(sheet, reference, evidence)
  if (result.ok) checks = await tryDraws(worksheet, checks, result.compiled, answers.seed, tools, references)
  const all = [...checks, ...markQuestions(worksheet, answers)]
  return {
    points: total(all.map(check => check.points)),
    outOf: total(all.map(check => check.outOf)),
    checks: all,
    problems: problemsOf(result.ok ? [] : result.problems, evidence.problem, evidence.unfilled),
  }
}

/** Checks that are met at the sheet's own values must be met at others too: there a copied curve shows. */
async function tryDraws(
  worksheet: Worksheet,
  checks: readonly CheckResult[],
  compiled: Compiled,
  studentSeed: number,
  tools: JudgeTools,
  references: References,
): Promise<CheckResult[]> {
  const { sheet } = worksheet
  const standing = [...checks]
  const most = Math.max(0, ...sheet.checks.map(check => check.draws))
  if (!sheet.parameters.some(parameter => parameter.vary)) return standing
  for (const [i, seed] of drawSeeds(sheet, studentSeed, most).entries()) {
    const asked = sheet.checks.filter((check, j) => check.draws > i && standing[j]!.verdict === "met")
    if (asked.length === 0) break
    const parameters = drawParameters(sheet, seed)
    const reference = await references.get(worksheet, tools, parameters, false).catch(authorsFault)
    // Where the author's own answers stop, nothing can be asked of the student's.
    if (reference === null) continue
    const part: StudentSheet = { ...sheet, checks: asked }
    // Open blanks that these checks hang on have been told at the sheet's own values.
    const evidence = {
      ...(await collectEvidence(part, compiled, tools, reference, { look: lookAt(sheet) }))!,
      unfilled: [],
    }
    for (const drawn of judgeSheet(part, reference, evidence)) {
      if (drawn.verdict === "met") continue
      const at = sheet.checks.findIndex(check => check.name === drawn.name)
      standing[at] = {
        ...standing[at]!,
        verdict: "not met",
        points: 0,
        departsAt: drawn.departsAt,
        message: drawWords(sheet, parameters, drawn.message),
      }
    }
  }
  return standing
}

function authorsFault(cause: unknown): null {
  if (cause instanceof NoReference) return null
  throw cause
}

/** How feedback starts where only a hidden draw shows the fault: the motion at the sheet's own values is right. */
export const rightOnlyHere = "With the values on the sheet it comes out right"

function drawWords(sheet: StudentSheet, parameters: Readonly<Record<string, number>>, seen: string): string {
  const values = sheet.parameters
    .filter(parameter => parameter.vary)
    .map(
      ({ name, unit }) =>
        `${name} = ${unit === "1" ? numberWords(parameters[name]!) : withUnit(parameters[name]!, unit)}`,
    )
  return `${rightOnlyHere}, but not with others, such as ${values.join(", ")}: the lines must compute the motion from the names of the parameters, not from numbers that fit one case. ${seen}`
}

/** Byte-safe sum of points such as 0.1: rounded to a millionth. */
const total = (points: readonly number[]): number => Math.round(points.reduce((a, b) => a + b, 0) * 1e6) / 1e6

function problemsOf(
  compile: readonly Problem[],
  run: Problem | null,
  unfilled: readonly Problem[],
): readonly Problem[] {
  const stopped = run === null || compile.some(problem => problem.text === run.text) ? [] : [run]
  const open = unfilled.filter(
    problem => ![...compile, ...stopped].some(other => other.text === problem.text),
  )
  return [...open, ...compile, ...stopped]
}
