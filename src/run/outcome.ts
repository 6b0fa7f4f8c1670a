import type { Place, Problem } from "../cell/problem.ts"
import type { Limits, LinesWish, Recording, RunOutcome, Series } from "./contract.ts"
import { readLineValues } from "./lines/read.ts"

/** An outcome without a motion: the run could not be carried to its end. */
export function lostOutcome(problem: Problem, milliseconds: number): RunOutcome {
  return { recordings: [], problem, output: [], turns: 0, timeStepFound: false, milliseconds }
}

/**
 * Reads an outcome that another process or worker sent. A program that had got out of its realm could send
 * anything, so nothing passes that does not have the exact form, and nothing larger than the limits.
 *
 * @returns null where the message is not an outcome
 */
export function readOutcome(
  message: unknown,
  cells: readonly string[],
  limits: Limits,
  lines?: { readonly wish: LinesWish; readonly sites: number },
): RunOutcome | null {
  if (!isRecord(message)) return null
  const { recordings, problem, output, turns, timeStepFound, milliseconds } = message
  if (!Array.isArray(recordings) || recordings.length > cells.length) return null
  const read: Recording[] = []
  let numbers = 0
  for (const item of recordings) {
    const recording = readRecording(item, cells)
    if (recording === null) return null
    numbers += recording.rows * recording.width
    read.push(recording)
  }
  // One row may begin each cell before the limit is looked at.
  if (numbers > limits.recorded + cells.length * 1000) return null
  if (!Array.isArray(output) || !output.every(line => typeof line === "string")) return null
  if (output.reduce((sum, line) => sum + line.length, 0) > limits.output + 200) return null
  if (!isCount(turns) || typeof timeStepFound !== "boolean" || typeof milliseconds !== "number") return null
  const values = lines ? readLineValues(message.lines, lines.wish, lines.sites) : undefined
  if (values === null) return null
  const readProblemOrNull = problem === null ? null : readProblem(problem)
  if (problem !== null && readProblemOrNull === null) return null
  return {
    recordings: read,
    problem: readProblemOrNull,
    output: output.map(String),
    turns,
    timeStepFound,
    milliseconds,
    ...(values ? { lines: values } : {}),
  }
}

function readRecording(item: unknown, cells: readonly string[]): Recording | null {
  if (!isRecord(item)) return null
  const { cell, series, rows, width, data } = item
  if (typeof cell !== "string" || !cells.includes(cell)) return null
  if (!Array.isArray(series) || !isCount(rows) || !isCount(width)) return null
  if (!(data instanceof Float64Array) || data.length < rows * width) return null
  const read: Series[] = []
  let column = 1
  for (const one of series) {
    if (!isRecord(one) || typeof one.name !== "string" || one.name.length > 1000 || one.column !== column)
      return null
    if (one.kind !== "vector" && one.kind !== "scalar") return null
    read.push({ name: one.name, kind: one.kind, column })
    column += one.kind === "vector" ? 3 : 1
  }
  if (column !== width || !isMotion(data, rows, width)) return null
  return { cell, series: read, rows, width, data }
}

/** Finite numbers throughout, and a time that never runs back. */
function isMotion(data: Float64Array, rows: number, width: number): boolean {
  let last = Number.NEGATIVE_INFINITY
  for (let row = 0, at = 0; row < rows; row++) {
    const time = data[at]!
    if (time < last) return false
    last = time
    for (const end = at + width; at < end; at++) if (!Number.isFinite(data[at])) return false
  }
  return true
}

/** A problem with its texts at sensible lengths; null where the value is none. */
export function readProblem(value: unknown): Problem | null {
  if (!isRecord(value)) return null
  const { code, text, todo, where, excerpt } = value
  if (typeof code !== "string" || !/^[a-z0-9-]{1,60}$/.test(code)) return null
  if (typeof text !== "string" || typeof todo !== "string" || text === "" || todo === "") return null
  const place = where === undefined ? undefined : readPlace(where)
  return {
    code,
    text: clip(text),
    todo: clip(todo),
    ...(place === undefined ? {} : { where: place }),
    ...(typeof excerpt === "string" ? { excerpt: clip(excerpt) } : {}),
  }
}

function readPlace(value: unknown): Place | undefined {
  if (!isRecord(value) || !isCount(value.line) || !isCount(value.column)) return undefined
  return {
    ...(typeof value.file === "string" ? { file: clip(value.file) } : {}),
    ...(typeof value.cell === "string" ? { cell: clip(value.cell) } : {}),
    ...(typeof value.blank === "string" ? { blank: clip(value.blank) } : {}),
    line: value.line,
    column: value.column,
    ...(isCount(value.endLine) ? { endLine: value.endLine } : {}),
    ...(isCount(value.endColumn) ? { endColumn: value.endColumn } : {}),
  }
}

const clip = (text: string): string => (text.length > 1000 ? `${text.slice(0, 1000)}…` : text)
const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0
