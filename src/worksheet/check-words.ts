import type { CheckRule } from "./contract.ts"

/** What a check looks at, in words, where the author has not said it. */
export function saysOf(rule: CheckRule): string {
  switch (rule.kind) {
    case "compare":
      return `${rule.series} follows the reference motion`
    case "law":
      return lawWords(rule)
    case "value":
      return `${rule.series} comes out right ${rule.at === "end" ? "at the end" : `at ${rule.at} s`}`
    case "stays": {
      const bounds = [
        rule.above === null ? null : `not below ${rule.above}`,
        rule.below === null ? null : `not above ${rule.below}`,
      ]
      return `${rule.series} stays ${bounds.filter(Boolean).join(" and ")}`
    }
    case "rests":
      return `${rule.body} is at rest from ${rule.from} s on`
    case "happens": {
      const when = rule.at === null ? "when it should" : `at ${rule.at} s`
      const which = rule.count === 1 ? "" : ` (number ${rule.count})`
      if (rule.event === "rest") return `${rule.of} comes to rest ${when}`
      if (rule.event === "turning") return `${rule.of} turns round ${when}${which}`
      return `the contact with the force ${rule.of} ${rule.event === "contact begins" ? "begins" : "ends"} ${when}${which}`
    }
    case "converges":
      return `the error of ${rule.series} goes away with the time step, at order ${rule.order} or better`
    case "units":
      return "the units of all lines agree"
    case "uses":
      return `your lines use ${rule.names.join(", ")}`
    case "avoids":
      return `your lines do without ${rule.names.join(", ")}`
    case "stepper":
      return rule.order === "momentum first"
        ? `in each step the momentum of ${rule.body} comes first, and the new one moves its position`
        : `in each step the position of ${rule.body} comes first, moved by the momentum from before`
  }
}

function lawWords(rule: Extract<CheckRule, { kind: "law" }>): string {
  const bodies = rule.bodies.join(" and ")
  switch (rule.law) {
    case "momentum":
      return rule.external?.length === 0
        ? `the momentum of ${bodies} together stays what it is`
        : `each step changes the momentum of ${bodies} by net force times time step`
    case "angular momentum":
      return rule.external?.length === 0
        ? `the angular momentum of ${bodies} together stays what it is`
        : `each step changes the angular momentum of ${bodies} by net torque times time step`
    case "energy":
      return rule.energy === null
        ? `the kinetic energy of ${bodies} changes by the work of the forces`
        : rule.work?.length === 0
          ? `${rule.energy} stays what it is`
          : `${rule.energy} changes by the work of ${(rule.work ?? []).join(" and ") || "the forces"}`
  }
}
