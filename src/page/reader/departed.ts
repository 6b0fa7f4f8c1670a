import type { CheckRule } from "../../worksheet/contract.ts"

/** What of the recording a check looks at: names of series, bodies or forces; none for a check of the text. */
export function lookedAt(rule: CheckRule): readonly string[] {
  switch (rule.kind) {
    case "compare":
    case "value":
    case "stays":
    case "converges":
      return [rule.series]
    case "law":
      return rule.bodies
    case "rests":
    case "stepper":
      return [rule.body]
    case "happens":
      return [rule.of]
    case "units":
    case "uses":
    case "avoids":
      return []
  }
}
