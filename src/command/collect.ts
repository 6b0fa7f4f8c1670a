import { lstatSync, readdirSync, readFileSync, statSync } from "node:fs"
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

/**
 * Gathers answer files from files, folders (with all below them) and zip archives, in the order of their names.
 * In a folder or an archive, files that are not .json (or .zip) are left aside; a file named outright is always
 * taken. What cannot be read comes back with the reason; the rest goes on.
 */
export function collect(paths: readonly string[]): Handed[] {
  const found: Handed[] = []
  for (const path of paths) {
    try {
      const stat = statSync(path)
      if (stat.isDirectory()) walk(path, path, found)
      else found.push(...one(path, basename(path)))
    } catch (cause) {
      found.push(unusable(path, fileProblem(path, cause)))
    }
  }
  return inOrder(found)
}

const unusable = (file: string, problem: Problem): Handed => ({ file, time: null, read: () => problem })

/** All answer files below a folder. A folder that cannot be read is said; links are not followed. */
function walk(top: string, folder: string, found: Handed[]): void {
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
    if (entry.isDirectory()) walk(top, path, found)
    else if (!/\.(json|zip)$/i.test(entry.name) || entry.name.startsWith("._")) continue
    else if (entry.isFile()) found.push(...one(path, label(path)))
    else if (entry.isSymbolicLink()) found.push(unusable(label(path), linkProblem(label(path))))
  }
}

const listed = (folder: string) => readdirSync(folder, { withFileTypes: true })

function one(path: string, file: string): Handed[] {
  if (/\.zip$/i.test(path)) return unzip(path, file)
  try {
    const { mtimeMs } = lstatSync(path)
    return [{ file, time: mtimeMs, read: () => readPlain(path, file) }]
  } catch (cause) {
    return [unusable(file, fileProblem(file, cause))]
  }
}

function readPlain(path: string, file: string): Uint8Array | Problem {
  try {
    const { size } = statSync(path)
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
function unzip(path: string, label: string): Handed[] {
  const broken = (text: string): Handed =>
    unusable(
      label,
      zipProblem(`The archive “${label}” ${text}.`, "Pack the answer files again as one plain zip."),
    )
  try {
    const { size } = statSync(path)
    if (size > maxZipBytes)
      return [broken(`has ${(size / 1e6).toFixed(0)} MB, too much for a class's answers`)]
    const entries = readZipDirectory(path).filter(isWanted)
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

const isWanted = ({ name, directory }: ZipEntry): boolean =>
  !directory && /\.(json|zip)$/i.test(name) && !/(^|[/\\])(__MACOSX[/\\]|\._)/.test(name)

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
