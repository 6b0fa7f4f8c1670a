import type { CellSource } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { Worksheet } from "./contract.ts"

/** Signs of a listing that fit on one line of a narrow phone (360 px) at the page's own size. */
export const narrowLine = 54

/** Given lines that wrap on a phone, one advice a cell; lines as the student sees them. Answers are no matter. */
export function longLines({ sheet, answers }: Worksheet): Problem[] {
  return sheet.cells.flatMap((cell): Problem[] => {
    const long = longOf(cell, answers)
    const [first] = long
    if (first === undefined) return []
    return [
      {
        code: "long-line",
        text: `${long.length === 1 ? "One given line" : `${long.length} given lines`} of the cell “${cell.name}” ${long.length === 1 ? "is" : "are"} longer than ${narrowLine} signs (the longest has ${Math.max(...long.map(line => line.signs))}); on a phone ${long.length === 1 ? "it wraps" : "they wrap"}.`,
        todo: "Break the line after a comma or an operator, or put a comment on a line of its own.",
        where: { cell: cell.name, line: first.line, column: narrowLine + 1 },
      },
    ]
  })
}

/** Lines on which given text alone is too long; what a blank may hold on them is not counted. */
function longOf(
  cell: CellSource,
  answers: Readonly<Record<string, string>>,
): { readonly line: number; readonly signs: number }[] {
  const given = [""]
  for (const segment of cell.segments) {
    if (segment.kind === "given") {
      const [rest = "", ...lines] = segment.text.split("\n")
      given[given.length - 1] += rest
      given.push(...lines)
    } else {
      const rows = (answers[segment.name] ?? "").split("\n").length
      for (let i = 1; i < rows; i++) given.push("")
    }
  }
  return given.flatMap((text, i) => {
    const signs = [...text].length
    return signs > narrowLine ? [{ line: i + 1, signs }] : []
  })
}
