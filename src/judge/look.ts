import { blankWords } from "../cell/blank-words.ts"
import type { Program } from "../cell/contract.ts"
import { unitsRun } from "../cell/units-run/index.ts"
import type { StudentSheet } from "../worksheet/contract.ts"
import type { Looked } from "./contract.ts"

/** Reads a program's text: for the marker and for `check`. A page lets its compiler do it, which has the parsers. */
export const lookAt =
  ({ parameters }: StudentSheet) =>
  (program: Program): Looked => ({
    units: unitsRun(program, parameters).problems,
    words: blankWords(program),
  })
