import type { Asked, Finding } from "../finding.ts"
import { booksLaw } from "./books-law.ts"
import { converges } from "./converges.ts"
import { energyLaw } from "./energy-law.ts"
import { follow } from "./follow.ts"
import { happens } from "./happens.ts"
import { avoids, unitsAgree, uses } from "./lines.ts"
import { rests } from "./rests.ts"
import { wrongKind } from "./right-kind.ts"
import { stays } from "./stays.ts"
import { stepper } from "./stepper.ts"
import { value } from "./value.ts"

/** Applies a check's rule to what was recorded, or to what was written. */
export function applyRule(asked: Asked): Finding {
  const amiss = wrongKind(asked)
  if (amiss !== null) return amiss
  const { rule } = asked.check
  switch (rule.kind) {
    case "compare":
      return follow(asked)
    case "law":
      return rule.law === "energy" ? energyLaw(asked, rule) : booksLaw(asked, rule)
    case "value":
      return value(asked)
    case "stays":
      return stays(asked)
    case "rests":
      return rests(asked)
    case "happens":
      return happens(asked, rule)
    case "converges":
      return converges(asked, rule)
    case "stepper":
      return stepper(asked, rule)
    case "units":
      return unitsAgree(asked)
    case "uses":
      return uses(asked, rule.names)
    case "avoids":
      return avoids(asked, rule.names)
  }
}
