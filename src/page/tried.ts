import type { Edition } from "../judge/edition.ts"

/** Blanks that hold what the student found there, or nothing: no verdict is due on them yet. */
export function untouched(edition: Edition, typed: Readonly<Record<string, string>>): ReadonlySet<string> {
  const names = new Set<string>()
  for (const cell of edition.sheet.cells)
    for (const segment of cell.segments) {
      if (segment.kind !== "blank") continue
      const text = typed[segment.name] ?? segment.starter
      if (text.trim() === "" || text === segment.starter) names.add(segment.name)
    }
  return names
}

/**
 * Whether the author's motion may be seen beside this cell's own: as the worksheet says, always, never, or once the
 * student has written something of their own into each of the cell's blanks.
 */
export function referenceDue(
  edition: Edition,
  cell: string,
  typed: Readonly<Record<string, string>>,
): boolean {
  const { reference = "shown", cells } = edition.sheet
  if (reference !== "tried") return reference === "shown"
  const open = untouched(edition, typed)
  const blanks = cells.find(c => c.name === cell)?.segments.filter(s => s.kind === "blank") ?? []
  return blanks.every(blank => !open.has(blank.name))
}
