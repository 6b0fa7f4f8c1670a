import { statSync } from "node:fs"
import { availableParallelism } from "node:os"
import { join } from "node:path"
import type { Problem } from "../cell/problem.ts"
import { createMarker, createReferences, type Marker, type References } from "../judge/index.ts"
import {
  graded,
  type Marked,
  type Motion,
  motionsOf,
  type Result,
  refused,
  resultsCsv,
  resultsJson,
  workOf,
} from "../report/index.ts"
import { matchAnswers, readAnswerFile, refuses, type Worksheet } from "../worksheet/index.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { readReportsAsked, reportOptions, writeReports } from "./class-reports.ts"
import { collect, type Handed } from "./collect.ts"
import { decodeUtf8, fileProblem, readWorksheet, writeWhole } from "./files.ts"
import type { ExitCode } from "./main.ts"
import { createProgress } from "./progress.ts"
import { count, out, refuse, shortNumber } from "./say.ts"
import { createTools, type Tools } from "./tools.ts"

export const gradeSpec: CommandSpec = {
  name: "grade",
  usage: "deltasheet grade WORKSHEET --answers PATH... --out DIR",
  says: "mark answer files, folders or zips of them; writes results, a report and a page for each student",
  takes: [1, 1],
  options: {
    answers: { value: "PATH", says: "answer files, folders or zip archives", many: true },
    out: { value: "DIR", says: "folder for results.json, results.csv, report.html and the rest" },
    ...reportOptions,
  },
}

export async function grade(asked: Asked, home: string): Promise<ExitCode> {
  const read = readWorksheet(asked.files[0]!)
  if (!read.ok) return refuse(asked, read.problems)
  const worksheet = read.value
  const paths = asked.values.answers ?? []
  const folder = asked.values.out?.[0]
  if (paths.length === 0 || folder === undefined)
    return refuse(asked, [
      {
        code: "asked-wrongly",
        text: paths.length === 0 ? "No answers were named." : "No folder for the results was named.",
        todo: `Write it as: ${gradeSpec.usage}`,
      },
    ])
  const problem = folderProblem(folder)
  if (problem) return refuse(asked, [problem])
  const wanted = readReportsAsked(asked)
  if ("code" in wanted) return refuse(asked, [wanted])
  const handed = collect(paths)
  const tools = createTools(join(home, "dist", "runner.js"), Math.max(1, Math.min(availableParallelism(), 8)))
  const references = createReferences()
  const progress = createProgress("marked", handed.length)
  try {
    const marked = await markAll(worksheet, handed, tools, references, () => progress.step())
    const results = marked.map(({ result }) => result)
    progress.end()
    writeWhole(join(folder, "results.json"), resultsJson(worksheet.sheet, results))
    writeWhole(join(folder, "results.csv"), resultsCsv(worksheet.sheet, results))
    const reports = wanted.reports
      ? await writeReports(wanted, worksheet, marked, { home, folder, tools, references })
      : []
    if (asked.json) out(resultsJson(worksheet.sheet, results).trimEnd())
    else summarise(results, folder, reports)
    return results.some(result => result.status === "refused") ? 1 : 0
  } finally {
    progress.end()
    await tools.close()
  }
}

/** Marks everything that was handed in; as many at a time as there are workers, results in the order handed in. */
async function markAll(
  worksheet: Worksheet,
  handed: readonly Handed[],
  tools: Tools,
  references: References,
  marked: () => void,
): Promise<Marked[]> {
  const marker = createMarker(worksheet, tools, references, evidence =>
    motionsOf(worksheet.sheet, evidence.runs[0]),
  )
  const results = new Array<Marked>(handed.length)
  let next = 0
  const worker = async (): Promise<void> => {
    for (let i = next++; i < handed.length; i = next++) {
      results[i] = await markOne(worksheet, handed[i]!, marker)
      marked()
    }
  }
  await Promise.all(Array.from({ length: tools.workers + 1 }, worker))
  return results
}

/** One file, one result: whatever is wrong with it stays its own. */
async function markOne(
  worksheet: Worksheet,
  item: Handed,
  marker: Marker<readonly Motion[]>,
): Promise<Marked> {
  const { sheet } = worksheet
  const refusal = (student: Result["student"], problems: readonly Problem[]): Marked => ({
    result: refused(sheet, item.file, student, problems),
    work: null,
  })
  if ("problem" in item) return refusal(null, [item.problem])
  const text = decodeUtf8(item.bytes)
  if (text === null)
    return refusal(null, [
      {
        code: "not-utf-8",
        text: "The answer file is not written in UTF-8.",
        todo: "Hand in the downloaded file unchanged.",
      },
    ])
  const read = readAnswerFile(text)
  if (!read.ok) return refusal(null, read.problems)
  const { answers } = read
  const problems = matchAnswers(sheet, answers)
  if (problems.some(refuses)) return refusal(answers.student, problems)
  const { judgement, kept: motions } = await marker.mark(answers)
  const toRead = Object.fromEntries(
    sheet.questions
      .filter(q => q.kind === "text")
      .map(q => [q.name, String(answers.questions[q.name] ?? "")]),
  )
  return {
    result: graded(item.file, answers.student, judgement, toRead, problems),
    work: workOf(sheet, answers, motions),
  }
}

function summarise(results: readonly Result[], folder: string, reports: readonly string[]): void {
  const marked = results.filter(result => result.status === "graded")
  const full = marked.filter(result => result.points === result.outOf).length
  const halted = marked.filter(result =>
    result.checks.some(check => check.verdict === "could not run"),
  ).length
  const mean = marked.reduce((sum, result) => sum + result.points, 0) / Math.max(1, marked.length)
  out(
    `${count(marked.length, "answer file")} marked: ${full} with full points, ${halted} that could not run, ${shortNumber(mean)} of ${shortNumber(results[0]?.outOf ?? 0)} points on average.`,
  )
  const not = results.filter(result => result.status === "refused")
  if (not.length > 0) {
    out(`${count(not.length, "file")} refused:`)
    for (const result of not) out(`  ${result.file}: ${result.problems[0]?.text ?? ""}`)
  }
  const also = reports.length === 0 ? "" : `; for the class open ${join(folder, "report.html")}`
  out(`written: ${join(folder, "results.json")}, ${join(folder, "results.csv")}${also}`)
}

function folderProblem(folder: string): Problem | null {
  try {
    return statSync(folder).isDirectory()
      ? null
      : {
          code: "file",
          text: `“${folder}” is a file, not a folder.`,
          todo: "Name another folder after --out.",
        }
  } catch (cause) {
    return (cause as NodeJS.ErrnoException).code === "ENOENT" ? null : fileProblem(folder, cause)
  }
}
