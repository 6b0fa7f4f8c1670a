import type { StudentSheet } from "../worksheet/contract.ts"
import type { Marked } from "./contract.ts"
import { pageName } from "./file-name.ts"
import { savedInstant } from "./instant.ts"
import { isSuperseded } from "./tally.ts"
import { plainText } from "./text.ts"

/** Spreadsheets take the file for UTF-8 when it begins so; without it they break accents. */
const byteOrderMark = "\ufeff"

const itemsOf = (sheet: StudentSheet): string[] => [
  ...sheet.checks.map(check => check.name),
  ...sheet.questions.filter(question => question.points > 0).map(question => question.name),
]

/**
 * results.csv begins with this. As RFC 4180 has it (commas, CRLF, quotes doubled), for a spreadsheet: a line a file,
 * points in all and for each check and question. Decimals have points.
 */
export const csvHead = (sheet: StudentSheet): string =>
  byteOrderMark +
  line([
    "number",
    "student name",
    "points",
    "out of",
    "status",
    "student id",
    "file",
    "saved (UTC)",
    ...itemsOf(sheet),
    "slips",
    "remarks",
    "page",
  ])

/**
 * The line of one file. What was not marked has no points, so that means are those of the marked files.
 *
 * @param number its place, from 1; a report without names calls the student by it
 * @param pages whether students' pages are written
 */
export function csvLine(sheet: StudentSheet, marked: Marked, number: number, pages: boolean): string {
  const { result } = marked
  const graded = result.status === "graded"
  const byName = new Map(result.checks.map(check => [check.name, check]))
  const slips = [...new Set(result.checks.flatMap(check => (check.slip === null ? [] : [check.slip])))]
  return line([
    String(number),
    result.student?.name ?? "",
    graded ? String(result.points) : "",
    graded ? String(result.outOf) : "",
    isSuperseded(marked) ? "left aside" : result.status,
    result.student?.id ?? "",
    result.file,
    savedInstant(marked)?.slice(0, 16).replace("T", " ") ?? "",
    ...itemsOf(sheet).map(name => String(byName.get(name)?.points ?? "")),
    slips.join(" "),
    result.problems.map(problem => problem.text).join(" "),
    pages ? pageName(result) : "",
  ])
}

const line = (cells: readonly string[]): string => `${cells.map(field).join(",")}\r\n`

/** Where a spreadsheet may begin a cell: in front, and behind whatever its country separates lists with. */
const formula = /(^|[;\t\n])([^\S\t\n]*[=+\-@＝＋－＠])/g

/**
 * A cell that a spreadsheet would take for a formula gets an apostrophe in front, since names and file names come
 * from outside; one that separates its lists with “;” or tabs would begin new cells inside a text.
 */
function field(text: string): string {
  const plain = plainText(text)
  const safe = /^-?\d+(\.\d+)?$/.test(plain) ? plain : plain.replace(formula, "$1'$2")
  return /[",\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
