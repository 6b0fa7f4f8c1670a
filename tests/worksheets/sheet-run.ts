import { readFileSync } from "node:fs"
import { assembleProgram, compile } from "../../src/cell/index.ts"
import { createNodeStripper } from "../../src/cell/strip.node.ts"
import type { Recording, Runner, RunOutcome } from "../../src/run/contract.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { parseWorksheet, type Worksheet } from "../../src/worksheet/index.ts"

/** The worksheets that ship, in the order of the course. */
export const shippedIds = [
  "lamp-key",
  "heaving-line",
  "fender",
  "slipway",
  "buoy",
  "two-floats",
  "tumble",
  "tide-and-moon",
  "measured",
  "find-the-fault",
  "make-your-own",
  "read-the-motion",
] as const

export type SheetId = (typeof shippedIds)[number]

export const textOf = (id: string): string => readFileSync(`worksheets/${id}.md`, "utf8")

export function readSheet(id: string): Worksheet {
  const result = parseWorksheet(textOf(id), `${id}.md`)
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.worksheet
}

export interface SheetRun {
  readonly outcome: RunOutcome
  /** one recorded column over time: `key.position.y`, `gap`, or `t` */
  column(cell: string, path: string): number[]
}

export interface SheetRunOptions {
  readonly set?: Readonly<Record<string, number>>
  /** text of blanks instead of the author's */
  readonly answers?: Readonly<Record<string, string>>
  readonly stepFactor?: number
}

let runner: Runner | undefined

/** Runs a shipped worksheet as the commands do: parse, assemble, compile, sandbox. Values not set are the sheet's own. */
export async function runSheet(id: SheetId, options: SheetRunOptions = {}): Promise<SheetRun> {
  const { sheet, answers } = readSheet(id)
  const program = assembleProgram(
    sheet.cells,
    options.answers ?? answers,
    sheet.parameters.map(parameter => parameter.name),
    sheet.timeStep,
  )
  const result = await compile(program, await createNodeStripper())
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  runner ??= createNodeRunner()
  const parameters = Object.fromEntries(sheet.parameters.map(p => [p.name, options.set?.[p.name] ?? p.value]))
  const outcome = await runner.run({
    compiled: result.compiled,
    parameters,
    seed: 1,
    stepFactor: options.stepFactor ?? 1,
  })
  return { outcome, column: (cell, path) => columnOf(outcome.recordings, cell, path) }
}

export async function closeRunner(): Promise<void> {
  await runner?.close()
  runner = undefined
}

function columnOf(recordings: readonly Recording[], cell: string, path: string): number[] {
  const recording = recordings.find(r => r.cell === cell)
  if (recording === undefined) throw new Error(`Nothing was recorded in the cell ${cell}.`)
  const { series, rows, width, data } = recording
  const component = /\.([xyz])$/.exec(path)
  const vector = component && series.find(s => s.kind === "vector" && s.name === path.slice(0, -2))
  const scalar = series.find(s => s.kind === "scalar" && s.name === path)
  const column =
    path === "t" ? 0 : vector ? vector.column + "xyz".indexOf(component[1]!) : (scalar?.column ?? -1)
  if (column < 0)
    throw new Error(`The cell ${cell} does not record ${path}: ${series.map(s => s.name).join(", ")}`)
  return Array.from({ length: rows }, (_, row) => data[row * width + column]!)
}
