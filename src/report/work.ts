import { thin } from "../judge/thin.ts"
import { columnsOf } from "../judge/track.ts"
import type { Recording } from "../run/contract.ts"
import type { AnswerFile, Check, StudentSheet } from "../worksheet/contract.ts"
import { seriesOf } from "../worksheet/series.ts"
import { longestText, type Motion, motionRows, type Work } from "./contract.ts"

/** What reports need of one marked file beside its Result: small, plain, and nothing but what was handed in. */
export function workOf(sheet: StudentSheet, answers: AnswerFile, motions: readonly Motion[]): Work {
  const blanks = sheet.cells
    .flatMap(cell => cell.segments)
    .flatMap(segment => (segment.kind === "blank" ? [segment.name] : []))
  return {
    blanks: pick(blanks, answers.answers, text => shortened(text)),
    questions: pick(
      sheet.questions.map(question => question.name),
      answers.questions,
      given => (typeof given === "string" ? shortened(given) : given),
    ),
    savedAt: answers.savedAt,
    motions,
  }
}

/** The named entries that are there, in the order of the names. */
function pick<T>(
  names: readonly string[],
  from: Readonly<Record<string, T>>,
  kept: (value: T) => T,
): Record<string, T> {
  return Object.fromEntries(
    names.filter(name => Object.hasOwn(from, name)).map(name => [name, kept(from[name]!)]),
  )
}

function shortened(text: string): string {
  return text.length <= longestText
    ? text
    : `${text.slice(0, longestText)}\n… (${text.length - longestText} more characters are left out here)`
}

/**
 * The curves that the checks of a sheet read, out of one run: of a student's (Evidence.runs[0]) or of the reference's
 * (Reference.runs[0]). Cells without a check, and series that were not recorded, are left out.
 */
export function motionsOf(sheet: StudentSheet, recordings: readonly Recording[] | undefined): Motion[] {
  return (recordings ?? []).flatMap(recording => {
    const checks = sheet.checks.filter(check => check.cell === recording.cell)
    const columns = curvePaths(checks, recording).map(path => ({
      path,
      column: columnsOf(recording, path)!.column,
    }))
    if (columns.length === 0 || recording.rows === 0) return []
    const { rows, width, data } = thin(
      only(
        recording,
        columns.map(({ column }) => column),
      ),
      motionRows,
    )
    const read = (c: number): number[] =>
      Array.from({ length: rows }, (_, row) => fiveDigits(data[row * width + c]!))
    return [
      {
        cell: recording.cell,
        ofTime: recording.series.some(({ name }) => /\.(position|momentum)$/.test(name)),
        times: read(0),
        curves: columns.map(({ path }, i) => ({ path, values: read(i + 1) })),
      },
    ]
  })
}

/** Components, one number an instant, that the checks' rules read. */
function curvePaths(checks: readonly Check[], recording: Recording): string[] {
  const wanted = checks.flatMap(check => seriesOf(check.rule).map(series => series.name))
  const paths = recording.series.flatMap(series => {
    const parts =
      series.kind === "scalar" ? [series.name] : ["x", "y", "z"].map(axis => `${series.name}.${axis}`)
    return parts.filter(part => wanted.includes(part) || wanted.includes(series.name))
  })
  return [...new Set(paths)]
}

/** The named columns alone, so that thinning keeps what is drawn. */
function only(recording: Recording, columns: readonly number[]): Recording {
  const all = [0, ...columns]
  const data = new Float64Array(recording.rows * all.length)
  for (let row = 0; row < recording.rows; row++)
    for (let c = 0; c < all.length; c++)
      data[row * all.length + c] = recording.data[row * recording.width + all[c]!]!
  return { cell: recording.cell, series: [], rows: recording.rows, width: all.length, data }
}

const fiveDigits = (value: number): number => Number(value.toPrecision(5))
