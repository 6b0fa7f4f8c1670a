import type { Problem } from "../problem.ts"

/** A name that may be meant at the caret. */
export interface Suggestion {
  readonly name: string
  readonly sort: "own" | "parameter" | "library" | "language" | "part" | "word"
  /** what it is, in few words: "a vector, kg m/s" */
  readonly kind: string
  /** what it does, in one sentence; "" if nothing is known of it */
  readonly says: string
}

export interface Suggestions {
  /** where the word at the caret begins, in the program's text */
  readonly from: number
  readonly list: readonly Suggestion[]
}

/** What a name is. */
export interface About {
  readonly from: number
  readonly to: number
  /** "p: a vector, kg m/s", or how a function is called */
  readonly head: string
  readonly says: string
}

/** One place where a name stands and what comes there instead; offsets in the program's text. */
export interface Renaming {
  readonly from: number
  readonly to: number
  readonly insert: string
}

export type Renamed =
  | { readonly ok: true; readonly name: string; readonly places: readonly Renaming[] }
  /** why it cannot be, in a sentence */
  | { readonly ok: false; readonly why: string }

/** What the checker of a page answers. Offsets are of `Program.text`. */
export interface Answers {
  readonly problems: readonly Problem[]
  readonly suggest: Suggestions | null
  readonly about: About | null
  readonly rename: Renamed
}
