import type { Problem } from "../cell/problem.ts"
import type { Verdict } from "../judge/contract.ts"

/** Where the run loop is. */
export type RunState =
  | { readonly kind: "opening" }
  | { readonly kind: "compiler" }
  | { readonly kind: "running" }
  /** a blank that the program needs is still empty */
  | { readonly kind: "waits"; readonly blank: string }
  | { readonly kind: "not-compiled" }
  | { readonly kind: "ran"; readonly steps: number; readonly milliseconds: number }
  | {
      readonly kind: "stopped"
      readonly problem: Problem /** the motion shown is of an earlier run */
      readonly older: boolean
    }

/** A whole number with a narrow space between groups of three, as ISO 80000-1 sets it. */
export function grouped(n: number): string {
  return String(Math.round(n)).replace(/\B(?=(\d{3})+$)/g, "\u202f")
}

export const plural = (n: number, one: string, many = one + "s"): string =>
  `${grouped(n)} ${n === 1 ? one : many}`

/** Whether the motion on the bench is of an earlier run than the words beside it. */
export const showsOlder = (state: RunState): boolean =>
  state.kind === "not-compiled" || state.kind === "waits" || (state.kind === "stopped" && state.older)

/** The state of the run, for the line beside the time bar. */
export function stateWords(state: RunState): string {
  switch (state.kind) {
    case "opening":
      return "making ready"
    case "compiler":
      return "fetching the compiler, once"
    case "running":
      return "running"
    case "waits":
      return state.blank === "" ? "waits for an empty blank" : `waits for the blank “${state.blank}”`
    case "not-compiled":
      return "not run: a line cannot be read yet"
    case "ran": {
      const ms = state.milliseconds
      const time = ms < 1 ? "under 1\u202fms" : `${ms < 10 ? ms.toFixed(1) : grouped(ms)}\u202fms`
      return `run: ${plural(state.steps, "step")} in ${time}`
    }
    case "stopped": {
      const { code, where } = state.problem
      const line = where ? ` at line ${where.line}` : ""
      const what =
        code === "endless-loop" && where
          ? `stopped: the loop${line} never ends`
          : code === "stopped"
            ? "stopped, as you asked"
            : `stopped${line}`
      return state.older ? `${what}; shown is the run before` : what
    }
  }
}

export function verdictWords(verdict: Verdict): string {
  switch (verdict) {
    case "met":
      return "met"
    case "not met":
      return "not met"
    case "could not run":
      return "could not run"
  }
}

export const pointsWords = (points: number, outOf: number): string =>
  `${trimNumber(points)} of ${plural(outOf, "point")}`

/** Points of the checks out of the whole sheet's; with questions still to be marked they are points so far. */
export const soFarWords = (points: number, checks: number, questions: number): string =>
  pointsWords(points, checks + questions) + (questions > 0 ? " so far" : "")

export const trimNumber = (n: number): string => String(Math.round(n * 100) / 100)

const day = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short" })
const clock = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit" })

/** "14 Nov" */
export const dayWords = (at: number): string => day.format(at)
/** "14 Nov, 10:02" */
export const momentWords = (at: number): string => `${day.format(at)}, ${clock.format(at)}`
/** "10:02" */
export const timeWords = (at: number): string => clock.format(at)

/** Where a problem stands, as the student counts: "line 7, column 12". */
export function placeWords(problem: Problem): string {
  const where = problem.where
  return where ? `Line ${where.line}, column ${where.column}` : ""
}
