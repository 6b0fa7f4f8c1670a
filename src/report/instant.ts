import type { Marked } from "./contract.ts"

/** RFC 3339 with a time zone; fractions of any length. */
const instantForm = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/i

/** No answer file is older than the form in which it is written: an earlier time comes from a clock that is wrong. */
const earliest = "2026-01-01T00:00:00.000Z"

/**
 * The instant at which a file says that it was saved, in UTC to the millisecond; null when it names none that can be
 * read, or one that is not to be relied on, such as a time that was still to come when it was marked.
 */
export function savedInstant({ result, work }: Marked): string | null {
  const savedAt = work?.savedAt ?? ""
  if (!instantForm.test(savedAt)) return null
  if (result.problems.some(problem => problem.code === "answer-from-future")) return null
  const time = Date.parse(savedAt)
  if (Number.isNaN(time)) return null
  const instant = new Date(time).toISOString()
  // years of more than four digits have a sign in front, and come before all others in the order of texts
  return instant < earliest ? null : instant
}
