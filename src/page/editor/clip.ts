import type { Region } from "./listing.ts"

/** One replacement in a listing: the text between `from` and `to` becomes `insert`. */
export interface Replacement {
  readonly from: number
  readonly to: number
  readonly insert: string
}

/** What is left of an edit once given lines are taken out of it. */
export interface Clipped {
  readonly changes: readonly Replacement[]
  /** something of the edit fell on given lines and was left out */
  readonly refused: boolean
}

/** A blank inside a line stays one line: a line break in it is a space, and nothing at all if it comes alone. */
function fitted(region: Region, insert: string): string {
  if (!region.inline || !insert.includes("\n")) return insert
  return insert.trim() === "" ? "" : insert.trim().replace(/\s*\n\s*/g, " ")
}

/** The region in which text typed at `at` belongs; its two edges belong to it. */
export function regionAt(regions: readonly Region[], at: number): Region | undefined {
  return regions.find(region => region.from <= at && at <= region.to)
}

/**
 * Splits a text that was copied from a whole listing back on to its blanks: the given text between the touched
 * regions must stand in it literally, in order. Null when it does not.
 */
function distribute(
  text: string,
  listing: string,
  touched: readonly Region[],
  from: number,
  to: number,
): readonly string[] | null {
  const first = touched[0]!
  const lead = listing.slice(Math.min(from, first.from), first.from)
  if (!text.startsWith(lead)) return null
  const last = touched.at(-1)!
  const trail = listing.slice(last.to, Math.max(to, last.to))
  if (!text.endsWith(trail) || text.length < lead.length + trail.length) return null
  let rest = text.slice(lead.length, text.length - trail.length)
  const parts: string[] = []
  for (let i = 0; i + 1 < touched.length; i++) {
    const between = listing.slice(touched[i]!.to, touched[i + 1]!.from)
    const at = rest.indexOf(between)
    if (between === "" || at < 0) return null
    parts.push(rest.slice(0, at))
    rest = rest.slice(at + between.length)
  }
  parts.push(rest)
  return parts
}

function clipOne(listing: string, regions: readonly Region[], change: Replacement): Clipped {
  const { from, to, insert } = change
  const touched = regions.filter(region => region.from <= to && from <= region.to)
  if (touched.length === 0) return { changes: [], refused: true }
  const only = touched.find(region => region.from <= from && to <= region.to)
  if (only) return { changes: [{ from, to, insert: fitted(only, insert) }], refused: false }
  const parts = insert === "" ? null : distribute(insert, listing, touched, from, to)
  if (parts) {
    const changes = touched.map((region, i) => {
      const start = Math.max(from, region.from)
      return { from: start, to: Math.max(start, Math.min(to, region.to)), insert: fitted(region, parts[i]!) }
    })
    return { changes, refused: false }
  }
  // typed or pasted over given lines too: what is selected of each blank goes, the new text stands in the first
  const changes = touched
    .map((region, i) => {
      const start = Math.max(from, region.from)
      const end = Math.max(start, Math.min(to, region.to))
      return { from: start, to: end, insert: i === 0 ? fitted(region, insert) : "" }
    })
    .filter(part => part.from < part.to || part.insert !== "")
  return { changes, refused: true }
}

/**
 * Keeps an edit within the blanks. Deleting, typing and pasting lose only what falls on given lines; with
 * `whole`, an edit that is not entirely inside is refused altogether (moving lines: half a move loses text).
 */
export function clipEdit(
  listing: string,
  regions: readonly Region[],
  edit: readonly Replacement[],
  whole: boolean,
): Clipped {
  const parts = edit.map(change => clipOne(listing, regions, change))
  const refused = parts.some(part => part.refused)
  if (refused && whole) return { changes: [], refused: true }
  return { changes: parts.flatMap(part => part.changes), refused }
}

/** Follows the regions through changes that lie inside them: what is typed at either edge belongs to the region. */
export function followRegions(
  regions: readonly Region[],
  map: (position: number, side: -1 | 1) => number,
): readonly Region[] {
  return regions.map(region => ({ ...region, from: map(region.from, -1), to: map(region.to, 1) }))
}
