import { type ReadonlySignal, signal } from "@preact/signals"
import type { Problem } from "../cell/problem.ts"
import type { Recording, Runner } from "../run/contract.ts"
import { stepFactors } from "./bench/step-study.ts"
import type { ShownRun } from "./lines/looking.ts"

/** Where the study of the time step is. */
export type Stepping =
  | { readonly kind: "idle" }
  /** that many of the runs are done */
  | { readonly kind: "running"; readonly done: number; readonly of: number }
  | {
      readonly kind: "done"
      /** by factor, each run's recordings */
      readonly runs: readonly (readonly Recording[])[]
      /** false once the motion shown is of another run */
      readonly current: boolean
    }
  | { readonly kind: "failed"; readonly why: Problem }

/** Runs the program shown with its time step and with parts of it. */
export interface StepStudying {
  readonly state: ReadonlySignal<Stepping>
  start(): void
  cancel(): void
  close(): void
}

export function openStepping(needs: {
  readonly shown: ReadonlySignal<ShownRun | null>
  readonly timeStep: string
  readonly runner: () => Runner
}): StepStudying {
  const state = signal<Stepping>({ kind: "idle" })
  let round = 0
  let studied: ShownRun | null = null

  const study = async (run: ShownRun, mine: number): Promise<void> => {
    const runs: (readonly Recording[])[] = []
    for (const [done, stepFactor] of stepFactors.entries()) {
      state.value = { kind: "running", done, of: stepFactors.length }
      const { compiled, parameters, seed } = run
      const outcome = await needs.runner().run({ compiled, parameters, seed, stepFactor })
      if (mine !== round) return
      const why = outcome.problem ?? (outcome.timeStepFound ? null : noTimeStep(needs.timeStep))
      if (why) {
        state.value = { kind: "failed", why }
        return
      }
      runs.push(outcome.recordings)
    }
    studied = run
    state.value = { kind: "done", runs, current: needs.shown.peek() === run }
  }

  const stop = needs.shown.subscribe(run => {
    const now = state.peek()
    if (now.kind === "done" && now.current && run !== studied) state.value = { ...now, current: false }
  })

  return {
    state,
    start() {
      const run = needs.shown.peek()
      if (run) void study(run, ++round)
    },
    cancel() {
      if (state.peek().kind !== "running") return
      round++
      state.value = { kind: "idle" }
      needs.runner().stop()
    },
    close() {
      round++
      stop()
    },
  }
}

const noTimeStep = (name: string): Problem => ({
  code: "page-no-time-step",
  text: `The program sets no time step under the name ${name} outside of its loops, so it cannot be run with a shorter one.`,
  todo: `Give the step a line of its own before the loop, such as const ${name} = 0.01, and use ${name} wherever the time goes on.`,
})
