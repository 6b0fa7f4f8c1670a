import type { Compiled } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { LinesWish, LineValues } from "./lines/contract.ts"

export type { LinesWish, LineValues } from "./lines/contract.ts"

/** One recorded quantity: `key.position` (a vector, three columns x y z) or `energy` (a scalar, one column). */
export interface Series {
  readonly name: string
  readonly kind: "vector" | "scalar"
  /** its first column in a row of Recording.data; the row's column 0 is time in s */
  readonly column: number
}

/** What one cell recorded: rows of `width` numbers, time first. Plain data, transferable. */
export interface Recording {
  readonly cell: string
  readonly series: readonly Series[]
  readonly rows: number
  readonly width: number
  /** row-major, rows * width numbers; may be longer than that, never shorter */
  readonly data: Float64Array
}

/**
 * What is wanted of one cell's recording. Where one of the series is missing a few others come along, so that it can be
 * said what was recorded instead.
 */
export interface Excerpt {
  /** names of series or of components, `key.*` for all of a group; none for all there are */
  readonly series: readonly string[]
  /** ascending, s: of the rows those that stood at these times and the last; all if left out */
  readonly times?: Float64Array
}

export interface Limits {
  /** turns of all loops and calls together; the same everywhere, so that verdicts do not depend on the machine */
  readonly turns: number
  /** numbers recorded in all, time included */
  readonly recorded: number
  /** characters printed in all */
  readonly output: number
  /** wall clock, a backstop only */
  readonly milliseconds: number
}

/**
 * Turns: at a third of a microsecond for a step of two bodies this is some three seconds, so that on any machine
 * in use the turns end an endless loop long before the clock does; and an honest motion of 100 000 steps keeps a
 * hundredfold reserve. Recorded: 32 MB, or 100 000 instants of thirteen vectors; a child process has room for it
 * three times over. The clock only ends single calls that never come back, such as a text search.
 */
export const defaultLimits: Limits = {
  turns: 10_000_000,
  recorded: 4_000_000,
  output: 20_000,
  milliseconds: 20_000,
}

export interface RunRequest {
  readonly compiled: Compiled
  readonly parameters: Readonly<Record<string, number>>
  /** seeds `random()`; same seed, same bits */
  readonly seed: number
  /** the named time step is multiplied by this; 1 unless the judge refines */
  readonly stepFactor?: number
  readonly limits?: Partial<Limits>
  /** by cell, where not all that is recorded is wanted; a cell that is not named is not */
  readonly excerpt?: Readonly<Record<string, Excerpt>>
  /** asks for the values that lines set as well, of a program that was compiled with its trace; the run is some ten times slower then */
  readonly lines?: LinesWish
}

export interface RunOutcome {
  /** by document order; what was recorded before a failure is kept */
  readonly recordings: readonly Recording[]
  /** null when the program ran to its end */
  readonly problem: Problem | null
  /** lines that the program printed */
  readonly output: readonly string[]
  readonly turns: number
  /** whether the named time step was found and so could be scaled */
  readonly timeStepFound: boolean
  readonly milliseconds: number
  /** where the request asked for them */
  readonly lines?: LineValues
}

/** Runs programs where they can do no harm. One at a time; a new run waits for the one before. */
export interface Runner {
  run(request: RunRequest): Promise<RunOutcome>
  /** stops the run under way (its outcome says so) */
  stop(): void
  close(): Promise<void>
}
