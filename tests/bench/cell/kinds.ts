/*
 * The check of kinds in Node: node tests/bench/start.mjs tests/bench/cell/kinds.ts
 * Each round changes one line of a worksheet with the author's answers, so that nothing can be remembered. Aim: 150 ms an edit.
 */
import { readFileSync } from "node:fs"
import { assembleProgram } from "../../../src/cell/assemble.ts"
import { typeProblems } from "../../../src/cell/types/check-types.ts"
import { makeDeclarations } from "../../../src/cell/types/declarations.ts"
import { createService } from "../../../src/cell/types/service.ts"
import { suggestAt } from "../../../src/cell/types/suggest.ts"
import { parseWorksheet } from "../../../src/worksheet/index.ts"

const declarations = makeDeclarations()
const started = performance.now()
const service = createService(declarations)
const at = (values: readonly number[], share: number): string =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * share)]!.toFixed(1)

for (const id of ["lamp-key", "two-floats"]) {
  const read = parseWorksheet(readFileSync(`worksheets/${id}.md`, "utf8"), id)
  if (!read.ok) throw new Error(id)
  const { sheet, answers } = read.worksheet
  const names = sheet.parameters.map(parameter => parameter.name)
  const checks: number[] = []
  const suggestions: number[] = []
  for (let i = 0; i < 60; i++) {
    const text = `const q${i} = vec3(0, 0, ${i}) * 2\nq${i}.`
    const cell = (last: string) => ({
      name: "x",
      line: 1,
      segments: [{ kind: "given", text: last }] as const,
    })
    const whole = assembleProgram([...sheet.cells, cell(text.slice(0, -4))], answers, names, sheet.timeStep)
    let from = performance.now()
    typeProblems(service.lay(whole, sheet.parameters))
    checks.push(performance.now() - from)
    if (i === 0 && id === "lamp-key")
      console.log(
        `first answer ${(performance.now() - started).toFixed(0)} ms after the declarations are there`,
      )
    const half = assembleProgram([...sheet.cells, cell(text)], answers, names, sheet.timeStep)
    from = performance.now()
    suggestAt(service.lay(half, sheet.parameters), half.text.length)
    suggestions.push(performance.now() - from)
  }
  const lines = `${sheet.cells.length} cells`
  console.log(
    `${id} (${lines}): a check ${at(checks.slice(10), 0.5)} ms, 95th percentile ${at(checks.slice(10), 0.95)} ms; suggestions ${at(suggestions.slice(10), 0.5)} ms`,
  )
}
