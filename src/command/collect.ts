import { existsSync, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from "node:fs"
import { basename, join, relative, sep } from "node:path"
import type { Problem } from "../cell/problem.ts"
import { maxAnswerFileBytes, tooLarge } from "../worksheet/index.ts"
import { fileProblem } from "./files.ts"
import { readZipDirectory, readZipEntry, type ZipEntry, ZipEntryTooLarge, ZipFault } from "./marking/zip.ts"

/** One thing that was handed in; nothing of it is kept in memory, so that thousands of them can wait. */
export interface Handed {
  /** how it is called in results: its path below what was named, with "/" */
  readonly file: string
  /** when it was last changed, ms since 1970; null where that is not known */
  readonly time: number | null
  /** its bytes, or why it cannot be read */
  read(): Uint8Array | Problem
}

/** An archive with more files than this is no class's work. */
const maxZipEntries = 20_000
const maxZipBytes = 1_000_000_000
/** Answers shrink to a fifth or so. What unpacks to this many times its size, past the allowance, was made to. */
const maxRatio = 50
const ratioAllowance = 100_000_000

interface Search {
  readonly found: Handed[]
  /** the folder for the results, as the system names it */
  readonly out: string | null
  readonly passed: (file: string) => void
}

/**
 * Gathers answer files from files, folders (with all below them) and zip archives, in the order of their names.
 * In a folder or an archive, files that are not .json (or .zip) are left aside; a file named outright is always
 * taken. What cannot be read comes back with the reason; the rest goes on.
 *
 * @param out folder for the results: neither it nor the results of other markings are handed in
 * @param passed called for each file that is no answer file, other than hidden ones
 */
export function collect(
  paths: readonly string[],
  { out, passed = () => {} }: { readonly out?: string; readonly passed?: (file: string) => void } = {},
): Handed[] {
  const search: Search = { found: [], out: out === undefined ? null : realOf(out), passed }
  const { found } = search
  for (const path of paths) {
    const problem = namedProblem(path)
    if (problem !== null) found.push(unusable(path, problem))
    else if (statSync(path).isDirectory()) walk(path, path, search)
    else found.push(...one(path, basename(path), search))
  }
  return inOrder(found)
}

/** Why a path that was named outright can be no answers; null if it may. */
export function namedProblem(path: string): Problem | null {
  try {
    const stat = statSync(path)
    if (stat.isDirectory()) readdirSync(path)
    else if (!stat.isFile()) return noFileProblem(path)
    return null
  } catch (cause) {
    return fileProblem(path, cause)
  }
}

const noFileProblem = (file: string): Problem => ({
  code: "file",
  text: `“${file}” is neither a file nor a folder, but a way into another program or device.`,
  todo: "Name the answer file itself.",
})

function realOf(folder: string): string | null {
  try {
    return realpathSync(folder)
  } catch {
    // not there yet
    return null
  }
}

/** What a marking writes beside the answers where both have one folder. */
const ownNames = new Set(["results.json", "results.csv", "report.html", "statements.json"])
const ownFolders = new Set(["marking", "students", "oneroster"])

const unusable = (file: string, problem: Problem): Handed => ({ file, time: null, read: () => problem })

/** All answer files below a folder. A folder that cannot be read is said; links are not followed. */
function walk(top: string, folder: string, search: Search): void {
  const { found } = search
  const ofMarking = isOfMarking(folder, search.out)
  if (ofMarking && folder !== top) return
  const label = (path: string): string => relative(top, path).split(sep).join("/") || basename(top)
  let entries: ReturnType<typeof listed>
  try {
    entries = listed(folder)
  } catch (cause) {
    found.push(unusable(label(folder), fileProblem(label(folder), cause)))
    return
  }
  for (const entry of entries) {
    const path = join(folder, entry.name)
    if (ofMarking && (entry.isDirectory() ? ownFolders : ownNames).has(entry.name)) continue
    if (entry.isDirectory()) walk(top, path, search)
    else if (!isAnswerName(entry.name) || entry.name.startsWith("._")) {
      if (!isHidden(entry.name)) search.passed(label(path))
    } else if (entry.isFile()) found.push(...one(path, label(path), search))
    else if (entry.isSymbolicLink()) found.push(unusable(label(path), linkProblem(label(path))))
  }
}

const listed = (folder: string) => readdirSync(folder, { withFileTypes: true })

/** Some programs put .txt behind the name of a file that they do not know. */
const isAnswerName = (name: string): boolean => /\.(json|json\.txt|zip)$/i.test(name)
const isHidden = (path: string): boolean =>
  /(^|[/\\])(\.|__MACOSX[/\\]|(Thumbs\.db|desktop\.ini)$)/i.test(path)

/** The folder that this marking writes to, or one that another wrote to. */
const isOfMarking = (folder: string, out: string | null): boolean =>
  (out !== null && realOf(folder) === out) || existsSync(join(folder, "marking", "verdicts.jsonl"))

function one(path: string, file: string, search: Search): Handed[] {
  if (/\.zip$/i.test(path)) return unzip(path, file, search)
  try {
    const { mtimeMs } = lstatSync(path)
    return [{ file, time: mtimeMs, read: () => readPlain(path, file) }]
  } catch (cause) {
    return [unusable(file, file.includes("\ufffd") ? nameProblem(file) : fileProblem(file, cause))]
  }
}

const nameProblem = (file: string): Problem => ({
  code: "file",
  text: `The name of “${file}” has letters that are not written in UTF-8, so the file cannot be opened.`,
  todo: "Give the file a name of plain letters and digits.",
})

function readPlain(path: string, file: string): Uint8Array | Problem {
  try {
    const stat = statSync(path)
    if (!stat.isFile()) return noFileProblem(file)
    const { size } = stat
    return size > maxAnswerFileBytes ? tooLarge(size) : readFileSync(path)
  } catch (cause) {
    return fileProblem(file, cause)
  }
}

const zipProblem = (text: string, todo: string): Problem => ({ code: "zip", text, todo })
const linkProblem = (file: string): Problem => ({
  code: "file",
  text: `“${file}” is a link to another file, and links are not followed.`,
  todo: "Put the file itself there.",
})

/** The answer files of an archive. Only its directory is read now; each file is unpacked when its turn comes. */
function unzip(path: string, label: string, search: Search): Handed[] {
  const broken = (text: string): Handed =>
    unusable(
      label,
      zipProblem(`The archive “${label}” ${text}.`, "Pack the answer files again as one plain zip."),
    )
  try {
    const { size } = statSync(path)
    if (size > maxZipBytes)
      return [broken(`has ${(size / 1e6).toFixed(0)} MB, too much for a class's answers`)]
    const all = readZipDirectory(path).filter(({ directory }) => !directory)
    const entries = all.filter(isWanted)
    for (const { name } of all.slice(0, maxZipEntries))
      if (!isAnswerName(name) && !isHidden(name)) search.passed(`${label}/${plainPath(name)}`)
    if (entries.length > maxZipEntries)
      return [broken(`has ${entries.length} answer files, and at most ${maxZipEntries} are read from one`)]
    if (entries.length === 0) return [broken("holds no answer file (*.json)")]
    const unpacked = entries.reduce((sum, entry) => sum + entry.size, 0)
    if (unpacked > ratioAllowance && unpacked > maxRatio * size)
      return [broken(`unpacks to ${Math.round(unpacked / size)} times its size; answer files do not`)]
    if (overlap(entries)) return [broken("is damaged: files lie over one another in it")]
    return entries.map(entry => inZip(path, label, entry))
  } catch (cause) {
    return [cause instanceof ZipFault ? broken(cause.message) : unusable(label, fileProblem(label, cause))]
  }
}

const isWanted = ({ name }: ZipEntry): boolean =>
  isAnswerName(name) && !/(^|[/\\])(__MACOSX[/\\]|\._)/.test(name)

/** Two entries that share packed bytes: one of the ways to make an archive unpack to far more than it is. */
function overlap(entries: readonly ZipEntry[]): boolean {
  const sorted = [...entries].sort((a, b) => a.at - b.at)
  return sorted.some((entry, i) => i > 0 && entry.at < sorted[i - 1]!.at + sorted[i - 1]!.packedSize)
}

function inZip(path: string, label: string, entry: ZipEntry): Handed {
  const file = `${label}/${plainPath(entry.name)}`
  if (/\.zip$/i.test(entry.name))
    return unusable(
      file,
      zipProblem(
        `“${file}” is an archive inside an archive, and is not opened.`,
        "Unpack it and name it by itself.",
      ),
    )
  if (entry.link)
    return unusable(
      file,
      zipProblem(`“${file}” is a link to another file, and links are not followed.`, "Pack the file itself."),
    )
  if (entry.encrypted)
    return unusable(
      file,
      zipProblem(`“${file}” is packed with a password.`, "Pack the answer files again without a password."),
    )
  if (entry.method !== 0 && entry.method !== 8)
    return unusable(
      file,
      zipProblem(
        `“${file}” is packed in a way that is not read here.`,
        "Pack the answer files again as a plain zip.",
      ),
    )
  return { file, time: entry.time, read: () => readPacked(path, file, entry) }
}

function readPacked(path: string, file: string, entry: ZipEntry): Uint8Array | Problem {
  if (entry.size > maxAnswerFileBytes) return tooLarge(entry.size)
  try {
    return readZipEntry(path, entry, maxAnswerFileBytes)
  } catch (cause) {
    if (cause instanceof ZipEntryTooLarge) return tooLarge(maxAnswerFileBytes + 1)
    return cause instanceof ZipFault
      ? zipProblem(`“${file}” is damaged inside the archive.`, "Ask for the file again.")
      : fileProblem(file, cause)
  }
}

/** A name from an archive as a plain path: it only names a result and is never opened, but people read it. */
function plainPath(name: string): string {
  const parts = name
    .replaceAll("\\", "/")
    .replace(/\p{Cc}|\p{Cf}/gu, "")
    .split("/")
    .filter(part => part !== "" && part !== "." && part !== ".." && !/^[a-z]:$/i.test(part))
  return parts.join("/").slice(-200) || "unnamed.json"
}

/** By name, with a number behind a name that came twice. */
function inOrder(found: readonly Handed[]): Handed[] {
  const seen = new Map<string, number>()
  return [...found]
    .sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0))
    .map(item => {
      const n = (seen.get(item.file) ?? 0) + 1
      seen.set(item.file, n)
      return n === 1 ? item : { ...item, file: `${item.file} (${n})` }
    })
}
