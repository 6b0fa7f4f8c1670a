import type { Marked } from "./contract.ts"

/** RFC 3339 with a time zone; fractions of any length. */
const instantForm = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/i

/** The time that a text names, ms since 1970; NaN for one that names none. */
export const readInstant = (text: string): number => (instantForm.test(text) ? Date.parse(text) : Number.NaN)

/** No answer file is older than the form in which it is written: an earlier time comes from a clock that is wrong. */
const earliest = "2026-01-01T00:00:00.000Z"

/**
 * The instant at which a file says that it was saved, in UTC to the millisecond; null when it names none that can be
 * read, or one that is not to be relied on, such as a time that was still to come when it was marked.
 */
export function savedInstant({ result, work }: Marked): string | null {
  if (result.problems.some(problem => problem.code === "answer-from-future")) return null
  const time = readInstant(work?.savedAt ?? "")
  if (Number.isNaN(time)) return null
  const instant = new Date(time).toISOString()
  // years of more than four digits have a sign in front, and come before all others in the order of texts
  return instant < earliest ? null : instant
}
