import { closeSync, fstatSync, openSync } from "node:fs"
import { inflateRawSync } from "node:zlib"
import { bytesAt } from "./bytes-at.ts"
import { crc32 } from "./crc32.ts"

/** One file inside an archive, as the archive's own directory names it. */
export interface ZipEntry {
  readonly name: string
  readonly directory: boolean
  /** a symbolic link of the system that packed it */
  readonly link: boolean
  readonly encrypted: boolean
  /** how it is packed: 0 as it is, 8 deflated */
  readonly method: number
  readonly packedSize: number
  readonly size: number
  readonly crc: number
  /** where its local header begins */
  readonly at: number
  /** when it was last changed, ms since 1970, as far as its two-second local time tells; null for none */
  readonly time: number | null
}

/** An archive that cannot be read; the message goes after “The archive …”. */
export class ZipFault extends Error {}

/** Signatures and sizes as in the ZIP file format specification (APPNOTE 6.3.10, 4.3.7, 4.3.12 and 4.3.16). */
const localSignature = 0x04034b50
const centralSignature = 0x02014b50
const endSignature = 0x06054b50
const localSize = 30
const centralSize = 46
const endSize = 22
const longestComment = 65_535

/** The directory of the archive in `file`. @throws ZipFault */
export function readZipDirectory(file: string): ZipEntry[] {
  return withFile(file, (fd, size) => {
    const tail = bytesAt(
      fd,
      Math.max(0, size - endSize - longestComment),
      Math.min(size, endSize + longestComment),
    )
    const end = endOf(tail)
    if (end < 0) throw new ZipFault("is not a zip archive, or was cut short")
    const count = tail.readUInt16LE(end + 10)
    const length = tail.readUInt32LE(end + 12)
    const start = tail.readUInt32LE(end + 16)
    if (count === 0xffff || length === 0xffffffff || start === 0xffffffff)
      throw new ZipFault("is larger than a class's answers can be")
    if (start + length > size) throw new ZipFault("is damaged: its directory is not where it should be")
    return entriesOf(bytesAt(fd, start, length), count)
  })
}

/**
 * Where the end of the directory stands: the signature whose comment ends with the file, since a comment may hold a
 * signature of its own; where none does (something was written behind the archive), the last one. -1 for none.
 */
function endOf(tail: Buffer): number {
  let last = -1
  for (let end = tail.length - endSize; end >= 0; end--) {
    if (tail.readUInt32LE(end) !== endSignature) continue
    if (end + endSize + tail.readUInt16LE(end + 20) === tail.length) return end
    if (last < 0) last = end
  }
  return last
}

function entriesOf(directory: Buffer, count: number): ZipEntry[] {
  const entries: ZipEntry[] = []
  let at = 0
  for (let i = 0; i < count; i++) {
    if (at + centralSize > directory.length || directory.readUInt32LE(at) !== centralSignature)
      throw new ZipFault("is damaged: its directory breaks off")
    const nameLength = directory.readUInt16LE(at + 28)
    const next =
      at + centralSize + nameLength + directory.readUInt16LE(at + 30) + directory.readUInt16LE(at + 32)
    if (next > directory.length) throw new ZipFault("is damaged: its directory breaks off")
    const flags = directory.readUInt16LE(at + 8)
    const madeOn = directory.readUInt8(at + 5)
    const mode = directory.readUInt32LE(at + 38) >>> 16
    const name = nameOf(directory.subarray(at + centralSize, at + centralSize + nameLength))
    entries.push({
      name,
      directory: /[/\\]$/.test(name),
      // 3: Unix, whose file modes tell links (S_IFLNK)
      link: madeOn === 3 && (mode & 0xf000) === 0xa000,
      encrypted: (flags & 1) !== 0,
      method: directory.readUInt16LE(at + 10),
      packedSize: directory.readUInt32LE(at + 20),
      size: directory.readUInt32LE(at + 24),
      crc: directory.readUInt32LE(at + 16),
      at: directory.readUInt32LE(at + 42),
      time: timeOf(directory.readUInt16LE(at + 14), directory.readUInt16LE(at + 12)),
    })
    at = next
  }
  return entries
}

/**
 * The content of one entry, unpacked.
 *
 * @param most bytes that it may have; nothing beyond is unpacked, whatever the directory says
 * @throws ZipFault
 */
export function readZipEntry(file: string, entry: ZipEntry, most: number): Uint8Array {
  return withFile(file, (fd, size) => {
    const head = bytesAt(fd, entry.at, localSize)
    if (head.length < localSize || head.readUInt32LE(0) !== localSignature)
      throw new ZipFault("is damaged: a file is not where the directory says")
    const from = entry.at + localSize + head.readUInt16LE(26) + head.readUInt16LE(28)
    if (from + entry.packedSize > size) throw new ZipFault("is damaged: a file breaks off")
    const packed = bytesAt(fd, from, entry.packedSize)
    const bytes = entry.method === 0 ? packed : inflate(packed, most)
    if (bytes.length !== entry.size || crc32(bytes) !== entry.crc)
      throw new ZipFault("is damaged: a file does not have the content that the directory promises")
    return bytes
  })
}

/** Grew past its limit while being unpacked. */
export class ZipEntryTooLarge extends Error {}

function inflate(packed: Buffer, most: number): Buffer {
  try {
    return inflateRawSync(packed, { maxOutputLength: most })
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === "ERR_BUFFER_TOO_LARGE") throw new ZipEntryTooLarge()
    throw new ZipFault("is damaged: a file cannot be unpacked")
  }
}

/** Names are UTF-8 in archives of today; older ones are read byte by byte. */
function nameOf(bytes: Buffer): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes)
  } catch {
    return bytes.toString("latin1")
  }
}

/** MS-DOS date and time; taken as UTC, since the archive does not say where it was packed. */
function timeOf(date: number, time: number): number | null {
  if (date === 0) return null
  return Date.UTC(
    1980 + (date >> 9),
    ((date >> 5) & 15) - 1,
    date & 31,
    time >> 11,
    (time >> 5) & 63,
    (time & 31) * 2,
  )
}

function withFile<T>(file: string, read: (fd: number, size: number) => T): T {
  const fd = openSync(file, "r")
  try {
    return read(fd, fstatSync(fd).size)
  } finally {
    closeSync(fd)
  }
}
