/** One program that means harm. `cell`: typed into a cell, so the compiler sees it. `raw`: as if it had got past the compiler. */
export interface Hostile {
  readonly name: string
  readonly cell?: string
  readonly raw?: string
  /**
   * How it must end: a pattern of problem codes; or "harmless" where its attempt simply comes to nothing, the program
   * runs to its end, and prints "held" for each thing that it found closed.
   */
  readonly ends: RegExp | "harmless"
  /** the least number of times that it must print "held" */
  readonly held?: number
}

export const turns = /^endless-loop$/
export const clock = /^time-limit$/
export const memory = /^(memory-limit|run-lost|too-large|time-limit)$/
export const refused =
  /^(not-allowed-here|cannot-understand|unknown-name|not-a-function|no-such-property|program-error|cell-not-whole|name-taken|something-missing|bracket-.*|constant-changed)$/
