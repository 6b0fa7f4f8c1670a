import * as v from "valibot"
import type { Judgement } from "../../judge/index.ts"
import type { Motion } from "../../report/index.ts"
import type { StudentSheet } from "../../worksheet/index.ts"

/** All that marking finds out about one set of answers, whoever gave them. */
export interface Verdict {
  readonly judgement: Judgement
  readonly motions: readonly Motion[]
}

const finite = v.pipe(v.number(), v.finite())
const place = v.object({
  file: v.optional(v.string()),
  cell: v.optional(v.string()),
  blank: v.optional(v.string()),
  line: finite,
  column: finite,
  endLine: v.optional(finite),
  endColumn: v.optional(finite),
})
const problem = v.object({
  code: v.string(),
  text: v.string(),
  todo: v.string(),
  where: v.optional(place),
  excerpt: v.optional(v.string()),
})
const check = v.object({
  name: v.string(),
  verdict: v.picklist(["met", "not met", "could not run"]),
  points: finite,
  outOf: finite,
  departsAt: v.nullable(finite),
  slip: v.nullable(v.string()),
  message: v.string(),
})
const schema = v.object({
  judgement: v.object({
    points: finite,
    outOf: finite,
    checks: v.array(check),
    problems: v.array(problem),
  }),
  motions: v.array(
    v.object({
      cell: v.string(),
      ofTime: v.boolean(),
      times: v.array(finite),
      curves: v.array(v.object({ path: v.string(), values: v.array(finite) })),
    }),
  ),
})

/**
 * A verdict that was written down earlier, if it can be one over this sheet: its checks and questions by name and points, a sum
 * that is right, nothing more than a check gives. Null otherwise.
 */
export function readVerdict(sheet: StudentSheet, written: unknown): Verdict | null {
  const read = v.safeParse(schema, written)
  if (!read.success) return null
  const { judgement } = read.output
  const outOf = new Map([...sheet.checks, ...sheet.questions].map(({ name, points }) => [name, points]))
  const names = judgement.checks.map(({ name }) => name)
  const complete =
    sheet.checks.every(({ name }, i) => names[i] === name) && new Set(names).size === names.length
  const honest = judgement.checks.every(
    item =>
      outOf.get(item.name) === item.outOf &&
      item.points >= 0 &&
      item.points <= item.outOf &&
      (item.verdict === "met" || item.points === 0),
  )
  const sum = judgement.checks.reduce((total, item) => total + item.points, 0)
  return complete && honest && Math.abs(sum - judgement.points) < 1e-6 ? (written as Verdict) : null
}
