import type { CellSource } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { Worksheet } from "../worksheet/index.ts"

/** A problem's place in a cell as the student sees it, told as a line of the author's file instead. */
export function placeInFile(worksheet: Worksheet, problem: Problem): Problem {
  const { where } = problem
  const { file } = worksheet
  if (!where) return { ...problem, where: { file, line: 1, column: 1 } }
  const cell = worksheet.sheet.cells.find(({ name }) => name === where.cell)
  if (!cell) return problem
  return {
    ...problem,
    where: { ...where, file, line: linesInFile(worksheet, cell)[where.line - 1] ?? where.line },
  }
}

/** For each line of a cell as it is shown, its line in the file, where markers and starters of blanks stand between. */
function linesInFile({ answers, lines }: Worksheet, cell: CellSource): number[] {
  let line = cell.line
  const found = [line]
  for (const segment of cell.segments) {
    const rows = (segment.kind === "given" ? segment.text : (answers[segment.name] ?? "")).split("\n")
    const block = segment.kind === "blank" && !segment.inline
    if (block) {
      line = lines[`blank:${segment.name}`]! + 1
      found[found.length - 1] = line
    }
    for (let i = 1; i < rows.length; i++) found.push(++line)
    if (block) {
      const empty = rows.length === 1 && rows[0] === ""
      const starter = segment.starter === "" ? 0 : segment.starter.split("\n").length + 1
      // on to the closing marker: an answer of no line at all has none to step over
      line += starter + (empty ? 0 : 1)
    }
  }
  return found
}
