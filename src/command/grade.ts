import { rmSync, statSync } from "node:fs"
import { availableParallelism } from "node:os"
import { join } from "node:path"
import { setFlagsFromString } from "node:v8"
import type { Problem } from "../cell/problem.ts"
import { createReferences, NoReference, ownParameters } from "../judge/index.ts"
import { motionsOf, type ReportSubject } from "../report/index.ts"
import type { Worksheet } from "../worksheet/index.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { type ReportsAsked, readReportsAsked, reportOptions } from "./class-reports.ts"
import { collect, type Handed, namedProblem } from "./collect.ts"
import { fileProblem, makeFolder, readWorksheet } from "./files.ts"
import type { ExitCode } from "./main.ts"
import { readHanded } from "./marking/answers.ts"
import { openClassFile } from "./marking/class-file.ts"
import { marksDigest, programDigest } from "./marking/keys.ts"
import { takeLock } from "./marking/lock.ts"
import { HostTrouble, markAll, openVerdicts, type Way } from "./marking/mark-all.ts"
import { merge, mergeUsage } from "./marking/merge.ts"
import { type Dated, type Standing, standings } from "./marking/newest.ts"
import { printResults } from "./marking/print.ts"
import { isOfShare, readShare, type Share } from "./marking/share.ts"
import { rollOf, writeShare } from "./marking/share-file.ts"
import { createStopper } from "./marking/stop.ts"
import { createCounts, passedLines, workLine, writtenLines } from "./marking/summary.ts"
import { writeClass } from "./marking/write-class.ts"
import { placeInFile } from "./place-in-file.ts"
import { createProgress } from "./progress.ts"
import { count, out, refuse } from "./say.ts"
import { createTools, type Tools } from "./tools.ts"

export const gradeSpec: CommandSpec = {
  name: "grade",
  usage: "deltasheet grade WORKSHEET --answers PATH... --out DIR",
  says: "mark answer files, folders or zips of them; writes results, a report and a page for each student",
  more: [
    `${mergeUsage}     joins the shares that were marked with --share`,
    "It takes --out, --results-only, --anonymous and --roster.",
    "What was marked is kept in DIR/marking: interrupted, or asked again, grade goes on from there.",
  ],
  takes: [1, 1],
  forms: { merge: { usage: mergeUsage, takes: [2, 10_001] } },
  options: {
    answers: { value: "PATH", says: "answer files, folders or zip archives", many: true },
    out: { value: "DIR", says: "folder for results.json, results.csv, report.html and the rest" },
    earlier: {
      value: "FILE",
      says: "earlier versions of the worksheet, for answers written on them",
      many: true,
    },
    share: { value: "K/N", says: "mark only the K-th of N shares; “grade merge” joins them" },
    ...reportOptions,
  },
}

interface GradeAsked {
  /** the one to be marked, then earlier versions */
  readonly worksheets: readonly Worksheet[]
  readonly handed: readonly Handed[]
  /** files that are no answer files */
  readonly passed: readonly string[]
  readonly folder: string
  readonly share: Share | null
  readonly wanted: ReportsAsked
}

export async function grade(asked: Asked, home: string): Promise<ExitCode> {
  // Pages and motions are garbage soon after they are made: the engine gathers at most about twice what is in use.
  setFlagsFromString("--heap-growing-percent=100")
  if (asked.files[0] === "merge") return merge(asked, asked.files.slice(1), home)
  const read = readGradeAsked(asked)
  if (Array.isArray(read)) return refuse(asked, read)
  const given = read as GradeAsked
  const marking = join(given.folder, "marking")
  let begun = false
  try {
    makeFolder(marking)
    const lock = takeLock(join(marking, "lock"))
    if ("code" in lock) return refuse(asked, [lock])
    begun = true
    try {
      return await gradeIn(asked, given, marking, home)
    } finally {
      lock.release()
    }
  } catch (cause) {
    if (cause instanceof HostTrouble) return refuse(asked, [cause.problem])
    if (cause instanceof NoReference) return refuse(asked, [placeInFile(given.worksheets[0]!, cause.problem)])
    if ((cause as NodeJS.ErrnoException | null)?.syscall === undefined) throw cause
    return refuse(asked, [unwritten(given.folder, cause, begun)])
  }
}

