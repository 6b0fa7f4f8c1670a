import type { BlankWords } from "../cell/blank-words.ts"
import type { Problem } from "../cell/problem.ts"
import type { Recording } from "../run/contract.ts"

/**
 * The reference's motion at one set of parameters, at the given time step and shortened ones, with the
 * motions that the catalogue's slips make of it. Plain data; no text of any answer. Shipped with the
 * student's sheet for the sheet's own parameters; made anew by the marker for each hidden draw.
 */
export interface Reference {
  readonly parameters: Readonly<Record<string, number>>
  /** step factors, descending: [1, 1/2, 1/4]; [1] when the program has no time step */
  readonly factors: readonly number[]
  /** recordings by factor (same order as `factors`), each by cell */
  readonly runs: readonly (readonly Recording[])[]
  readonly slips: readonly SlipMotion[]
  /** cells whose motion is too sensitive to be compared to its end; left out for none */
  readonly sensitive?: readonly Sensitive[]
}

/** A chaotic motion: a tiny change of its start has grown ten-thousandfold from this time on, s. */
export interface Sensitive {
  readonly cell: string
  readonly from: number
}

export interface SlipMotion {
  /** of two slips at once: "sign-turned + mass-missing" */
  readonly slip: string
  /** the blank it was made in */
  readonly blank: string
  /** hints at it for the student, without giving the answer */
  readonly hint: string
  /** of two slips at once: each with its own hint */
  readonly parts?: readonly { readonly slip: string; readonly hint: string }[]
  readonly recordings: readonly Recording[]
}

/** All that a verdict rests on: what an answer recorded at each step factor, and what stopped it. */
export interface Evidence {
  /** blanks that still hold nothing, or only the starter */
  readonly unfilled: readonly Problem[]
  /** why the program does not compile, or stopped before its end at the given time step; null when it ran through */
  readonly problem: Problem | null
  /** why a run with a shorter time step stopped although the given one ran; that run is left out below */
  readonly finerProblem: Problem | null
  /** step factors that ran, descending, 1 first; empty when nothing could run */
  readonly factors: readonly number[]
  /** by factor: the cells that ran to their end, and at factor 1 also the one that `problem` stopped */
  readonly runs: readonly (readonly Recording[])[]
  /** whether the program's named time step was found, so that it can be shortened */
  readonly timeStepFound: boolean
  /** what the text shows without being run; null where no check asks for it */
  readonly looked: Looked | null
}

/** What is seen in a program's text. */
export interface Looked {
  /** where units do not fit */
  readonly units: readonly Problem[]
  /** what the lines of a cell's blanks name, by cell */
  readonly words: Readonly<Record<string, BlankWords>>
}

export type Verdict = "met" | "not met" | "could not run"

export interface CheckResult {
  readonly name: string
  readonly verdict: Verdict
  readonly points: number
  readonly outOf: number
  /** the first instant at which the motion leaves the reference, s */
  readonly departsAt: number | null
  /** name of the slip whose motion this one is */
  readonly slip: string | null
  /** starts with what was seen; in the teacher's words where the worksheet has them; never the answer */
  readonly message: string
}

/** The verdict over one answer: the line of results.json without the file's name. */
export interface Judgement {
  readonly points: number
  readonly outOf: number
  readonly checks: readonly CheckResult[]
  readonly problems: readonly Problem[]
}
