import { join } from "node:path"
import type { Problem } from "../../cell/problem.ts"
import type { Marked } from "../../report/index.ts"
import type { Asked } from "../asked.ts"
import { type ReportsAsked, readReportsAsked } from "../class-reports.ts"
import { fileProblem, makeFolder } from "../files.ts"
import type { ExitCode } from "../main.ts"
import { count, out, refuse } from "../say.ts"
import { openClassFile } from "./class-file.ts"
import { printResults } from "./print.ts"
import { readShareFile, type ShareFile } from "./share-file.ts"
import { createCounts, writtenLines } from "./summary.ts"
import { writeClass } from "./write-class.ts"

export const mergeUsage = "deltasheet grade merge DIR... --out DIR"

interface Part {
  readonly folder: string
  readonly file: ShareFile
}

/**
 * `grade merge DIR... --out DIR`: joins the shares of a class. Nothing is joined unless every share is there once,
 * all saw the same class and the same worksheet, and every file has its result.
 */
export async function merge(asked: Asked, folders: readonly string[], home: string): Promise<ExitCode> {
  const strange = ["answers", "earlier", "share"].find(name => asked.values[name] !== undefined)
  if (strange !== undefined)
    return refuse(asked, [
      {
        code: "asked-wrongly",
        text: `“grade merge” takes no “--${strange}”: shares are joined as they were marked.`,
        todo: `Write it as: ${mergeUsage}`,
      },
    ])
  const folder = asked.values.out?.[0]
  const wanted = readReportsAsked(asked)
  if ("code" in wanted) return refuse(asked, [wanted])
  if (folder === undefined || folders.length === 0)
    return refuse(asked, [
      {
        code: "asked-wrongly",
        text: folder === undefined ? "No folder for the results was named." : "No shares were named.",
        todo: `Write it as: ${mergeUsage}`,
      },
    ])
  const read = readParts(folders)
  const problems = "problems" in read ? read.problems : problemsOf(read.parts)
  if (problems.length > 0) return refuse(asked, problems)
  const { parts } = read as { parts: Part[] }
  return joinParts(asked, parts, folder, wanted, home)
}

function readParts(folders: readonly string[]): { parts: Part[] } | { problems: Problem[] } {
  const parts: Part[] = []
  const problems: Problem[] = []
  for (const folder of folders) {
    const file = readShareFile(join(folder, "marking"), folder)
    if ("code" in file) problems.push(file)
    else parts.push({ folder, file })
  }
  return problems.length > 0 ? { problems } : { parts }
}

/** Whatever keeps these shares from being one class. */
function problemsOf(parts: readonly Part[]): Problem[] {
  const [first] = parts
  const { n } = first!.file.share
  const unlike = parts.filter(({ file }) => unlikeness(first!.file, file) !== null)
  if (unlike.length > 0)
    return unlike.map(({ folder, file }) => ({
      code: "merge-unlike",
      text: `“${folder}” cannot be joined with “${first!.folder}”: ${unlikeness(first!.file, file)}.`,
      todo: "Mark all shares of one class with the same worksheet, the same answers and the same build of the program.",
    }))
  const byNumber = new Map<number, string[]>()
  for (const { folder, file } of parts)
    byNumber.set(file.share.k, [...(byNumber.get(file.share.k) ?? []), folder])
  const doubled = [...byNumber].filter(([, folders]) => folders.length > 1)
  const missing = Array.from({ length: n }, (_, i) => i + 1).filter(k => !byNumber.has(k))
  return [
    ...doubled.map(([k, folders]) => ({
      code: "merge-doubled",
      text:
        new Set(folders).size === 1
          ? `“${folders[0]}” was named ${folders.length === 2 ? "twice" : `${folders.length} times`}.`
          : `Share ${k} of ${n} is there ${folders.length} times: ${folders.map(f => `“${f}”`).join(", ")}.`,
      todo: "Name each share once.",
    })),
    ...(missing.length === 0
      ? []
      : [
          {
            code: "merge-incomplete",
            text:
              missing.length === 1
                ? `Share ${missing[0]} of ${n} is missing.`
                : `${count(missing.length, "share")} of ${n} are missing: ${list(missing)}.`,
            todo: "Name the folders of all shares; mark those that were not.",
          },
        ]),
  ]
}

