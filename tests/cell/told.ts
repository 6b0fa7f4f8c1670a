import { readFileSync } from "node:fs"
import { assembleProgram } from "../../src/cell/assemble.ts"
import { compile } from "../../src/cell/compile.ts"
import type { CompileResult, Program } from "../../src/cell/contract.ts"
import type { Problem } from "../../src/cell/problem.ts"
import { unitsRun } from "../../src/cell/units-run/index.ts"
import { type Parameter, parseWorksheet } from "../../src/worksheet/index.ts"
import { strip } from "./run.ts"
import { problemsOf } from "./types-tools.ts"

const folder = new URL("../../worksheets/", import.meta.url)

export interface Told {
  readonly program: Program
  readonly parameters: readonly Parameter[]
  readonly compiled: CompileResult
  /** in the order in which the page says them: what keeps the program from running, kinds, units */
  readonly read: readonly Problem[]
  readonly kinds: readonly Problem[]
  readonly units: readonly Problem[]
}

/** What a student is told of a shipped worksheet before anything runs: the author's answers, save those given here. */
export async function told(id: string, texts: Readonly<Record<string, string>>): Promise<Told> {
  const opened = parseWorksheet(readFileSync(new URL(`${id}.md`, folder), "utf8"), `${id}.md`)
  if (!opened.ok) throw new Error(opened.problems[0]?.text)
  const { sheet, answers } = opened.worksheet
  for (const name of Object.keys(texts)) if (!(name in answers)) throw new Error(`${id} has no blank ${name}`)
  const names = sheet.parameters.map(one => one.name)
  const program = assembleProgram(sheet.cells, { ...answers, ...texts }, names, sheet.timeStep)
  const compiled = await compile(program, strip)
  return {
    program,
    parameters: sheet.parameters,
    compiled,
    read: compiled.ok ? [] : compiled.problems,
    kinds: compiled.ok ? problemsOf(program, sheet.parameters) : [],
    units: unitsRun(program, sheet.parameters).problems,
  }
}

/** One finding in a line: where it stands, which it is, and the stretch of text that it marks. */
export function short({ program }: Told, { code, where }: Problem): string {
  if (!where) return code
  const cell = program.cells.find(one => one.name === where.cell)!
  const line = program.text.slice(cell.from, cell.to).split("\n")[where.line - 1]!
  const end = where.endLine === where.line ? where.endColumn! - 1 : undefined
  return `${where.blank ?? "given"}: ${code}: ${line.slice(where.column - 1, end)}`
}
