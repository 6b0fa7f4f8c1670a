import type { Compiled, CompileResult } from "../cell/contract.ts"
import { defaultLimits, type RunOutcome } from "../run/contract.ts"
import type { JudgeTools } from "./tools.ts"
import { excerptKey } from "./wish.ts"

/** A trial may run for this many times as long as the author's answers before it is cut off. */
const patience = 3
const leastTurns = 20_000

export interface ThriftyTools extends JudgeTools {
  /** from now on no run goes on for much longer than this many turns at the given step */
  allow(turns: number): void
  /** most turns that a run at the given step has taken so far */
  readonly turns: () => number
}

/**
 * Tools for many trials of one worksheet: each text compiled once and run once at the given step, runs that do not
 * end cut off early.
 */
export function thrifty(tools: JudgeTools): ThriftyTools {
  const compiled = new Map<string, Promise<CompileResult>>()
  // A run that came to its end is the same under any limits.
  const ended = new WeakMap<Compiled, Map<string, RunOutcome>>()
  let most = Number.POSITIVE_INFINITY
  let seen = 0
  return {
    compile(program) {
      const known = compiled.get(program.text) ?? tools.compile(program)
      compiled.set(program.text, known)
      return known
    },
    async run(request) {
      const factor = request.stepFactor ?? 1
      const known = ended.get(request.compiled) ?? new Map<string, RunOutcome>()
      ended.set(request.compiled, known)
      const key = JSON.stringify([request.parameters, request.seed, excerptKey(request.excerpt)])
      const before = factor === 1 ? known.get(key) : undefined
      if (before !== undefined) return before
      const turns = Math.min(request.limits?.turns ?? defaultLimits.turns / factor, most / factor)
      const outcome = await tools.run({ ...request, limits: { ...request.limits, turns } })
      if (factor === 1) seen = Math.max(seen, outcome.turns)
      if (factor === 1 && outcome.problem === null) known.set(key, outcome)
      return outcome
    },
    allow(turns) {
      most = Math.max(leastTurns, patience * turns)
    },
    turns: () => seen,
  }
}

/** Does `work` for each item, a few at a time, and keeps the order. */
export async function inTurns<T, R>(
  items: readonly T[],
  work: (item: T) => Promise<R>,
  atOnce = 4,
): Promise<R[]> {
  const out = new Array<R>(items.length)
  let next = 0
  const worker = async (): Promise<void> => {
    for (let i = next++; i < items.length; i = next++) out[i] = await work(items[i]!)
  }
  await Promise.all(Array.from({ length: Math.min(atOnce, items.length) }, worker))
  return out
}
