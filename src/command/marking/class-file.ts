import { rmSync } from "node:fs"
import type { Marked } from "../../report/index.ts"
import { lineSum } from "./line-sum.ts"
import { openLines, type Span } from "./lines.ts"

/** Marked files on disk, each at its place in the class, so that thousands need no memory. */
export interface ClassFile {
  put(place: number, marked: Marked): void
  at(place: number): Marked
  /** all of them, in the order of their places */
  all(): Iterable<Marked>
  close(): void
}

/** A line: its place, a checksum, the marked file. */
const form = /^(\d+) ([0-9a-f]{32}) (\{.*\})$/

/** Begins a class file, or reads one that was finished. */
export function openClassFile(
  file: string,
  { fresh }: { readonly fresh: boolean },
): ClassFile & {
  readonly places: () => readonly number[]
  readonly doubled: () => readonly number[]
  /** lines that are not what was written */
  readonly damaged: () => number
} {
  if (fresh) rmSync(file, { force: true })
  const spans = new Map<number, Span>()
  const doubled: number[] = []
  let damaged = 0
  const lines = openLines(file, (line, span) => {
    const [, number, sum, text] = form.exec(line) ?? []
    const place = Number(number)
    if (text === undefined || sum !== lineSum(place, text)) {
      damaged++
      return
    }
    if (spans.has(place)) doubled.push(place)
    spans.set(place, span)
  })
  const at = (place: number): Marked => {
    const line = lines.read(spans.get(place)!)
    return JSON.parse(line.slice(line.indexOf("{"))) as Marked
  }
  const places = (): number[] => [...spans.keys()].sort((a, b) => a - b)
  return {
    put(place, marked) {
      const text = JSON.stringify(marked)
      spans.set(place, lines.append(`${place} ${lineSum(place, text)} ${text}`))
    },
    places,
    doubled: () => doubled,
    damaged: () => damaged,
    at,
    *all() {
      for (const place of places()) yield at(place)
    },
    close: () => lines.close(),
  }
}
