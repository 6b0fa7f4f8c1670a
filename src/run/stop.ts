import type { Problem } from "../cell/problem.ts"
import type { RunProblemCode } from "./codes.ts"

/**
 * Thrown to end a run that may not go on. A program can catch it but not undo it: the run remembers its first
 * stop, and every later call to the host throws that one again.
 */
export class RunStop {
  readonly problem: Problem
  /** the site that the program gave, where it gave one */
  readonly site: number | undefined

  constructor(problem: Problem, site?: number) {
    this.problem = Object.freeze({ ...problem })
    this.site = site
    Object.freeze(this)
  }

  toString(): string {
    return this.problem.text
  }
}

export const stop = (
  code: RunProblemCode | "empty-blank" | "too-deep",
  text: string,
  todo: string,
  site?: number,
): RunStop => new RunStop({ code, text, todo }, site)
