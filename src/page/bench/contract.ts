import type { ReadonlySignal, Signal } from "@preact/signals"
import type { Problem } from "../../cell/problem.ts"
import type { Reference } from "../../judge/contract.ts"
import type { Recording } from "../../run/contract.ts"
import type { StudentSheet } from "../../worksheet/contract.ts"
import type { SentVariable } from "../lines/looking.ts"
import type { StepStudying } from "../stepping.ts"
import type { Departure } from "./departures.ts"

/** The motion that the bench shows, for what stands elsewhere on the page and follows it. */
export interface BenchHand {
  readonly cell: string
  readonly rows: number
  /** the row shown, from 0: the last one at or before the instant */
  readonly row: ReadonlySignal<number>
  /** its time as the time bar has it: "0.024 s" */
  readonly time: ReadonlySignal<string>
  /** to the next rows, or the ones before; stops play */
  step(by: number): void
}

/**
 * What the bench is given. It holds no state of the worksheet: the page runs the program and hands in what was
 * recorded; the bench plays it, looks into it, and tells the page when a parameter is set or a run is asked for.
 * All recordings are read only; a new run is a new array (the bench compares by identity).
 */
export interface BenchProps {
  readonly sheet: StudentSheet
  /** name of the cell in view: its scene, plots and recording are shown */
  readonly cell: string
  /** of the last run, by document order; empty before the first. After a failure: what was recorded until then */
  readonly recordings: readonly Recording[]
  /** of the run before, drawn faintly behind; null for none */
  readonly ghost: readonly Recording[] | null
  /** the author's motion, where the student may see it; null to show none */
  readonly reference: Reference | null
  /** where the motion leaves the reference; none when it does not, or is not judged */
  readonly departures: readonly Departure[]
  /** values by name as the last run used them; a name left out has the sheet's value */
  readonly parameters: Readonly<Record<string, number>>
  /** called for each valid value while a slider moves; the page runs again */
  readonly onParameter: (name: string, value: number) => void
  /** puts all parameters back to the values of this student's sheet */
  readonly onResetParameters: () => void
  /** the last run in words, e.g. "run 1,000 steps in 2 ms"; "" before the first */
  readonly state: string
  readonly running: boolean
  /** lines that the program of the last run printed */
  readonly printed?: readonly string[]
  readonly onRun: () => void
  readonly onStop: () => void
  /** why the last run stopped early; shown in words under the scene */
  readonly problem: Problem | null
  /** the recordings are of an earlier run: the last one recorded nothing, or could not begin */
  readonly older?: boolean
  /** this student's own values, where they differ from the sheet's (a parameter with `vary`) */
  readonly own?: Readonly<Record<string, number>>
  /** units by series name, where the units run found them; else position m, momentum kg m/s, forces N */
  readonly units?: Readonly<Record<string, string>>
  /** kept up to date by the bench: what it shows and how to move it; null while it shows no motion */
  readonly hand?: Signal<BenchHand | null>
  /** runs the program with shorter time steps; left out where that is not offered */
  readonly stepping?: StepStudying
  /** variables of the program that were sent to a plot */
  readonly variables?: readonly SentVariable[]
  readonly onDropVariable?: (key: string) => void
}
