import { readFileSync } from "node:fs"
import { join } from "node:path"
import { assembleProgram } from "../cell/index.ts"
import type { Problem } from "../cell/problem.ts"
import type { Recording } from "../run/contract.ts"
import {
  matchAnswers,
  type Parameter,
  readAnswerFile,
  refuses,
  suggest,
  type Worksheet,
} from "../worksheet/index.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { decodeUtf8, fileProblem, readWorksheet, writeWhole } from "./files.ts"
import type { ExitCode } from "./main.ts"
import { count, err, out, refuse, sayProblem } from "./say.ts"
import { createTools } from "./tools.ts"

export const runSpec: CommandSpec = {
  name: "run",
  usage: "deltasheet run WORKSHEET [--answers FILE] [--set NAME=VALUE ...] [--csv FILE]",
  says: "run a worksheet with its author's answers, or a student's, and write the recording",
  takes: [1, 1],
  options: {
    answers: { value: "FILE", says: "an answer file; without it, the author's answers" },
    set: { value: "NAME=VALUE", says: "give a parameter a value; may be repeated", many: true },
    csv: { value: "FILE", says: "write what was recorded as CSV (one file a cell if there are several)" },
    seed: { value: "N", says: "the seed of random(); 0 without it" },
  },
}

export async function run(asked: Asked, home: string): Promise<ExitCode> {
  const read = readWorksheet(asked.files[0]!)
  if (!read.ok) return refuse(asked, read.problems)
  const worksheet = read.value
  const { sheet } = worksheet
  const filled = answersOf(worksheet, asked.values.answers?.[0])
  if ("problems" in filled) return refuse(asked, filled.problems)
  const parameters = readSettings(worksheet, asked.values.set ?? [])
  if (Array.isArray(parameters)) return refuse(asked, parameters)
  const notes = [...filled.notes, ...outsideRange(sheet.parameters, parameters)]
  const seed = Number(asked.values.seed?.[0] ?? filled.seed)
  if (!Number.isInteger(seed) || seed < 0 || seed > 4_294_967_295)
    return refuse(asked, [
      {
        code: "asked-wrongly",
        text: "The seed is not a whole number from 0 to 4294967295.",
        todo: "Write “--seed 7”.",
      },
    ])
  const tools = createTools(join(home, "dist", "runner.js"), 1)
  try {
    const program = assembleProgram(
      sheet.cells,
      filled.answers,
      sheet.parameters.map(p => p.name),
      sheet.timeStep,
    )
    const compiled = await tools.compile(program)
    if (!compiled.ok) return refuse(asked, compiled.problems, 1)
    const outcome = await tools.run({
      compiled: compiled.compiled,
      parameters,
      seed,
    })
    const csv = asked.values.csv?.[0]
    const written = csv === undefined ? [] : writeCsv(csv, outcome.recordings)
    if ("code" in written) return refuse(asked, [written])
    if (asked.json)
      out(
        JSON.stringify(
          {
            worksheet: { id: sheet.id, version: sheet.version, digest: sheet.digest },
            parameters,
            notes,
            recordings: outcome.recordings.map(recording => ({
              cell: recording.cell,
              rows: recording.rows,
              series: recording.series.map(({ name, kind }) => ({ name, kind })),
              columns: columnsOf(recording),
              data: csv === undefined ? rowsOf(recording) : undefined,
            })),
            output: outcome.output,
            problem: outcome.problem,
            written,
          },
          null,
          1,
        ),
      )
    else {
      for (const note of notes) err(sayProblem(note))
      for (const line of outcome.output) out(line)
      for (const recording of outcome.recordings)
        out(
          `cell ${recording.cell}: ${count(recording.rows, "instant")} of ${recording.series.map(s => s.name).join(", ") || "nothing"}`,
        )
      if (outcome.recordings.length === 0) out("Nothing was recorded.")
      for (const file of written) out(`written: ${file}`)
      if (outcome.problem) err(sayProblem(outcome.problem))
    }
    return outcome.problem ? 1 : 0
  } finally {
    await tools.close()
  }
}

