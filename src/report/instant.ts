/** RFC 3339 with a time zone; fractions of any length. */
const instantForm = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/i

/** The instant that an answer file names, in UTC to the millisecond; null when it names none that can be read. */
export function instantOf(savedAt: string): string | null {
  if (!instantForm.test(savedAt)) return null
  const time = Date.parse(savedAt)
  return Number.isNaN(time) ? null : new Date(time).toISOString()
}
