import type { Judgement, Reference } from "../judge/contract.ts"
import { type Collecting, collectEvidence } from "../judge/evidence.ts"
import { judgeSheet } from "../judge/sheet.ts"
import type { Runner } from "../run/contract.ts"
import type { StudentSheet } from "../worksheet/contract.ts"
import type { JudgeRequest } from "./session.ts"

/** The judge, in a file of its own: the page fetches it after the first motion is there. */
export async function judgeOnPage(
  sheet: StudentSheet,
  reference: Reference,
  runner: Runner,
  { compiled, outcome, overtaken }: JudgeRequest,
  look: NonNullable<Collecting["look"]>,
): Promise<Judgement | null> {
  const evidence = await collectEvidence(sheet, compiled, runner, reference, {
    known: outcome,
    overtaken,
    look,
  })
  if (!evidence) return null
  const checks = judgeSheet(sheet, reference, evidence)
  return {
    points: checks.reduce((sum, check) => sum + check.points, 0),
    outOf: checks.reduce((sum, check) => sum + check.outOf, 0),
    checks,
    problems: evidence.problem ? [evidence.problem] : [],
  }
}
