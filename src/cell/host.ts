/**
 * The rows of a recording that is being filled, as the emitted text of `record(t, { … })` sees them: it writes a row of
 * numbers (64 bits each, low byte first) at `next` and moves `next` and `lastTime` on, as long as `next <= last`, the time does not run back and all numbers
 * are finite. In every other case it calls record and asks for the rows again.
 */
export interface OpenRows {
  /** a view, because in a locked realm a plain store to an array looks through all its prototypes, at six times the cost */
  readonly view: DataView
  /** place of the next row, in bytes */
  next: number
  /** the last place where a row may begin, in bytes; -1 where no row may be written */
  readonly last: number
  lastTime: number
}

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
  overrun(site: number, asked?: number): never
  /** told the number of turns when the program ends, whichever way */
  done(turns: number, asked?: number): void
  /** entering the n-th cell of the program */
  enterCell(index: number, asked?: number): void
  /**
   * Asked before anything in the program catches what was thrown. `asked` counts such questions under way, this one
   * included, here and wherever it is given: one that is left over from before found no room on the stack for its call.
   */
  caught(thrown: unknown, site: number, asked: number): void
  /** the value of the program's named time step, scaled by the run's stepFactor */
  timeStep(value: number): number
  /** an inline blank that nobody filled; throws */
  emptyBlank(site: number): never
  /** trace program only: notes the site about to act, gives back the value handed through */
  at<T>(site: number, value?: T): T
  /** keeps this instant's quantities; same shape at each call of a cell; see src/run/record.ts */
  record(time: unknown, quantities: unknown): void
  /**
   * The open rows of the cell being run if they are of this shape: names and kinds in order, "key.position:v energy:s";
   * else rows that take nothing. A host without it gets every record as a call.
   */
  rows?(shape: string): OpenRows
}
