import type { Worksheet } from "../worksheet/contract.ts"
import type { Reference } from "./contract.ts"
import { settleReference } from "./pack.ts"
import { buildReference } from "./reference.ts"
import type { JudgeTools } from "./tools.ts"

/** References already made, in their packed form; asked twice at once, made once. */
export interface References {
  /** @param slips true for the sheet's own parameters, where slips are to be named */
  get(
    worksheet: Worksheet,
    tools: JudgeTools,
    parameters: Readonly<Record<string, number>>,
    slips: boolean,
  ): Promise<Reference>
}

/** A class of answers needs a handful of references; more than this many are forgotten, the oldest first. */
const mostKept = 64

/** An empty store of references. Keep one for all answers of a batch. */
export function createReferences(): References {
  const byWorksheet = new WeakMap<Worksheet, Map<string, Promise<Reference>>>()
  return {
    get(worksheet, tools, parameters, slips) {
      const kept = byWorksheet.get(worksheet) ?? new Map<string, Promise<Reference>>()
      byWorksheet.set(worksheet, kept)
      const key = JSON.stringify([slips, Object.entries(parameters).sort(([a], [b]) => (a < b ? -1 : 1))])
      const known = kept.get(key)
      if (known !== undefined) return known
      const made = buildReference(worksheet, tools, parameters, { slips }).then(reference =>
        settleReference(reference, worksheet.sheet.checks),
      )
      kept.set(key, made)
      if (kept.size > mostKept) kept.delete(kept.keys().next().value!)
      return made
    },
  }
}
