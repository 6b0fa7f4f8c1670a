import type { Problem } from "../cell/problem.ts"
import { defaultLimits, type RunOutcome } from "../run/contract.ts"
import { lostOutcome } from "../run/outcome.ts"
import type { JudgeTools } from "./tools.ts"

/*
 * What ends a run may lie with the machine and the moment: a process that was lost, time or memory that ran out. A
 * verdict that rests on such a run may be another one tomorrow, so it is said, and not remembered.
 */
const lostForNow = new Set(["run-lost", "memory-limit"])
const ofTheMachine = new Set([...lostForNow, "time-limit", "runs-too-long"])

/** Whether a run was ended for the machine's sake rather than for what the program did. */
export const endedByMachine = (problem: Problem | null): boolean =>
  problem !== null && ofTheMachine.has(problem.code)

/** Whether a verdict may be another one at another time. */
export const isOfTheMoment = ({ problems }: { readonly problems: readonly Problem[] }): boolean =>
  problems.some(problem => endedByMachine(problem) || problem.code === "verdict-unsure")

/** Time that all runs of an answer at its own values, or at hidden ones, may take together, ms: some ten times what the longest honest ones take. */
const mostTogether = 30_000
/** Time that a run gets though next to none is left, ms: an honest one would need no more. */
const leastForOne = 2_000

const tooLong: Problem = {
  code: "runs-too-long",
  text: `The runs of this program took more than ${mostTogether / 1000} seconds together, so no more were made.`,
  todo: "Look for a line that works on very long texts or lists, and do without it.",
}

export interface Watched extends JudgeTools {
  /** what ended a run for the machine's sake, if anything did; said with the verdict */
  unsure(): Problem | null
}

/** Tools for one answer: a run that was lost is made once more, and it is kept in mind what the machine ended after all. */
export function watch(tools: JudgeTools): Watched {
  let spent = 0
  let ended: Problem | null = null
  return {
    compile: program => tools.compile(program),
    async run(request) {
      if (spent > mostTogether) {
        ended ??= tooLong
        return lostOutcome(tooLong, 0)
      }
      const asked = request.limits?.milliseconds ?? defaultLimits.milliseconds
      const milliseconds = Math.min(asked, Math.max(leastForOne, mostTogether - spent))
      const timed = { ...request, limits: { ...request.limits, milliseconds } }
      let outcome: RunOutcome = await tools.run(timed)
      spent += outcome.milliseconds
      if (outcome.problem !== null && lostForNow.has(outcome.problem.code) && spent <= mostTogether) {
        outcome = await tools.run(timed)
        spent += outcome.milliseconds
      }
      if (endedByMachine(outcome.problem)) ended ??= outcome.problem
      return outcome
    },
    unsure: () => ended && unsureVerdict(ended),
  }
}

const unsureVerdict = (ended: Problem): Problem => ({
  code: "verdict-unsure",
  text: `The computer ended a run of this program, perhaps with a shorter time step or other values: ${ended.text} What is said about it may come out otherwise at another time.`,
  todo: "Mark this answer again when the computer has less to do. If the same is said again, read the lines: they ask too much of it.",
})
