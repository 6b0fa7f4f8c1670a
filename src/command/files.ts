import { randomBytes } from "node:crypto"
import {
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from "node:fs"
import { dirname, resolve } from "node:path"
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

/** Why a file could not be opened or written, in words. */
export function fileProblem(file: string, cause: unknown, doing: "read" | "write" = "read"): Problem {
  const code = (cause as NodeJS.ErrnoException | null)?.code
  const [absent, barred]: [string, string][] =
    doing === "read"
      ? [
          ["is not there", "Check the name and the folder."],
          ["may not be read", "Change its permissions, or copy it to a folder of your own."],
        ]
      : [
          ["cannot be made: there can be no folder at that place", "Choose a folder of your own."],
          ["may not be written to", "Change its permissions, or choose a folder of your own."],
        ]
  const reasons: Record<string, [string, string]> = {
    ENOENT: absent!,
    EACCES: barred!,
    EPERM: barred!,
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

/**
 * Makes a folder and those above it that are missing, one after the other: asked for all of them at once, Node never
 * comes back where the system makes no folders, as in /proc.
 */
export function makeFolder(folder: string): void {
  const missing: string[] = []
  for (let path = resolve(folder); !existsSync(path); path = dirname(path)) missing.push(path)
  for (const path of missing.reverse())
    try {
      mkdirSync(path)
    } catch (cause) {
      // made by another process meanwhile
      if ((cause as NodeJS.ErrnoException).code !== "EEXIST") throw cause
    }
}

/** Writes all bytes to an open file: the system may write less than it was given, and says so only in passing. */
export function writeAll(file: number, bytes: Uint8Array): void {
  for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written)
}

/**
 * Writes a file whole or not at all: beside it first, then renamed.
 *
 * @throws what the system says; what was half written is taken away
 */
export function writeWhole(file: string, content: string | Uint8Array): void {
  makeFolder(dirname(file))
  const beside = `${file}.${randomBytes(4).toString("hex")}.part`
  try {
    writeFileSync(beside, content)
    renameSync(beside, file)
  } catch (cause) {
    rmSync(beside, { force: true })
    throw cause
  }
}
