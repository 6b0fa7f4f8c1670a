import * as v from "valibot"

const keptText = v.object({ text: v.string(), at: v.number() })

const pastText = v.object({
  at: v.number(),
  /** why it left the sheet, in words: "before “drop” was reset" */
  why: v.string(),
  answers: v.record(v.string(), v.string()),
  questions: v.record(v.string(), v.string()),
})

const work = v.object({
  format: v.literal("deltasheet-kept/1"),
  id: v.string(),
  version: v.number(),
  digest: v.string(),
  title: v.string(),
  begun: v.number(),
  answers: v.record(v.string(), keptText),
  questions: v.record(v.string(), keptText),
  past: v.array(pastText),
  points: v.nullable(v.object({ points: v.number(), outOf: v.number(), at: v.number() })),
})

/** A text and when it was typed, ms since 1970. */
export type KeptText = v.InferOutput<typeof keptText>
/** Texts that stood on the sheet once and were replaced. */
export type PastText = v.InferOutput<typeof pastText>
/** Everything a student typed into one edition of a worksheet, as this device keeps it. */
export type Work = v.InferOutput<typeof work>

/** Nothing written yet. */
export function freshWork(
  sheet: { id: string; version: number; digest: string; title: string },
  now: number,
): Work {
  const { id, version, digest, title } = sheet
  return {
    format: "deltasheet-kept/1",
    id,
    version,
    digest,
    title,
    begun: now,
    answers: {},
    questions: {},
    past: [],
    points: null,
  }
}

/** Reads what the device holds; null for what is not ours or was damaged. */
export function readWork(json: string): Work | null {
  try {
    const result = v.safeParse(work, JSON.parse(json))
    return result.success ? result.output : null
  } catch {
    return null
  }
}

function newer(
  a: Readonly<Record<string, KeptText>>,
  b: Readonly<Record<string, KeptText>>,
): Record<string, KeptText> {
  const merged: Record<string, KeptText> = { ...a }
  for (const [name, text] of Object.entries(b)) {
    const other = merged[name]
    if (!other || text.at > other.at) merged[name] = text
  }
  return merged
}

const samePast = (a: PastText, b: PastText): boolean =>
  a.at === b.at && a.why === b.why && JSON.stringify(a.answers) === JSON.stringify(b.answers)

/**
 * Brings together what two windows hold of the same edition: of each blank the later text, of the past
 * everything. The order of the arguments matters only where both were typed in the same millisecond.
 */
export function mergeWork(a: Work, b: Work): Work {
  const extra = b.past.filter(past => !a.past.some(other => samePast(other, past)))
  const points = !a.points || (b.points && b.points.at > a.points.at) ? b.points : a.points
  return {
    ...a,
    begun: Math.min(a.begun, b.begun),
    answers: newer(a.answers, b.answers),
    questions: newer(a.questions, b.questions),
    past: [...a.past, ...extra].sort((x, y) => x.at - y.at),
    points,
  }
}

/** The texts alone. */
export function textsOf(kept: Readonly<Record<string, KeptText>>): Record<string, string> {
  return Object.fromEntries(Object.entries(kept).map(([name, { text }]) => [name, text]))
}
