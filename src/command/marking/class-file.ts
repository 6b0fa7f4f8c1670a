import { rmSync } from "node:fs"
import type { Marked } from "../../report/index.ts"
import { openLines, type Span } from "./lines.ts"

/** Marked files on disk, each at its place in the class, so that thousands need no memory. */
export interface ClassFile {
  put(place: number, marked: Marked): void
  at(place: number): Marked
  /** all of them, in the order of their places */
  all(): Iterable<Marked>
  close(): void
}

/** Begins a class file, or reads one that was finished. */
export function openClassFile(
  file: string,
  { fresh }: { readonly fresh: boolean },
): ClassFile & {
  readonly places: () => readonly number[]
  readonly doubled: () => readonly number[]
} {
  if (fresh) rmSync(file, { force: true })
  const spans = new Map<number, Span>()
  const doubled: number[] = []
  const lines = openLines(file, (line, span) => {
    const place = Number(/^(\d+) /.exec(line)?.[1] ?? Number.NaN)
    if (spans.has(place)) doubled.push(place)
    spans.set(place, span)
  })
  const at = (place: number): Marked => {
    const line = lines.read(spans.get(place)!)
    return JSON.parse(line.slice(line.indexOf(" ") + 1)) as Marked
  }
  const places = (): number[] => [...spans.keys()].sort((a, b) => a - b)
  return {
    put(place, marked) {
      spans.set(place, lines.append(`${place} ${JSON.stringify(marked)}`))
    },
    places,
    doubled: () => doubled,
    at,
    *all() {
      for (const place of places()) yield at(place)
    },
    close: () => lines.close(),
  }
}