const mostListed = 20
const list = (numbers: readonly number[]): string =>
  `${numbers.slice(0, mostListed).join(", ")}${numbers.length > mostListed ? ", …" : ""}`

function unlikeness(a: ShareFile, b: ShareFile): string | null {
  if (a.worksheet.id !== b.worksheet.id)
    return `the worksheet is “${b.worksheet.id}”, not “${a.worksheet.id}”`
  if (a.worksheet.digest !== b.worksheet.digest) return "the worksheets are of different editions"
  if (a.marks !== b.marks) return "the worksheets have different checks or answers"
  if (a.program !== b.program) return "another build of the program marked it"
  if (a.share.n !== b.share.n) return `it is one of ${b.share.n} shares, not of ${a.share.n}`
  if (a.files !== b.files || a.roll !== b.roll)
    return "it is of other answer files, or other files of a student counted"
  return null
}

async function joinParts(
  asked: Asked,
  parts: readonly Part[],
  folder: string,
  wanted: ReportsAsked,
  home: string,
): Promise<ExitCode> {
  const { files, subject } = parts[0]!.file
  const open = parts.map(({ folder: from, file }) => {
    const classFile = openClassFile(join(from, "marking", "files.jsonl"), { fresh: false })
    return { from, file, classFile }
  })
  try {
    const owner = new Map<number, (typeof open)[number]>()
    const problems: Problem[] = []
    for (const part of open) {
      const places = part.classFile.places()
      const expected = [...part.file.places].sort((a, b) => a - b)
      const doubled = part.classFile.doubled().length > 0 || places.some(place => owner.has(place))
      const damaged = part.classFile.damaged()
      if (damaged > 0)
        problems.push({
          code: "merge-incomplete",
          text: `“${part.from}” has ${count(damaged, "result")} that ${damaged === 1 ? "was" : "were"} damaged or changed after marking.`,
          todo: "Mark this share again; verdicts that are kept beside it need not be judged again.",
        })
      else if (doubled)
        problems.push({
          code: "merge-doubled",
          text: `“${part.from}” has results for files that have one already.`,
          todo: "Mark this share again.",
        })
      else if (places.join() !== expected.join())
        problems.push({
          code: "merge-incomplete",
          text: `“${part.from}” has ${count(places.length, "result")} where there should be ${expected.length}.`,
          todo: "Mark this share again; verdicts that are kept beside it need not be judged again.",
        })
      for (const place of places) owner.set(place, part)
    }
    if (problems.length === 0 && owner.size !== files)
      problems.push({
        code: "merge-incomplete",
        text: `Of ${count(files, "file")} only ${owner.size} have a result.`,
        todo: "Mark all shares again with the same build of the program.",
      })
    if (problems.length > 0) return refuse(asked, problems)
    const counts = createCounts()
    const readers = new Map(open.map(part => [part, part.classFile]))
    function* all(): Iterable<Marked> {
      for (let place = 0; place < files; place++) yield readers.get(owner.get(place)!)!.at(place)
    }
    makeFolder(folder)
    const names = await writeClass(folder, subject, all, wanted, home)
    for (const item of all()) counts.add(item)
    if (asked.json) await printResults(folder)
    else {
      out(`${count(parts.length, "share")} joined.`)
      for (const line of [...counts.lines(), ...writtenLines(folder, names)]) out(line)
    }
    return counts.foundWanting() ? 1 : 0
  } catch (cause) {
    return refuse(asked, [fileProblem(folder, cause, "write")])
  } finally {
    for (const { classFile } of open) classFile.close()
  }
}
