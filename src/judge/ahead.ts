import type { Compiled } from "../cell/contract.ts"
import type { RunOutcome, RunRequest } from "../run/contract.ts"
import { judgedRun } from "./evidence.ts"
import { judgeSeed, type RunTool } from "./tools.ts"

/** Every verdict looks at these two steps; which others it needs shows only then. */
const always = [1, 1 / 2] as const

export interface AheadTool extends RunTool {
  /** begins the runs that a verdict at these parameters will ask for, so that they are made in one go */
  begin(parameters: Readonly<Record<string, number>>, steps: number): void
}

/** Runs of one program, some of them begun before they are asked for. Whoever asks gets the same outcome either way. */
export function ahead(tools: RunTool, compiled: Compiled): AheadTool {
  const begun = new Map<string, Promise<RunOutcome>>()
  const keyOf = ({ parameters, seed, stepFactor, limits, lines }: RunRequest): string =>
    JSON.stringify([parameters, seed, stepFactor, limits, lines])
  return {
    begin(parameters, steps) {
      for (const factor of always.slice(0, steps > 1 ? always.length : 1)) {
        const request = judgedRun(compiled, parameters, judgeSeed, factor)
        const key = keyOf(request)
        if (!begun.has(key)) begun.set(key, tools.run(request))
      }
    },
    run(request) {
      const key = keyOf(request)
      const early = request.compiled === compiled ? begun.get(key) : undefined
      begun.delete(key)
      return early ?? tools.run(request)
    },
  }
}
