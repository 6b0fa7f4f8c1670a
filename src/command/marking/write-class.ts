import {
  type Marked,
  type ReportPiece,
  type ReportSubject,
  reportFiles,
  resultsCsv,
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
    yield* resultPieces(subject.sheet, all())
    if (reports) yield* reportFiles(subject, all(), options)
  }
  const names = await writePieces(folder, pieces(), { keepPages: !reports })
  return names.filter(name => !name.startsWith("students/"))
}

/** results.json and results.csv in stretches: the bytes of resultsJson and resultsCsv over the whole class. */
export async function* resultPieces(sheet: StudentSheet, all: Iterable<Marked>): AsyncIterable<ReportPiece> {
  const frame = resultsJson(sheet, [])
  const middle = frame.lastIndexOf("[]")
  const head = resultsCsv(sheet, [])
  let started = false
  yield { name: "results.json", text: frame.slice(0, middle) }
  yield { name: "results.csv", text: head }
  for (const { result } of all) {
    const text = JSON.stringify(result, null, 2).replaceAll("\n", "\n    ")
    yield { name: "results.json", text: `${started ? "," : "["}\n    ${text}` }
    yield { name: "results.csv", text: resultsCsv(sheet, [result]).slice(head.length) }
    started = true
  }
  yield { name: "results.json", text: `${started ? "\n  ]" : "[]"}${frame.slice(middle + 2)}` }
}
