import { readRule } from "./check-rule.ts"
import { saysOf } from "./check-words.ts"
import type { Check } from "./contract.ts"
import type { CheckYaml } from "./schema.ts"
import { type Findings, report } from "./source.ts"

/** Which keys belong to which rule, besides those that every check has. */
const ruleKeys = {
  compare: ["tolerance"],
  law: ["body", "external", "about", "energy", "work", "tolerance"],
  value: ["at", "equals", "tolerance"],
  stays: ["above", "below"],
  rests: ["from"],
  happens: ["of", "count", "at", "within"],
  converges: ["order"],
  units: [],
  uses: [],
  avoids: [],
  stepper: ["body"],
} as const satisfies Record<string, readonly (keyof CheckYaml)[]>

export type RuleName = keyof typeof ruleKeys

/** Of the keys of a law those that mean nothing to it. */
const idleForLaw: Readonly<Record<NonNullable<CheckYaml["law"]>, readonly (keyof CheckYaml)[]>> = {
  momentum: ["about", "energy", "work"],
  "angular momentum": ["energy", "work"],
  energy: ["external", "about"],
}

const ruleNames = Object.keys(ruleKeys) as RuleName[]
const settings: readonly (keyof CheckYaml)[] = [...new Set(Object.values(ruleKeys).flat())]

/** Turns a check's YAML into a rule: exactly one rule, with only the keys that mean something to it. */
export function readCheck(
  findings: Findings,
  name: string,
  yaml: CheckYaml,
  lineOf: (...path: string[]) => number,
): Check | null {
  const chosen = ruleNames.filter(rule => yaml[rule] !== undefined)
  if (chosen.length !== 1) {
    report(findings, lineOf(chosen[1] ?? "cell"), {
      code: "check-rule",
      text:
        chosen.length === 0
          ? `The check “${name}” does not say what it looks at.`
          : `The check “${name}” has ${chosen.length} rules: ${chosen.join(", ")}.`,
      todo: `Give it exactly one of: ${ruleNames.join(", ")}.`,
    })
    return null
  }
  const rule = chosen[0]!
  const ruleWords = rule === "law" ? `law: ${yaml.law}` : rule
  const noUse: readonly (keyof CheckYaml)[] = rule === "law" ? idleForLaw[yaml.law!] : []
  const allowed = (ruleKeys[rule] as readonly (keyof CheckYaml)[]).filter(key => !noUse.includes(key))
  const idle = settings.filter(key => yaml[key] !== undefined && !allowed.includes(key))
  for (const key of idle) {
    report(findings, lineOf(key), {
      code: "key-without-effect",
      text: `“${key}” has no effect on the check “${name}”, whose rule is “${ruleWords}”.`,
      todo:
        allowed.length > 0 ? `Take it out; with “${ruleWords}” go: ${allowed.join(", ")}.` : "Take it out.",
    })
  }
  const read = readRule(findings, name, yaml, rule, lineOf)
  if (read === null || idle.length > 0) return null
  return {
    name,
    cell: yaml.cell,
    rule: read,
    points: yaml.points,
    says: yaml.says || saysOf(read),
    hint: yaml.hint,
    slips: yaml.slips,
    draws: yaml.draws,
  }
}
