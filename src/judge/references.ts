import type { Worksheet } from "../worksheet/contract.ts"
import type { Reference, SlipMotion } from "./contract.ts"
import { ownParameters } from "./draws.ts"
import { createMemo, type Memo } from "./memo.ts"
import { settleReference } from "./pack.ts"
import { pairMotions } from "./pairs.ts"
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
  /** motions of two slips at once, at the sheet's own parameters; made when first asked for */
  pairs(worksheet: Worksheet, tools: JudgeTools): Promise<readonly SlipMotion[]>
}

/** A class of answers needs a handful of references; of more than this many, those asked for longest ago are forgotten. */
const mostKept = 64

/** An empty store of references. Keep one for all answers of a batch. */
export function createReferences(): References {
  const byWorksheet = new WeakMap<Worksheet, Memo<Reference>>()
  const pairsOf = new WeakMap<Worksheet, Promise<readonly SlipMotion[]>>()
  return {
    pairs(worksheet, tools) {
      const known = pairsOf.get(worksheet)
      if (known !== undefined) return known
      const made = this.get(worksheet, tools, ownParameters(worksheet.sheet), true).then(reference =>
        pairMotions(worksheet, tools, reference),
      )
      pairsOf.set(worksheet, made)
      return made
    },
    get(worksheet, tools, parameters, slips) {
      const kept = byWorksheet.get(worksheet) ?? createMemo<Reference>(mostKept)
      byWorksheet.set(worksheet, kept)
      const key = JSON.stringify([slips, Object.entries(parameters).sort(([a], [b]) => (a < b ? -1 : 1))])
      return kept.get(key, async () =>
        settleReference(
          await buildReference(worksheet, tools, parameters, { slips }),
          worksheet.sheet.checks,
        ),
      )
    },
  }
}