function readGradeAsked(asked: Asked): GradeAsked | Problem[] {
  const read = readWorksheet(asked.files[0]!)
  if (!read.ok) return [...read.problems]
  const paths = asked.values.answers ?? []
  const folder = asked.values.out?.[0]
  if (paths.length === 0 || folder === undefined)
    return [
      {
        code: "asked-wrongly",
        text: paths.length === 0 ? "No answers were named." : "No folder for the results was named.",
        todo: `Write it as: ${gradeSpec.usage}`,
      },
    ]
  const problem = folderProblem(folder)
  if (problem) return [problem]
  const unnamed = paths.map(namedProblem).filter(found => found !== null)
  if (unnamed.length > 0) return unnamed
  const passed: string[] = []
  const handed = collect(paths, { out: folder, passed: file => void passed.push(file) })
  const nothing = nothingToMark(handed, paths, passed)
  if (nothing.length > 0) return nothing
  const wanted = readReportsAsked(asked)
  if ("code" in wanted) return [wanted]
  const shareText = asked.values.share?.[0]
  const share = shareText === undefined ? null : readShare(shareText)
  if (share !== null && "code" in share) return [share]
  const worksheets = [read.value]
  for (const file of asked.values.earlier ?? []) {
    const earlier = readWorksheet(file)
    if (!earlier.ok) return [...earlier.problems]
    const { id } = earlier.value.sheet
    if (id !== read.value.sheet.id)
      return [
        {
          code: "asked-wrongly",
          text: `“${file}” is the worksheet “${id}”; earlier versions must be of “${read.value.sheet.id}”.`,
          todo: `Name an earlier version of “${read.value.sheet.id}” after --earlier.`,
        },
      ]
    worksheets.push(earlier.value)
  }
  return { worksheets, handed, passed, folder, share, wanted }
}

/** Why there is nothing to mark, so that results that are there are not replaced by none. */
function nothingToMark(
  handed: readonly Handed[],
  paths: readonly string[],
  passed: readonly string[],
): Problem[] {
  const problems: Problem[] = []
  for (const item of handed) {
    const read = item.read()
    if (read instanceof Uint8Array) return []
    if (problems.length < 20) problems.push(read)
  }
  if (problems.length > 0) return problems
  const where = paths.map(path => `“${path}”`).join(", ")
  const seen = passed.length === 0 ? "" : ` ${passedLines(passed).join(" ")}`
  return [
    {
      code: "file",
      text: `No answer file (*.json) was found in ${where}.${seen}`,
      todo: "Check what is named after --answers. Nothing was written.",
    },
  ]
}

