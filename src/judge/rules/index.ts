import type { Asked, Finding } from "../finding.ts"
import { follow } from "./follow.ts"
import { momentumLaw } from "./momentum-law.ts"
import { rests } from "./rests.ts"
import { stays } from "./stays.ts"
import { value } from "./value.ts"

/** Applies a check's rule to what was recorded. */
export function applyRule(asked: Asked): Finding {
  switch (asked.check.rule.kind) {
    case "compare":
      return follow(asked)
    case "law":
      return momentumLaw(asked)
    case "value":
      return value(asked)
    case "stays":
      return stays(asked)
    case "rests":
      return rests(asked)
  }
}
