import type { Program } from "../../src/cell/contract.ts"
import { unitsRun } from "../../src/cell/units-run/index.ts"

/** A text as a program of one cell. */
export const programOf = (text: string, timeStep = "dt"): Program => ({
  text,
  cells: [{ name: "cell", from: 0, to: text.length }],
  blanks: [],
  parameters: [],
  timeStep,
})

type Parameters = readonly { name: string; unit: string; value: number }[]

/** The problems of a text, each with the stretch it stands on. */
export function problemsOf(text: string, parameters: Parameters = []) {
  const { problems } = unitsRun(programOf(text), parameters)
  const lines = text.split("\n")
  return problems.map(({ code, text: words, todo, where }) => ({
    code,
    words,
    todo,
    line: where!.line,
    at:
      where!.endLine === where!.line
        ? lines[where!.line - 1]!.slice(where!.column - 1, where!.endColumn! - 1)
        : "",
  }))
}

export const unitsOf = (text: string, parameters: Parameters = []) =>
  unitsRun(programOf(text), parameters).units
