import { readSync } from "node:fs"

/** So many bytes from a place in an open file; fewer where it ends before. */
export function bytesAt(fd: number, position: number, length: number): Buffer {
  const bytes = Buffer.alloc(length)
  let filled = 0
  while (filled < length) {
    const got = readSync(fd, bytes, filled, length - filled, position + filled)
    if (got === 0) break
    filled += got
  }
  return bytes.subarray(0, filled)
}
