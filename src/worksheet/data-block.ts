import type { DataBlock } from "./contract.ts"
import { checkUnit } from "./parameters.ts"
import { type Findings, report } from "./source.ts"

const heading = /^([A-Za-z][A-Za-z0-9_]*)[ \t]*(?:\[([^\]]*)\])?$/

/** Reads measured data: a line of `name [unit]` headings, then numbers, commas between. */
export function readData(findings: Findings, name: string, body: string, line: number): DataBlock | null {
  const before = findings.problems.length
  const rows = body.split("\n").map(text => text.trim())
  const wrong = (at: number, text: string, todo: string): void =>
    report(findings, line + at, { code: "data-table", text: `The data “${name}” ${text}`, todo })
  const head = rows[0] ?? ""
  if (head === "") {
    wrong(0, "are empty.", "Write headings like “t [s], y [m]” and the numbers below.")
    return null
  }
  const columns = head.split(",").map(cell => {
    const match = heading.exec(cell.trim())
    if (!match) {
      wrong(
        0,
        `have the heading “${cell.trim()}”.`,
        "A heading is a name and, in square brackets, its unit: “t [s]”.",
      )
      return { name: "", unit: "1" }
    }
    const unit = match[2]?.trim() || "1"
    checkUnit(findings, line, unit, `column “${match[1]}” of the data “${name}”`)
    return { name: match[1]!, unit }
  })
  const numbers: number[][] = []
  for (let i = 1; i < rows.length; i++) {
    if (rows[i] === "") continue
    const cells = rows[i]!.split(",").map(cell => cell.trim())
    if (cells.length !== columns.length)
      wrong(
        i,
        `have ${cells.length} columns here, and ${columns.length} headings.`,
        "Give each line as many numbers as there are headings; use a point for decimals.",
      )
    const values = cells.map(Number)
    const bad = cells.findIndex((cell, j) => cell === "" || !Number.isFinite(values[j]))
    if (bad >= 0)
      wrong(
        i,
        `have “${cells[bad]}” where a number belongs.`,
        "Write the number with a point for decimals, without its unit.",
      )
    numbers.push(values)
  }
  return findings.problems.length > before ? null : { name, columns, rows: numbers }
}
