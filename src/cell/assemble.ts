import type { CellSource, Program } from "./contract.ts"
import type { Place } from "./problem.ts"

/** Between two cells: on a line of its own, so that the last statement of a cell never runs on into the next. */
const separator = "\n;\n"

interface Shown {
  readonly text: string
  readonly blanks: readonly { name: string; from: number; to: number; inline: boolean }[]
}

/**
 * A cell as a reader sees it: given lines with the blanks filled in. Whole-line blanks stand on lines of their own;
 * an empty one keeps one empty line. A blank without an answer shows its starter, an inline one nothing.
 */
export function cellText(cell: CellSource, answers: Readonly<Record<string, string>>): Shown {
  let text = ""
  const blanks: Shown["blanks"][number][] = []
  cell.segments.forEach((segment, i) => {
    if (segment.kind === "given") {
      text += plainLines(segment.text)
      return
    }
    const { name, inline, starter } = segment
    const answer = plainLines(
      (Object.hasOwn(answers, name) ? answers[name] : undefined) ?? (inline ? "" : starter),
    )
    if (!inline && text !== "" && !text.endsWith("\n")) text += "\n"
    const from = text.length
    text += answer
    blanks.push({ name, from, to: text.length, inline })
    const next = cell.segments[i + 1]
    const goesOn = next !== undefined && !(next.kind === "given" && plainLines(next.text).startsWith("\n"))
    if (!inline && goesOn) text += "\n"
  })
  return { text, blanks }
}

/**
 * All cells in document order as one program, blanks filled.
 *
 * @param answers text of each blank by its name; a missing one stands for what the student finds at first
 * @param parameters names that the program may read as constants
 * @param timeStep name of the constant that is the time step
 */
export function assembleProgram(
  cells: readonly CellSource[],
  answers: Readonly<Record<string, string>>,
  parameters: readonly string[],
  timeStep: string,
): Program {
  let text = ""
  const places: Program["cells"][number][] = []
  const blanks: Program["blanks"][number][] = []
  cells.forEach((cell, i) => {
    if (i > 0) text += separator
    const shown = cellText(cell, answers)
    const from = text.length
    text += shown.text
    places.push({ name: cell.name, from, to: text.length })
    for (const b of shown.blanks) {
      blanks.push({ name: b.name, cell: cell.name, from: from + b.from, to: from + b.to, inline: b.inline })
    }
  })
  return { text, cells: places, blanks, parameters: [...parameters], timeStep }
}

/** Where a stretch of the program's text stands: cell, blank if it begins in one, line and column within the cell as shown. */
export function placeOf(program: Program, from: number, to: number): Place {
  const cell = program.cells.findLast(c => c.from <= from) ?? program.cells[0]
  if (cell === undefined) return { line: 1, column: 1 }
  const start = Math.min(Math.max(from, cell.from), cell.to)
  const end = Math.min(Math.max(to, start), cell.to)
  const blank = program.blanks.find(b => b.cell === cell.name && b.from <= start && start <= b.to)
  const a = lineAndColumn(program.text, cell.from, start)
  const b = lineAndColumn(program.text, cell.from, end)
  return {
    cell: cell.name,
    ...(blank === undefined ? {} : { blank: blank.name }),
    line: a.line,
    column: a.column,
    endLine: b.line,
    endColumn: b.column,
  }
}

/** The whole line on which an offset stands, without the white space around it. */
export function lineAt(text: string, offset: number): string {
  const from = text.lastIndexOf("\n", offset - 1) + 1
  const to = text.indexOf("\n", offset)
  return text.slice(from, to < 0 ? text.length : to).trim()
}

function lineAndColumn(text: string, from: number, offset: number): { line: number; column: number } {
  let line = 1
  let start = from
  for (let at = text.indexOf("\n", from); at >= 0 && at < offset; at = text.indexOf("\n", at + 1)) {
    line++
    start = at + 1
  }
  return { line, column: offset - start + 1 }
}

/** Every line ends in one line feed, as the language itself reads it in texts; a mark for byte order goes. */
function plainLines(text: string): string {
  return text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n")
}
