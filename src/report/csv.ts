import type { StudentSheet } from "../worksheet/contract.ts"
import type { Result } from "./results.ts"

/**
 * results.csv as RFC 4180 has it (commas, CRLF, quotes doubled): a line a file, points in all and for each check
 * and question. A cell that a spreadsheet would take for a formula gets an apostrophe in front, since names and
 * file names come from outside.
 */
export function resultsCsv(sheet: StudentSheet, results: readonly Result[]): string {
  const items = [
    ...sheet.checks.map(check => check.name),
    ...sheet.questions.filter(q => q.points > 0).map(q => q.name),
  ]
  const head = [
    "file",
    "student id",
    "student name",
    "status",
    "points",
    "out of",
    ...items,
    "slips",
    "remarks",
  ]
  const lines = results.map(result => {
    const byName = new Map(result.checks.map(check => [check.name, check]))
    const slips = [...new Set(result.checks.flatMap(check => (check.slip === null ? [] : [check.slip])))]
    return [
      result.file,
      result.student?.id ?? "",
      result.student?.name ?? "",
      result.status,
      String(result.points),
      String(result.outOf),
      ...items.map(name => String(byName.get(name)?.points ?? "")),
      slips.join(" "),
      result.problems.map(problem => problem.text).join(" "),
    ]
  })
  return [head, ...lines].map(cells => `${cells.map(field).join(",")}\r\n`).join("")
}

function field(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
