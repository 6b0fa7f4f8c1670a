import type { Compiled } from "../cell/contract.ts"
import { type Evidence, explainFailure } from "../cell/explain.ts"
import type { Problem } from "../cell/problem.ts"
import { readProblem } from "./outcome.ts"
import { RunStop, stop } from "./stop.ts"

/**
 * Puts what ended a program into words. What was thrown belongs to the program and may answer anything when it is
 * looked at, or throw; so the words are read at the door like any message, and there is an answer in every case.
 */
export function explain(
  thrown: unknown,
  compiled: Compiled,
  site: number | undefined,
  evidence: Evidence = {},
): Problem {
  const at = thrown instanceof RunStop ? (thrown.site ?? site) : site
  try {
    return readProblem(explainFailure(thrown, compiled, at, evidence)) ?? unexplained
  } catch {
    return unexplained
  }
}

const unexplained: Problem = stop(
  "program-failed",
  "The program ended with an error of its own making, which does not say what it is.",
  "Throw an Error with a message, or find the line that throws and take it out.",
).problem
