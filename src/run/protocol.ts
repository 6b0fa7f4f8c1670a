import type { Compiled } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { RunOutcome, RunRequest } from "./contract.ts"

/**
 * What passes between a runner and the place where programs run. `number` counts the runs, so that a late word
 * about an old run is never taken for one about the new.
 */
export type ToPlace =
  /**
   * runs of one program, one after the other, numbered from `number` on; without `compiled` it is the program of the run
   * before, with other parameters, say, or another step. One that fails, or leaves the realm worn, is the last.
   */
  | {
      readonly kind: "run"
      readonly number: number
      readonly compiled?: Compiled
      readonly requests: readonly Omit<RunRequest, "compiled">[]
    }
  /** the text with the trace of the program that has just failed, for a run that was begun without one */
  | { readonly kind: "trace"; readonly number: number; readonly compiled: Compiled }

export type FromPlace =
  /** ready for its first run */
  | { readonly kind: "ready" }
  /**
   * The run is over. `tracing`: the program failed and is now run again to find where, as soon as there is a text with
   * the trace; if that takes too long, the outcome stands as it is. `worn`: the canary of the realm was changed; the place must not be used again.
   */
  | {
      readonly kind: "outcome"
      readonly number: number
      readonly outcome: RunOutcome
      readonly tracing: boolean
      readonly worn: boolean
    }
  | { readonly kind: "traced"; readonly number: number; readonly problem: Problem; readonly worn: boolean }
