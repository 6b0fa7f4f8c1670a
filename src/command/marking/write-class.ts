import {
  csvHead,
  csvLine,
  type Marked,
  type ReportPiece,
  type ReportSubject,
  reportFiles,
  resultsJson,
} from "../../report/index.ts"
import type { StudentSheet } from "../../worksheet/index.ts"
import type { ReportsAsked } from "../class-reports.ts"
import { writePieces } from "../pieces.ts"
import { reportLook } from "../report-look.ts"

/**
 * Writes results.json, results.csv and the reports of a class, file by file as they come from `all`, so that
 * thousands need no memory. The same class gives the same bytes.
 *
 * @returns names of what was written, without the students' pages
 */
export async function writeClass(
  folder: string,
  subject: ReportSubject,
  all: () => Iterable<Marked>,
  wanted: ReportsAsked,
  home: string,
): Promise<string[]> {
  const { anonymous, roster, reports } = wanted
  const options = { ...reportLook(home), anonymous, ...(roster === null ? {} : { roster }) }
  async function* pieces(): AsyncIterable<ReportPiece> {
    yield* resultPieces(subject.sheet, all(), reports)
    if (reports) yield* reportFiles(subject, all(), options)
  }
  const names = await writePieces(folder, pieces(), { keepPages: !reports })
  return names.filter(name => !name.startsWith("students/"))
}

/** results.json and results.csv in stretches: the bytes of resultsJson over the whole class, and a line a file. */
async function* resultPieces(
  sheet: StudentSheet,
  all: Iterable<Marked>,
  pages: boolean,
): AsyncIterable<ReportPiece> {
  const frame = resultsJson(sheet, [])
  const middle = frame.lastIndexOf("[]")
  let number = 0
  yield { name: "results.json", text: frame.slice(0, middle) }
  yield { name: "results.csv", text: csvHead(sheet) }
  for (const marked of all) {
    const text = JSON.stringify(marked.result, null, 2).replaceAll("\n", "\n    ")
    yield { name: "results.json", text: `${number === 0 ? "[" : ","}\n    ${text}` }
    yield { name: "results.csv", text: csvLine(sheet, marked, ++number, pages) }
  }
  yield { name: "results.json", text: `${number === 0 ? "[]" : "\n  ]"}${frame.slice(middle + 2)}` }
}