interface Filled {
  readonly answers: Readonly<Record<string, string>>
  readonly seed: number
  /** what is to be said of the answer file, though it can be run */
  readonly notes: readonly Problem[]
}

function answersOf(
  worksheet: Worksheet,
  file: string | undefined,
): Filled | { readonly problems: readonly Problem[] } {
  if (file === undefined) return { answers: worksheet.answers, seed: 0, notes: [] }
  let text: string | null
  try {
    text = decodeUtf8(readFileSync(file))
  } catch (cause) {
    return { problems: [fileProblem(file, cause)] }
  }
  if (text === null)
    return {
      problems: [
        { code: "not-utf-8", text: `“${file}” is not written in UTF-8.`, todo: "Ask for the file again." },
      ],
    }
  const read = readAnswerFile(text)
  if (!read.ok) return { problems: read.problems }
  const problems = matchAnswers(worksheet.sheet, read.answers)
  if (problems.some(refuses)) return { problems }
  const { answers, seed } = read.answers
  return { answers, seed, notes: problems }
}

/** The worksheet's own values, with those that `--set` gives. */
function readSettings(worksheet: Worksheet, settings: readonly string[]): Record<string, number> | Problem[] {
  const { parameters } = worksheet.sheet
  const values = Object.fromEntries(parameters.map(p => [p.name, p.value]))
  for (const setting of settings) {
    const [name = "", text = ""] = setting.split(/=(.*)/s)
    const value = text.trim() === "" ? Number.NaN : Number(text)
    if (!Object.hasOwn(values, name))
      return [
        {
          code: "asked-wrongly",
          text: `The worksheet has no parameter “${name}”.`,
          todo: suggest(name, Object.keys(values)),
        },
      ]
    if (!Number.isFinite(value))
      return [
        {
          code: "asked-wrongly",
          text: `“${text}” is not a number for “${name}”.`,
          todo: `Write “--set ${name}=2.5”.`,
        },
      ]
    values[name] = value
  }
  return values
}

/** Values that no student could set: run all the same, since that is how a range is found. */
function outsideRange(
  parameters: readonly Parameter[],
  values: Readonly<Record<string, number>>,
): readonly Problem[] {
  return parameters
    .filter(({ name, range: [low, high] }) => values[name]! < low || values[name]! > high)
    .map(({ name, unit, range: [low, high] }) => ({
      code: "outside-range",
      text: `“${name}” is ${values[name]}${inUnit(unit)}; the worksheet gives it the range from ${low} to ${high}${inUnit(unit)}.`,
      todo: "The program was run with it all the same; choose a value within the range to see what a student can see.",
    }))
}

const inUnit = (unit: string): string => (unit === "1" ? "" : ` ${unit}`)

function columnsOf(recording: Recording): string[] {
  return [
    "t",
    ...recording.series.flatMap(s =>
      s.kind === "scalar" ? [s.name] : ["x", "y", "z"].map(axis => `${s.name}.${axis}`),
    ),
  ]
}

function rowsOf(recording: Recording): number[][] {
  return Array.from({ length: recording.rows }, (_, row) =>
    Array.from(recording.data.subarray(row * recording.width, (row + 1) * recording.width)),
  )
}

/** @returns names of the files, or why one could not be written */
function writeCsv(file: string, recordings: readonly Recording[]): string[] | Problem {
  const written: string[] = []
  for (const recording of recordings) {
    const name = recordings.length === 1 ? file : file.replace(/(\.[^./\\]*)?$/, `-${recording.cell}$1`)
    const lines = [columnsOf(recording), ...rowsOf(recording)].map(row => row.join(","))
    try {
      writeWhole(name, `${lines.join("\r\n")}\r\n`)
    } catch (cause) {
      return fileProblem(name, cause)
    }
    written.push(name)
  }
  return written
}
