/** Where in a text something was found. Lines and columns count from 1, columns in UTF-16 units. */
export interface Place {
  /** the worksheet or answer file, as it was named by whoever asked */
  readonly file?: string
  readonly cell?: string
  readonly blank?: string
  readonly line: number
  readonly column: number
  readonly endLine?: number
  readonly endColumn?: number
}

/**
 * A message as data: what was wrong, where, and what to do. Every problem that a person can meet,
 * from a misspelt key to a lost time step, travels in this form and is worded for a sixteen-year-old.
 */
export interface Problem {
  /** stable, lower-case, hyphenated: `unknown-key`, `endless-loop`; each has a page public/problems/CODE.md */
  readonly code: string
  /** what was wrong, with the offending value and its unit; starts with what was seen; one or two sentences */
  readonly text: string
  /** what to do about it; one sentence */
  readonly todo: string
  readonly where?: Place
  /** the source line it happened on, for the command line */
  readonly excerpt?: string
}
