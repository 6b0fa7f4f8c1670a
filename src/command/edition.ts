import type { Compiled } from "../cell/contract.ts"
import { assembleProgram } from "../cell/index.ts"
import type { Problem } from "../cell/problem.ts"
import { unitsRun } from "../cell/units-run/index.ts"
import {
  buildReference,
  type Edition,
  judgeSeed,
  NoReference,
  ownParameters,
  type PackedReference,
  packReference,
  type ShelfCard,
} from "../judge/index.ts"
import { pointsOf } from "../report/index.ts"
import type { Recording } from "../run/contract.ts"
import { checkSeries, type StudentSheet, type Worksheet } from "../worksheet/index.ts"
import { placeInFile } from "./place-in-file.ts"
import { strobeOf } from "./strobe.ts"
import type { Tools } from "./tools.ts"

export interface MadeEdition {
  readonly edition: Edition
  readonly card: ShelfCard
}

/** A worksheet that compiles and runs with its author's answers; all that a shelf needs to show it. */
export interface Prepared {
  readonly starter: Compiled
  readonly card: ShelfCard
}

export type Made<T> =
  | { readonly ok: true; readonly made: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Compiles and runs a worksheet once with its author's answers, and compiles it as the student finds it. */
export async function prepareSheet(worksheet: Worksheet, tools: Tools): Promise<Made<Prepared>> {
  const { sheet, answers } = worksheet
  const names = sheet.parameters.map(parameter => parameter.name)
  const wrong = (problems: readonly Problem[]): Made<Prepared> => ({
    ok: false,
    problems: problems.map(problem => placeInFile(worksheet, problem)),
  })
  const full = await tools.compile(assembleProgram(sheet.cells, answers, names, sheet.timeStep))
  if (!full.ok) return wrong(full.problems)
  const starter = await tools.compile(assembleProgram(sheet.cells, {}, names, sheet.timeStep))
  if (!starter.ok) return wrong(starter.problems)
  const outcome = await tools.run({
    compiled: full.compiled,
    parameters: ownParameters(sheet),
    seed: judgeSeed,
  })
  if (outcome.problem) return wrong([outcome.problem])
  const unknown = checkSeries(worksheet, new Map(outcome.recordings.map(r => [r.cell, r.series])))
  if (unknown.length > 0) return { ok: false, problems: unknown }
  return { ok: true, made: { starter: starter.compiled, card: cardOf(sheet, outcome.recordings) } }
}

/**
 * Makes what a student's page needs of a worksheet: the sheet without answers, the program as the student finds it,
 * compiled, and the reference motions. The author's answers are run here and stay here.
 */
export async function makeEdition(worksheet: Worksheet, tools: Tools): Promise<Made<MadeEdition>> {
  const prepared = await prepareSheet(worksheet, tools)
  if (!prepared.ok) return prepared
  const { sheet } = worksheet
  const { starter, card } = prepared.made
  let reference: PackedReference
  try {
    reference = packReference(await buildReference(worksheet, tools, ownParameters(sheet)), sheet.checks)
  } catch (cause) {
    if (cause instanceof NoReference) return { ok: false, problems: [placeInFile(worksheet, cause.problem)] }
    throw cause
  }
  return {
    ok: true,
    made: {
      edition: {
        format: "deltasheet-edition/1",
        sheet,
        starter,
        reference,
        units: unitsOf(worksheet).unitsByCell,
      },
      card,
    },
  }
}

/** The units run over the author's answers: what each series is measured in, and where units do not fit. */
export function unitsOf({ sheet, answers }: Worksheet): ReturnType<typeof unitsRun> {
  const names = sheet.parameters.map(parameter => parameter.name)
  return unitsRun(assembleProgram(sheet.cells, answers, names, sheet.timeStep), sheet.parameters)
}

function cardOf(sheet: StudentSheet, recordings: readonly Recording[]): ShelfCard {
  return {
    id: sheet.id,
    title: sheet.title,
    version: sheet.version,
    summary: sheet.summary,
    lesson: sheet.lesson,
    cells: sheet.cells.length,
    blanks: sheet.cells.flatMap(cell => cell.segments).filter(segment => segment.kind === "blank").length,
    questions: sheet.questions.length,
    points: pointsOf(sheet),
    strobe: strobeOf(sheet, recordings),
  }
}

/** The order of a shelf: by lesson, those without one last, then as they came. */
export function inCourse(cards: readonly ShelfCard[]): ShelfCard[] {
  const place = (card: ShelfCard): number => card.lesson ?? Number.POSITIVE_INFINITY
  return [...cards].sort((a, b) => (place(a) === place(b) ? 0 : place(a) - place(b)))
}
