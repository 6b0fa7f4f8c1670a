import type { Check, CheckRule } from "../worksheet/contract.ts"
import type { Reference } from "./contract.ts"
import { numberWords } from "./quantity.ts"

/** What a check allows, for the author. */
export function toleranceWords({ rule }: Check, reference: Pick<Reference, "factors">): string {
  const percents = (part: number): string => `${numberWords(part * 100)} %`
  switch (rule.kind) {
    case "compare":
      if (rule.tolerance !== null)
        return `${percents(rule.tolerance)} of the motion's extent, as the check sets it`
      return reference.factors.length > 1
        ? "twice what the reference itself still moves when the step is quartered, at least 0.2 % of the motion's extent, between the limits as the time step shrinks"
        : "1 % of the motion's extent at the given time step, since no time step was found that could be shortened"
    case "law":
      return lawWords(rule)
    case "value":
      return `${percents(rule.tolerance)} of the value`
    case "happens":
      return rule.within === null
        ? "a hundredth of the reference's time, at least two steps"
        : `${numberWords(rule.within)} s to either side`
    case "converges":
      return "0.3 below the stated order, as the last three time steps show it"
    case "stepper":
      return "a tenth of what tells the two orders apart, in the recorded steps"
    case "stays":
    case "rests":
    case "units":
    case "uses":
    case "avoids":
      return "exact"
  }
}

function lawWords(rule: Extract<CheckRule, { kind: "law" }>): string {
  switch (rule.law) {
    case "momentum":
      return `${rule.tolerance} of the largest impulse of a step, in every step`
    case "angular momentum":
      return `${rule.tolerance} of the largest torque times time step, in every step`
    case "energy":
      return `${numberWords(rule.tolerance * 100)} % of the largest kinetic energy, at all times`
  }
}
