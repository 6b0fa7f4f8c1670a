import { join } from "node:path"
import type { Problem } from "../cell/problem.ts"
import { examineWorksheet } from "../judge/index.ts"
import { pointsOf } from "../report/index.ts"
import { longLines, type Worksheet } from "../worksheet/index.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { prepareSheet, unitsOf } from "./edition.ts"
import { readWorksheet } from "./files.ts"
import type { ExitCode } from "./main.ts"
import { picturesOf } from "./pictures.ts"
import { placeInFile } from "./place-in-file.ts"
import { count, out, sayProblem, shortNumber } from "./say.ts"
import { createTools, type Tools } from "./tools.ts"

export const checkSpec: CommandSpec = {
  name: "check",
  usage: "deltasheet check FILE...",
  says: "read worksheets, run them, and tell whether their checks know right from wrong",
  takes: [1, 500],
  options: {},
}

type Examined = Awaited<ReturnType<typeof examineWorksheet>>

interface Report {
  readonly file: string
  readonly worksheet: Worksheet | null
  readonly examined: Examined | null
  readonly findings: readonly Problem[]
  /** what could be better and is no fault */
  readonly advice: readonly Problem[]
  readonly unreadable: boolean
}

export async function check(asked: Asked, home: string): Promise<ExitCode> {
  const tools = createTools(join(home, "dist", "runner.js"), 2)
  try {
    const reports: Report[] = []
    for (const file of asked.files) reports.push(await checkFile(file, tools))
    if (asked.json) out(JSON.stringify(reports.map(asJson), null, 2))
    else out(reports.map(asText).join("\n\n"))
    if (reports.some(report => report.unreadable)) return 2
    return reports.every(isSound) ? 0 : 1
  } finally {
    await tools.close()
  }
}

/** A file that could not be opened at all, other than one with faults in it, which are what this command looks for. */
const notOpened = new Set(["file", "not-utf-8", "worksheet-too-large"])

async function checkFile(file: string, tools: Tools): Promise<Report> {
  const read = readWorksheet(file)
  if (!read.ok) {
    const unreadable = read.problems.every(problem => notOpened.has(problem.code))
    return { file, worksheet: null, examined: null, findings: read.problems, advice: [], unreadable }
  }
  const worksheet = read.value
  const pictures = picturesOf(worksheet).flatMap(picture => ("problem" in picture ? [picture.problem] : []))
  const advice = longLines(worksheet).map(problem => placeInFile(worksheet, problem))
  const edition = await prepareSheet(worksheet, tools)
  if (!edition.ok)
    return {
      file,
      worksheet,
      examined: null,
      findings: [...pictures, ...edition.problems],
      advice,
      unreadable: false,
    }
  const examined = await examineWorksheet(worksheet, tools)
  const findings = [...unitsOf(worksheet).problems, ...examined.findings].map(problem =>
    placeInFile(worksheet, problem),
  )
  return { file, worksheet, examined, findings: [...pictures, ...findings], advice, unreadable: false }
}

function isSound(report: Report): boolean {
  return report.examined?.sound === true && report.findings.length === 0
}

function asJson(report: Report): unknown {
  const { file, worksheet, examined, findings, advice } = report
  if (worksheet === null) return { file, findings, sound: false }
  const { sheet } = worksheet
  return {
    file,
    id: sheet.id,
    version: sheet.version,
    digest: sheet.digest,
    parameters: sheet.parameters,
    cells: sheet.cells.map(cell => cell.name),
    blanks: blanksOf(worksheet),
    questions: sheet.questions.map(({ name, kind, points }) => ({ name, kind, points })),
    checks: sheet.checks.map(item => ({
      name: item.name,
      cell: item.cell,
      rule: item.rule.kind,
      points: item.points,
      ...examined?.checks.find(c => c.name === item.name),
    })),
    slips: examined?.slips ?? [],
    findings,
    advice,
    sound: isSound(report),
  }
}

function blanksOf(worksheet: Worksheet): { name: string; cell: string; prompt: string }[] {
  return worksheet.sheet.cells.flatMap(cell =>
    cell.segments.flatMap(s =>
      s.kind === "blank" ? [{ name: s.name, cell: cell.name, prompt: s.prompt }] : [],
    ),
  )
}

function asText(report: Report): string {
  const { file, worksheet, findings } = report
  const found = findings.map(sayProblem)
  if (worksheet === null) return [`${file}: cannot be used yet.`, ...found].join("\n")
  const { sheet } = worksheet
  const head = `${file}: ${sheet.title} (${sheet.id}, version ${sheet.version}), ${count(sheet.cells.length, "cell")}, ${count(blanksOf(worksheet).length, "blank")}, ${count(sheet.checks.length, "check")}, ${count(sheet.questions.length, "question")}, ${shortNumber(pointsOf(sheet))} points.`
  const advice = report.advice.map(({ text, where }) => `  Advice, line ${where?.line ?? 1}: ${text}`)
  return [head, ...marginLines(report), ...advice, ...found, isSound(report) ? "Sound." : "Not sound."].join(
    "\n",
  )
}

/** For each check, how far the furthest accepted answer and the nearest slip lie from its bound; then the slips. */
function marginLines({ examined }: Report): string[] {
  if (examined === null) return []
  const lines = examined.checks.map(item => {
    const accepted = item.nearestAccepted
    const slip = item.nearestSlip
    return [
      `  ${item.name}: ${count(item.points, "point")}; ${item.tolerance}`,
      accepted &&
        `    accepted furthest out: ${accepted.name}, ${accepted.ratio < 0.001 ? "exactly" : `at ${plainRatio(accepted.ratio)} of what is allowed`}`,
      item.horizon !== null &&
        `    compared up to ${shortNumber(item.horizon)} s: past it the motion is too sensitive, and a change of the start by a hair makes another`,
      slip && `    refused nearest: ${slip.name}, at ${plainRatio(slip.ratio)} times what is allowed`,
    ]
      .filter(Boolean)
      .join("\n")
  })
  return [...lines, ...slipLines(examined.slips)]
}

/** Two digits, written out: “300”, “a million”. */
export function plainRatio(ratio: number): string {
  if (!Number.isFinite(ratio)) return "endlessly many"
  const rounded = Number(ratio.toPrecision(2))
  if (rounded > 1e6) return "more than a million"
  return rounded === 1e6 ? "a million" : rounded.toLocaleString("en-GB", { maximumSignificantDigits: 2 })
}

/** How many slips were tried, and which of them pass or are taken for another. */
function slipLines(slips: Examined["slips"]): string[] {
  const passed = slips.filter(slip => slip.refusedBy.length === 0)
  const misnamed = slips.filter(slip => slip.refusedBy.length > 0 && !slip.named)
  if (passed.length + misnamed.length === 0)
    return [`  ${count(slips.length, "slip")} tried: all refused and named rightly.`]
  const list = (some: Examined["slips"]): string =>
    some.map(({ slip, blank }) => `“${slip}” in blank “${blank}”`).join(", ")
  return [
    `  ${count(slips.length, "slip")} tried.`,
    ...(passed.length > 0 ? [`    not refused: ${list(passed)}`] : []),
    ...(misnamed.length > 0 ? [`    refused, but not named rightly: ${list(misnamed)}`] : []),
  ]
}
