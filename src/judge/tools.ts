import type { CompileResult, Program } from "../cell/contract.ts"
import type { RunOutcome, RunRequest } from "../run/contract.ts"

/** What the judge needs from outside: a compiler and a place to run programs. Both the page and Node bring their own. */
export interface JudgeTools {
  compile(program: Program): Promise<CompileResult>
  run(request: RunRequest): Promise<RunOutcome>
}

export type RunTool = Pick<JudgeTools, "run">

/** Seed of `random()` in every judged run, of references and of answers alike, so that they see the same numbers. */
export const judgeSeed = 1

/** Time steps that a verdict starts from, as parts of the given one. */
export const firstFactors: readonly number[] = [1, 1 / 2, 1 / 4]
/** … and how much shorter they may get where those do not tell. */
export const finestFactor = 1 / 32
