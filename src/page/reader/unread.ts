import type { Problem } from "../../cell/problem.ts"
import type { StudentSheet } from "../../worksheet/contract.ts"
import type { RunState } from "../words.ts"

/** What somebody should know who hands in a program of which a line cannot be read; "" while all of it can. */
export function unreadWords(
  sheet: Pick<StudentSheet, "blocks">,
  state: RunState,
  problems: readonly Problem[],
): string {
  const where = state.kind === "not-compiled" ? problems[0]?.where : undefined
  if (!where) return ""
  const listings = sheet.blocks.filter(block => block.kind === "cell")
  const listing = listings.findIndex(block => block.name === where.cell)
  const place = listing < 0 ? `Line ${where.line}` : `Listing ${listing + 1}, line ${where.line}`
  return `${place} cannot be read yet; with it no line of the program counts.`
}
