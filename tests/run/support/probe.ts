import { afterAll } from "vitest"
import { createNodeRunner } from "../../../src/run/node/runner.ts"
import { raw, request } from "./program.ts"

/**
 * Asks from inside a run, past the compiler: each question is an expression, and the answer is what kind of thing it
 * gave, or "closed" where it threw.
 */
export function createProbe() {
  const runner = createNodeRunner()
  afterAll(() => runner.close())
  return {
    runner,
    async ask(...questions: readonly string[]): Promise<Record<string, string>> {
      const js = questions
        .map(
          q =>
            `try { const a = (${q}); lib.console.log(a === null ? "null" : typeof a) } catch { lib.console.log("closed") }`,
        )
        .join("\n")
      const { output, problem } = await runner.run(request(raw(js)))
      if (problem !== null) throw new Error(problem.text)
      return Object.fromEntries(questions.map((q, i) => [q, output[i]!]))
    },
  }
}

/** Every question closed. */
export const allClosed = (questions: readonly string[]): Record<string, string> =>
  Object.fromEntries(questions.map(q => [q, "closed"]))