/** Marks a class in a folder that is ours alone. */
async function gradeIn(asked: Asked, given: GradeAsked, marking: string, home: string): Promise<ExitCode> {
  const { worksheets, handed, folder, share } = given
  const [worksheet] = worksheets
  const runnerFile = join(home, "dist", "runner.js")
  const program = programDigest(runnerFile)
  const standing = standingsOf(handed, worksheets)
  const places = [...handed.keys()].filter(i => share === null || isOfShare(handed[i]!.file, share))
  const register = openVerdicts(join(marking, "verdicts.jsonl"), worksheets)
  // a share that is being marked again is no finished one
  rmSync(join(marking, "share.json"), { force: true })
  const classFile = openClassFile(join(marking, "files.jsonl"), { fresh: true })
  const tools = stoppable(createTools(runnerFile, Math.max(1, Math.min(availableParallelism(), 8))))
  const references = createReferences()
  const progress = createProgress("marked", places.length)
  const ways: Record<Way, number> = { judged: 0, known: 0, refused: 0 }
  const stopper = createStopper(() => void tools.close())
  const started = performance.now()
  try {
    await markAll({
      worksheets,
      handed,
      places,
      standing,
      tools,
      references,
      program,
      register,
      classFile,
      stopped: stopper.stopped,
      marked: way => {
        ways[way]++
        progress.step(way === "judged")
      },
    })
    progress.end()
    if (stopper.stopped()) return interrupted(asked, given, ways, places.length)
    const seconds = (performance.now() - started) / 1000
    const subject = await subjectOf(worksheet!, tools, references, ways.judged > 0)
    // a report of a part of the class would be taken for the whole
    const wanted = { ...given.wanted, reports: given.wanted.reports && share === null }
    const names = await writeClass(folder, subject, classFile.all, wanted, home)
    if (share !== null)
      writeShare(marking, {
        format: "deltasheet-share/1",
        share,
        worksheet: pick(worksheet!),
        marks: worksheets.map(marksDigest).join(" "),
        program,
        roll: rollOf(
          handed.map(({ file }) => file),
          file => !standing.get(file)?.superseded,
        ),
        files: handed.length,
        places,
        subject,
      })
    const counts = createCounts()
    for (const item of classFile.all()) counts.add(item)
    if (asked.json) await printResults(folder)
    else
      for (const line of [
        ...counts.lines(),
        ...passedLines(given.passed),
        ...workLine(ways, register.damaged(), seconds),
        ...(share === null
          ? writtenLines(folder, names)
          : [`Share ${share.k} of ${share.n} is marked. When all are: ${mergeUsage}`]),
      ])
        out(line)
    return counts.foundWanting() ? 1 : 0
  } catch (cause) {
    if (stopper.stopped()) return interrupted(asked, given, ways, places.length)
    throw cause
  } finally {
    progress.end()
    stopper.release()
    await tools.close()
    register.close()
    classFile.close()
    // what is joined later stays; otherwise all of it stands in the results
    if (share === null) rmSync(join(marking, "files.jsonl"), { force: true })
  }
}

const pick = ({ sheet }: Worksheet) => ({ id: sheet.id, version: sheet.version, digest: sheet.digest })

async function subjectOf(
  worksheet: Worksheet,
  tools: Tools,
  references: ReturnType<typeof createReferences>,
  slipsMade: boolean,
): Promise<ReportSubject> {
  const { sheet, keys } = worksheet
  // the motions of the slips are not shown; where they were made already there is nothing to make anew
  const reference = await references.get(worksheet, tools, ownParameters(sheet), slipsMade)
  return { sheet, keys, reference: motionsOf(sheet, reference.runs[0]) }
}

/** What is to be said of files because of their times and because a student handed in several. */
function standingsOf(
  handed: readonly Handed[],
  worksheets: readonly Worksheet[],
): ReadonlyMap<string, Standing> {
  const dated: Dated[] = []
  for (const item of handed) {
    const read = readHanded(item, worksheets)
    if (!read.ok) continue
    const { student, savedAt } = read.answers
    dated.push({ file: item.file, student, savedAt, fileTime: item.time, bytes: read.bytes })
  }
  return standings(dated, Date.now())
}

/** Tools that take a computer that cannot run programs for what it is: no student's fault. */
function stoppable(tools: Tools): Tools {
  return {
    ...tools,
    async run(request) {
      const outcome = await tools.run(request)
      if (outcome.problem?.code === "run-unavailable") throw new HostTrouble(outcome.problem)
      return outcome
    },
  }
}

function interrupted(
  asked: Asked,
  { folder }: GradeAsked,
  ways: Readonly<Record<Way, number>>,
  all: number,
): ExitCode {
  const done = ways.judged + ways.known + ways.refused
  const problem = {
    code: "marking-stopped",
    text: `Stopped: ${done} of ${count(all, "file")} marked. What was marked is kept in “${join(folder, "marking")}”; the results were not written.`,
    todo: "Run the same command again to go on from there.",
  }
  return refuse(asked, [problem], 130)
}

/** Something could not be written: what was marked before is safe. */
function unwritten(folder: string, cause: unknown, begun: boolean): Problem {
  const problem = fileProblem(folder, cause, "write")
  if (!begun) return { ...problem, todo: `${problem.todo} Nothing was marked yet.` }
  return {
    ...problem,
    todo: `${problem.todo} What was marked is kept: the same command goes on from there, and earlier results were left as they were.`,
  }
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
