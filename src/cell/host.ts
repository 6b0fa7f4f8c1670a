/**
 * What a compiled program calls besides the physics library: operators, guards, marks and the recording.
 * src/cell makes the operators (operators.ts) and emits the calls; src/run makes the rest, per run.
 */
export interface Host {
  add(a: unknown, b: unknown): unknown
  subtract(a: unknown, b: unknown): unknown
  multiply(a: unknown, b: unknown): unknown
  divide(a: unknown, b: unknown): unknown
  negate(a: unknown): unknown
  power(a: unknown, b: unknown): unknown
  /** the run's limit on turns of loops and calls of functions together */
  readonly maxTurns: number
  /** called at the loop or function that went over maxTurns; throws RunStop */
  overrun(site: number): never
  /** told the number of turns when the program ends, whichever way */
  done(turns: number): void
  /** entering the n-th cell of the program */
  enterCell(index: number): void
  /** the value of the program's named time step, scaled by the run's stepFactor */
  timeStep(value: number): number
  /** an inline blank that nobody filled; throws */
  emptyBlank(site: number): never
  /** trace program only: notes the site about to act, gives back the value handed through */
  at<T>(site: number, value?: T): T
  /** keeps this instant's quantities; same shape at each call of a cell; see src/run/record.ts */
  record(time: unknown, quantities: unknown): void
}
