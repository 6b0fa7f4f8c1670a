import { cellText } from "../../cell/assemble.ts"
import type { CellSource } from "../../cell/contract.ts"

/** The stretch of a listing that a student may write in. Offsets in UTF-16 units; empty when nothing is written. */
export interface Region {
  readonly name: string
  readonly prompt: string
  readonly inline: boolean
  readonly from: number
  readonly to: number
}

/** A cell as it stands on the page: its text with the blanks filled, and where they are. */
export interface Listing {
  readonly text: string
  readonly regions: readonly Region[]
}

/** A cell's text exactly as the program has it, so that lines and columns of problems are the listing's own. */
export function setListing(cell: CellSource, texts: Readonly<Record<string, string>>): Listing {
  const prompts = new Map(
    cell.segments.flatMap(segment =>
      segment.kind === "blank" ? [[segment.name, segment.prompt] as const] : [],
    ),
  )
  const shown = cellText(cell, texts)
  return {
    text: shown.text,
    regions: shown.blanks.map(blank => ({ ...blank, prompt: prompts.get(blank.name) ?? "" })),
  }
}
