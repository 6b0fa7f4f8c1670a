import { randomBytes } from "node:crypto"
import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs"
import { dirname } from "node:path"
import type { Problem } from "../cell/problem.ts"
import { parseWorksheet, type Worksheet } from "../worksheet/index.ts"

/** A worksheet larger than this is refused unread: prose, cells and tables of a whole term stay far below. */
const maxWorksheetBytes = 2_000_000

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Bytes as UTF-8, refused in words when they are not. */
export function decodeUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    return null
  }
}

/** Why a file could not be opened, in words. */
export function fileProblem(file: string, cause: unknown): Problem {
  const code = (cause as NodeJS.ErrnoException | null)?.code
  const reasons: Record<string, [string, string]> = {
    ENOENT: ["is not there", "Check the name and the folder."],
    EACCES: ["may not be read", "Change its permissions, or copy it to a folder of your own."],
    EPERM: ["may not be read", "Change its permissions, or copy it to a folder of your own."],
    EISDIR: ["is a folder", "Name a file in it."],
    ENOSPC: ["cannot be written: the disk is full", "Make room and try again."],
    EROFS: ["cannot be written: the disk is read-only", "Choose another folder."],
    ENOTDIR: ["cannot be reached: a part of its path is a file", "Check the path."],
    EEXIST: ["is there already", "Choose another name."],
  }
  const [what, todo] = reasons[code ?? ""] ?? [
    `could not be used (${code ?? "unknown reason"})`,
    "Check the file and try again.",
  ]
  return { code: "file", text: `“${file}” ${what}.`, todo }
}

/** Reads and parses a worksheet file. */
export function readWorksheet(file: string): Read<Worksheet> & { text?: string } {
  let bytes: Uint8Array
  try {
    const { size } = statSync(file)
    if (size > maxWorksheetBytes)
      return {
        ok: false,
        problems: [
          {
            code: "worksheet-too-large",
            text: `“${file}” has ${(size / 1e6).toFixed(1)} MB; a worksheet has at most ${maxWorksheetBytes / 1e6} MB.`,
            todo: "Is it the right file? Move long tables of data to a shorter sample.",
          },
        ],
      }
    bytes = readFileSync(file)
  } catch (cause) {
    return { ok: false, problems: [fileProblem(file, cause)] }
  }
  const text = decodeUtf8(bytes)
  if (text === null)
    return {
      ok: false,
      problems: [
        {
          code: "not-utf-8",
          text: `“${file}” is not written in UTF-8.`,
          todo: "Save it again from your editor with the encoding UTF-8.",
        },
      ],
    }
  const result = parseWorksheet(text, file)
  return result.ok ? { ok: true, value: result.worksheet, text } : { ok: false, problems: result.problems }
}

/** Writes a file whole or not at all: beside it first, then renamed. */
export function writeWhole(file: string, content: string | Uint8Array): void {
  mkdirSync(dirname(file), { recursive: true })
  const beside = `${file}.${randomBytes(4).toString("hex")}.part`
  writeFileSync(beside, content)
  renameSync(beside, file)
}
