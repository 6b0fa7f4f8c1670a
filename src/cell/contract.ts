import type { Problem } from "./problem.ts"

/** One stretch of a cell's text: fixed by the author, or the region a student fills. */
export type Segment =
  | { readonly kind: "given"; readonly text: string }
  | {
      readonly kind: "blank"
      /** unique in the worksheet */
      readonly name: string
      readonly prompt: string
      /** true inside an expression, false for whole lines */
      readonly inline: boolean
      /** what the student finds there at first; comment lines or nothing */
      readonly starter: string
    }

/** A cell as a student has it: no answers. `line` is the line of its first body line in the author's file. */
export interface CellSource {
  readonly name: string
  readonly line: number
  readonly segments: readonly Segment[]
}

/**
 * All cells of a worksheet with their blanks filled, joined in document order: the program.
 * `text` is TypeScript as typed. `spans` tell which stretch of `text` came from where, so that any
 * offset can be named as cell, blank, line and column (lines counted within the cell as it is shown).
 */
export interface Program {
  readonly text: string
  readonly cells: readonly { readonly name: string; readonly from: number; readonly to: number }[]
  readonly blanks: readonly {
    readonly name: string
    readonly cell: string
    readonly from: number
    readonly to: number
    readonly inline: boolean
  }[]
  /** names of parameters the program may read as constants */
  readonly parameters: readonly string[]
  /** the constant that the judge may shorten; "dt" if the worksheet names none */
  readonly timeStep: string
}

/**
 * A program made ready to run. `js` is the body of a function
 *   (lib, parameters, host) => void
 * where `lib` holds src/physics' public names and the safe globals, `parameters` numbers by name, and `host`
 * the operators, guards and record (src/cell/host.ts). Plain data: it crosses worker and process borders as it is.
 */
export interface Compiled {
  readonly js: string
  /**
   * a second text of the same program that keeps count of where it is: run only to find the place of a failure; null
   * where it is made once it is needed (traceProgram), since most programs do not fail
   */
  readonly traceJs: string | null
  /** for each site number that guards, operators and marks carry: the stretch of Program.text it stands for */
  readonly sites: readonly Site[]
  readonly program: Program
}

/** A place in a program that guards, operators and marks name by number. */
export interface Site {
  /** of Program.text */
  readonly from: number
  readonly to: number
  readonly what: string
  /** of a loop: what to say of it if it never ends */
  readonly endless?: EndlessWords
}

export type EndlessWords = Pick<Problem, "text" | "todo">

export type CompileResult =
  | { readonly ok: true; readonly compiled: Compiled }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Strips the types from TypeScript and leaves everything else; each host brings its own (esbuild-wasm). */
export type TypeStripper = (typescript: string) => Promise<string>
