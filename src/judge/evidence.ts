import type { Compiled, Program } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import { defaultLimits, type RunOutcome, type RunRequest } from "../run/contract.ts"
import type { CheckRule, StudentSheet } from "../worksheet/contract.ts"
import type { Evidence, Looked, Reference } from "./contract.ts"
import { wantsFiner } from "./sheet.ts"
import { finestFactor, judgeSeed, type RunTool } from "./tools.ts"
import { unfilledBlanks } from "./unfilled.ts"
import { wishOf } from "./wish.ts"

/** An answer that could not be compiled: evidence of that, and of nothing else. */
export function noEvidence(problem: Problem | null, unfilled: readonly Problem[] = []): Evidence {
  return { unfilled, problem, finerProblem: null, factors: [], runs: [], timeStepFound: true, looked: null }
}

/**
 * Runs an answer at each factor. Limits grow as the step shrinks, so that a program that is let through at the
 * given step is not stopped at those that its reference takes. Never rejects; a failed run is part of the evidence.
 *
 * @param known the run at the given step, if there is one already (same parameters, same seed)
 */
export async function evidenceFor(
  compiled: Compiled,
  tools: RunTool,
  parameters: Readonly<Record<string, number>>,
  seed: number,
  factors: readonly number[],
  known: RunOutcome | null = null,
  excerpt?: RunRequest["excerpt"],
): Promise<Evidence> {
  const first = known ?? (await tools.run(judgedRun(compiled, parameters, seed, 1, excerpt)))
  let evidence: Evidence = {
    unfilled: unfilledBlanks(compiled.program),
    problem: first.problem,
    finerProblem: null,
    factors: [1],
    runs: [first.recordings],
    timeStepFound: first.timeStepFound,
    looked: null,
  }
  for (const factor of factors) {
    if (factor < 1) evidence = await refine(evidence, compiled, tools, parameters, seed, factor, excerpt)
  }
  return evidence
}

/** Adds the run at one more factor, where there is a time step to shorten. */
async function refine(
  evidence: Evidence,
  compiled: Compiled,
  tools: RunTool,
  parameters: Readonly<Record<string, number>>,
  seed: number,
  factor: number,
  excerpt: RunRequest["excerpt"],
): Promise<Evidence> {
  if (evidence.finerProblem !== null || !evidence.timeStepFound) return evidence
  const ended = cellsEnded(compiled, evidence.problem)
  if (ended === 0) return evidence
  const outcome = await tools.run(judgedRun(compiled, parameters, seed, factor, excerpt))
  const endedHere = cellsEnded(compiled, outcome.problem)
  if (endedHere < ended) return { ...evidence, finerProblem: outcome.problem }
  const names = new Set(compiled.program.cells.slice(0, ended).map(cell => cell.name))
  const recordings = outcome.recordings.filter(recording => names.has(recording.cell))
  return { ...evidence, factors: [...evidence.factors, factor], runs: [...evidence.runs, recordings] }
}

/** How many cells ran to their end: all before the one that the problem names. */
function cellsEnded(compiled: Compiled, problem: Problem | null): number {
  const { cells } = compiled.program
  if (problem === null) return cells.length
  return Math.max(
    0,
    cells.findIndex(cell => cell.name === problem.where?.cell),
  )
}

/**
 * Limits grow with the number of steps down to the shortest that a reference takes, a quarter of the given one. Beyond it an
 * answer may meet them without blame.
 */
const mostGrowth = 4

/** A run as the judge asks for it: at the given step with the usual limits, at shorter ones with more. */
export function judgedRun(
  compiled: Compiled,
  parameters: Readonly<Record<string, number>>,
  seed: number,
  factor: number,
  excerpt?: RunRequest["excerpt"],
): RunRequest {
  const more = Math.min(1 / factor, mostGrowth)
  const { turns, recorded, milliseconds } = defaultLimits
  const limits =
    factor === 1
      ? {}
      : { turns: more * turns, recorded: more * recorded, milliseconds: Math.sqrt(more) * milliseconds }
  return { compiled, parameters, seed, stepFactor: factor, limits, ...(excerpt ? { excerpt } : {}) }
}

export interface Collecting {
  /** the run at the reference's parameters and the given step, if it has been made already */
  readonly known?: RunOutcome | null
  /** asked between runs; true gives up and null comes back */
  readonly overtaken?: () => boolean
  /** reads the program's text, where a check asks about it */
  readonly look?: (program: Program) => Looked | Promise<Looked>
}

const aboutText = new Set<CheckRule["kind"]>(["units", "uses", "avoids"])

/**
 * The evidence that verdicts over `reference` need: runs at the given step and half of it and, while those leave a
 * check undecided, at shorter ones. The page and the marker both gather it here, so both decide on the same.
 */
export async function collectEvidence(
  sheet: StudentSheet,
  compiled: Compiled,
  tools: RunTool,
  reference: Reference,
  { known = null, overtaken = () => false, look }: Collecting = {},
): Promise<Evidence | null> {
  const { parameters, factors } = reference
  const wish = wishOf(sheet.checks)
  let evidence = await evidenceFor(compiled, tools, parameters, judgeSeed, [1], known, wish)
  if (look !== undefined && sheet.checks.some(check => aboutText.has(check.rule.kind)))
    evidence = { ...evidence, looked: await look(compiled.program) }
  if (factors.length < 2) return evidence
  for (let factor = 1 / 2; factor >= finestFactor; factor /= 2) {
    if (overtaken()) return null
    if (factor < 1 / 2 && !wantsFiner(sheet, reference, evidence)) break
    const finer = await refine(evidence, compiled, tools, parameters, judgeSeed, factor, wish)
    // Only a program that stops at steps which the reference takes is at fault; beyond them a limit may be met.
    if (finer === evidence || (finer.finerProblem !== null && !factors.includes(factor))) break
    evidence = finer
  }
  return evidence
}
