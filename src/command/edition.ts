import { assembleProgram } from "../cell/index.ts"
import type { Problem } from "../cell/problem.ts"
import type { Edition, ShelfCard } from "../judge/edition.ts"
import { buildReference, packReference } from "../judge/index.ts"
import { pointsOf } from "../report/index.ts"
import type { Recording } from "../run/contract.ts"
import { checkSeries, type StudentSheet, type Worksheet } from "../worksheet/index.ts"
import { strobeOf } from "./strobe.ts"
import type { Tools } from "./tools.ts"

export interface MadeEdition {
  readonly edition: Edition
  readonly card: ShelfCard
}

export type EditionResult =
  | { readonly ok: true; readonly made: MadeEdition }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Makes what a student's page needs of a worksheet: the sheet without answers, the program as the student finds it,
 * compiled, and the reference motions. The author's answers are run here and stay here.
 */
export async function makeEdition(worksheet: Worksheet, tools: Tools): Promise<EditionResult> {
  const { sheet, answers, file } = worksheet
  const names = sheet.parameters.map(parameter => parameter.name)
  const inFile = (problems: readonly Problem[]): readonly Problem[] =>
    problems.map(problem => placeInFile(worksheet, problem))
  const full = await tools.compile(assembleProgram(sheet.cells, answers, names, sheet.timeStep))
  if (!full.ok) return { ok: false, problems: inFile(full.problems) }
  const starter = await tools.compile(assembleProgram(sheet.cells, {}, names, sheet.timeStep))
  if (!starter.ok) return { ok: false, problems: inFile(starter.problems) }
  const parameters = ownParameters(sheet)
  const outcome = await tools.run({ compiled: full.compiled, parameters, seed: 0 })
  if (outcome.problem) return { ok: false, problems: inFile([outcome.problem]) }
  const unknown = checkSeries(worksheet, new Map(outcome.recordings.map(r => [r.cell, r.series])))
  if (unknown.length > 0) return { ok: false, problems: unknown }
  const reference = await buildReference(worksheet, tools, parameters)
  return {
    ok: true,
    made: {
      edition: {
        format: "deltasheet-edition/1",
        sheet,
        starter: starter.compiled,
        reference: packReference(reference, sheet.checks),
      },
      card: cardOf(sheet, outcome.recordings, file),
    },
  }
}

/** The values on the sheet itself, as every student's page shows them first. */
export function ownParameters(sheet: StudentSheet): Record<string, number> {
  return Object.fromEntries(sheet.parameters.map(parameter => [parameter.name, parameter.value]))
}

function cardOf(sheet: StudentSheet, recordings: readonly Recording[], _file: string): ShelfCard {
  return {
    id: sheet.id,
    title: sheet.title,
    version: sheet.version,
    summary: sheet.summary,
    cells: sheet.cells.length,
    blanks: sheet.cells.flatMap(cell => cell.segments).filter(segment => segment.kind === "blank").length,
    questions: sheet.questions.length,
    points: pointsOf(sheet),
    strobe: strobeOf(sheet, recordings),
  }
}

/** A place in a cell as the student sees it, told as a line of the author's file (marker lines counted in). */
export function placeInFile(worksheet: Worksheet, problem: Problem): Problem {
  const cell = worksheet.sheet.cells.find(c => c.name === problem.where?.cell)
  if (!problem.where || !cell)
    return problem.where ? problem : { ...problem, where: { file: worksheet.file, line: 1, column: 1 } }
  let shown = 1
  for (const segment of cell.segments) {
    const text = segment.kind === "given" ? segment.text : (worksheet.answers[segment.name] ?? "")
    const last = shown + text.split("\n").length - 1
    if (problem.where.line <= last && segment.kind === "blank" && !segment.inline) {
      const at = (worksheet.lines[`blank:${segment.name}`] ?? cell.line) + 1 + problem.where.line - shown
      return { ...problem, where: { ...problem.where, file: worksheet.file, line: at } }
    }
    if (problem.where.line <= last && segment.kind === "given")
      return {
        ...problem,
        where: {
          ...problem.where,
          file: worksheet.file,
          line: lineInFile(worksheet, cell.name, problem.where.line),
        },
      }
    shown = last
  }
  return { ...problem, where: { ...problem.where, file: worksheet.file } }
}

/** Given lines move down by the markers and starters of the blanks above them. */
function lineInFile(worksheet: Worksheet, name: string, line: number): number {
  const cell = worksheet.sheet.cells.find(c => c.name === name)!
  let shown = 1
  let extra = 0
  for (const segment of cell.segments) {
    const text = segment.kind === "given" ? segment.text : (worksheet.answers[segment.name] ?? "")
    const last = shown + text.split("\n").length - 1
    if (segment.kind === "blank" && !segment.inline) {
      if (line <= last) break
      const starter = segment.starter === "" ? 0 : segment.starter.split("\n").length + 1
      extra += 2 + starter - (text === "" ? 1 : 0)
    }
    if (line < last) break
    shown = last
  }
  return cell.line + line - 1 + extra
}
