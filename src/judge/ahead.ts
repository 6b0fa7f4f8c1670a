import type { Compiled } from "../cell/contract.ts"
import type { RunOutcome, RunRequest } from "../run/contract.ts"
import type { Check } from "../worksheet/contract.ts"
import type { Reference } from "./contract.ts"
import { judgedRun } from "./evidence.ts"
import { judgeSeed, type RunTool } from "./tools.ts"
import { excerptKey, wishOf } from "./wish.ts"

/** Every verdict looks at these two steps; which others it needs shows only then. */
const always = [1, 1 / 2] as const

export interface AheadTool extends RunTool {
  /** begins runs that will be asked for, so that they are made in one go */
  begin(requests: readonly RunRequest[]): void
}

/** The runs that a verdict over this reference will ask for, whatever they show. */
export function surelyAsked(
  checks: readonly Check[],
  compiled: Compiled,
  { parameters, factors }: Reference,
): RunRequest[] {
  const wish = wishOf(checks)
  return always
    .slice(0, factors.length > 1 ? always.length : 1)
    .map(factor => judgedRun(compiled, parameters, judgeSeed, factor, wish))
}

/** Runs of one program, some of them begun before they are asked for. Whoever asks gets the same outcome either way. */
export function ahead(tools: RunTool, compiled: Compiled): AheadTool {
  const begun = new Map<string, Promise<RunOutcome>>()
  const keyOf = ({ parameters, seed, stepFactor, limits, lines, excerpt }: RunRequest): string =>
    JSON.stringify([parameters, seed, stepFactor, limits, lines, excerptKey(excerpt)])
  return {
    begin(requests) {
      for (const request of requests) {
        const key = keyOf(request)
        if (begun.has(key)) continue
        const early = tools.run(request)
        // said to whoever asks for it; nobody may
        early.catch(() => {})
        begun.set(key, early)
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
