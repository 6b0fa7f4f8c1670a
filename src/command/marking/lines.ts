import { closeSync, fstatSync, ftruncateSync, openSync } from "node:fs"
import { writeAll } from "../files.ts"
import { bytesAt } from "./bytes-at.ts"

/** A file of lines that only grows, read back line by line from disk, so that what it holds needs no memory. */
export interface Lines {
  /** writes one line at the end, in one go; @returns where it is */
  append(line: string): Span
  read(span: Span): string
  close(): void
}

export interface Span {
  readonly at: number
  readonly length: number
}

const newline = 10
const chunkBytes = 1_048_576

/**
 * Opens a file of lines, or begins one. A last line without its end is of a program that was killed in the middle of it,
 * and is cut off.
 *
 * @param each called for every whole line that is there already
 * @throws what the system says
 */
export function openLines(file: string, each: (line: string, span: Span) => void = () => {}): Lines {
  const fd = openSync(file, "a+")
  let end = readWhole(fd, each)
  if (end < fstatSync(fd).size) ftruncateSync(fd, end)
  return {
    append(line) {
      const bytes = Buffer.from(`${line}\n`)
      const at = end
      try {
        writeAll(fd, bytes)
      } catch (cause) {
        // what stands there is whole again, as far as the system lets us
        try {
          ftruncateSync(fd, end)
        } catch {
          // the next one to open the file cuts it
        }
        throw cause
      }
      end += bytes.length
      return { at, length: bytes.length - 1 }
    },
    read: ({ at, length }) => bytesAt(fd, at, length).toString("utf8"),
    close: () => closeSync(fd),
  }
}

/** Bytes of a longer line than any that is written here: it is no line of ours, and comes as an empty one. */
const longestLine = 33_554_432

/** @returns where the last whole line ends */
function readWhole(fd: number, each: (line: string, span: Span) => void): number {
  const { size } = fstatSync(fd)
  let rest: Buffer = Buffer.alloc(0)
  let start = 0
  let skipped = 0
  for (let at = 0; at < size; ) {
    const chunk = bytesAt(fd, at, Math.min(chunkBytes, size - at))
    if (chunk.length === 0) break
    at += chunk.length
    rest = rest.length === 0 ? chunk : Buffer.concat([rest, chunk])
    let from = 0
    for (let to = rest.indexOf(newline); to >= 0; to = rest.indexOf(newline, from)) {
      if (skipped > 0) each("", { at: start - skipped, length: skipped + to - from })
      else each(rest.toString("utf8", from, to), { at: start + from, length: to - from })
      skipped = 0
      from = to + 1
    }
    start += from
    rest = rest.subarray(from)
    if (skipped > 0 || rest.length > longestLine) {
      skipped += rest.length
      start += rest.length
      rest = Buffer.alloc(0)
    }
  }
  return start - skipped
}
