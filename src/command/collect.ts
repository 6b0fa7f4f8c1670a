import { readdirSync, readFileSync, statSync } from "node:fs"
import { basename, join, relative, sep } from "node:path"
import { Unzip, UnzipInflate } from "fflate"
import type { Problem } from "../cell/problem.ts"
import { maxAnswerFileBytes, tooLarge } from "../worksheet/index.ts"
import { fileProblem } from "./files.ts"

/** One thing that was handed in: its bytes, or why it cannot be read. */
export type Handed =
  | { readonly file: string; readonly bytes: Uint8Array }
  | { readonly file: string; readonly problem: Problem }

/** A zip with more files than this is no class's work. */
const maxZipEntries = 20_000
const maxZipBytes = 1_000_000_000

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
      if (stat.isDirectory()) {
        const names = readdirSync(path, { recursive: true, withFileTypes: true })
          .filter(
            entry => entry.isFile() && /\.(json|zip)$/i.test(entry.name) && !entry.name.startsWith("._"),
          )
          .map(entry => join(entry.parentPath ?? entry.path, entry.name))
        for (const name of names) found.push(...one(name, relative(path, name).split(sep).join("/")))
      } else found.push(...one(path, basename(path)))
    } catch (cause) {
      found.push({ file: path, problem: fileProblem(path, cause) })
    }
  }
  return inOrder(found)
}

function one(path: string, label: string): Handed[] {
  try {
    if (/\.zip$/i.test(path)) return unzip(path, label)
    const { size } = statSync(path)
    if (size > maxAnswerFileBytes) return [{ file: label, problem: tooLarge(size) }]
    return [{ file: label, bytes: readFileSync(path) }]
  } catch (cause) {
    return [{ file: label, problem: fileProblem(path, cause) }]
  }
}

/** Unpacks as a stream: an entry that grows past what an answer file may have is dropped there and then. */
function unzip(path: string, label: string): Handed[] {
  const { size } = statSync(path)
  const broken = (text: string): Handed => ({
    file: label,
    problem: {
      code: "zip",
      text: `The archive “${label}” ${text}.`,
      todo: "Pack the answer files again as one plain zip.",
    },
  })
  if (size > maxZipBytes) return [broken(`has ${(size / 1e6).toFixed(0)} MB, too much for a class's answers`)]
  const found: Handed[] = []
  let entries = 0
  let failed: string | null = null
  const unzipper = new Unzip(entry => {
    if (entry.name.endsWith("/") || !/\.json$/i.test(entry.name) || /(^|\/)(__MACOSX\/|\._)/.test(entry.name))
      return
    if (++entries > maxZipEntries) {
      failed ??= `has more than ${maxZipEntries} answer files`
      return
    }
    const file = `${label}/${entry.name.replaceAll("\\", "/")}`
    const chunks: Uint8Array[] = []
    let length = 0
    let over = false
    entry.ondata = (error, chunk, final) => {
      if (over) return
      if (error) {
        over = true
        found.push({
          file,
          problem: {
            code: "zip",
            text: `“${file}” is damaged inside the archive.`,
            todo: "Ask for the file again.",
          },
        })
        return
      }
      length += chunk.length
      if (length > maxAnswerFileBytes) {
        over = true
        chunks.length = 0
        entry.terminate()
        found.push({ file, problem: tooLarge(length) })
        return
      }
      chunks.push(chunk)
      if (final) found.push({ file, bytes: Buffer.concat(chunks) })
    }
    entry.start()
  })
  unzipper.register(UnzipInflate)
  try {
    const bytes = readFileSync(path)
    if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return [broken("is not a zip archive")]
    const step = 65_536
    for (let at = 0; at < bytes.length; at += step)
      unzipper.push(bytes.subarray(at, at + step), at + step >= bytes.length)
  } catch {
    failed ??= "is damaged or packed in a way that cannot be read"
  }
  if (failed !== null) found.push(broken(failed))
  if (found.length === 0) found.push(broken("holds no answer file (*.json)"))
  return found
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
