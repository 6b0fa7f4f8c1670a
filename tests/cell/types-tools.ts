import { assembleProgram } from "../../src/cell/assemble.ts"
import type { CellSource, Program } from "../../src/cell/contract.ts"
import type { Problem } from "../../src/cell/problem.ts"
import { typeProblems } from "../../src/cell/types/check-types.ts"
import { makeDeclarations } from "../../src/cell/types/declarations.ts"
import { createService, type Laid } from "../../src/cell/types/service.ts"
import type { KnownParameter } from "../../src/cell/types/surroundings.ts"

const service = createService(makeDeclarations())

export const parameters: readonly KnownParameter[] = [
  { name: "height", label: "drop height", unit: "m" },
  { name: "speed", label: "speed at first", unit: "m/s" },
]

const names = parameters.map(one => one.name)

export const cell = (text: string, name = "one"): CellSource => ({
  name,
  line: 1,
  segments: [{ kind: "given", text }],
})

export const program = (...texts: string[]): Program =>
  assembleProgram(
    texts.map((text, i) => cell(text, `cell${i + 1}`)),
    {},
    names,
    "dt",
  )

export const lay = (of: Program, known = parameters): Laid => service.lay(of, known)

export const problemsOf = (of: Program | string, known = parameters): Problem[] =>
  typeProblems(lay(typeof of === "string" ? program(of) : of, known))
