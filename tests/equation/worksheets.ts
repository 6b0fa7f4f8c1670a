import { readdirSync, readFileSync } from "node:fs"
import { assembleProgram } from "../../src/cell/assemble.ts"
import type { Program } from "../../src/cell/contract.ts"
import { type Parameter, parseWorksheet } from "../../src/worksheet/index.ts"

const shelf = new URL("../../worksheets/", import.meta.url)

/** Every shipped worksheet as a program with its author's answers. */
export function shippedPrograms(
  folder = shelf,
): { name: string; program: Program; parameters: readonly Parameter[] }[] {
  return readdirSync(folder)
    .filter(file => file.endsWith(".md"))
    .map(file => {
      const read = parseWorksheet(readFileSync(new URL(file, folder), "utf8"), file)
      if (!read.ok) throw new Error(`${file}: ${read.problems.map(problem => problem.text).join("; ")}`)
      const { sheet, answers } = read.worksheet
      const names = sheet.parameters.map(parameter => parameter.name)
      return {
        name: file.replace(".md", ""),
        program: assembleProgram(sheet.cells, answers, names, sheet.timeStep),
        parameters: sheet.parameters,
      }
    })
}

export const cellTexts = (): { name: string; text: string }[] =>
  shippedPrograms().map(({ name, program }) => ({ name, text: program.text }))
