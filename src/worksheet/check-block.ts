import type { Check, CheckRule } from "./contract.ts"
import type { CheckYaml } from "./schema.ts"
import { type Findings, report } from "./source.ts"

/** Which keys belong to which rule, besides those that every check has. */
const ruleKeys = {
  compare: ["tolerance"],
  law: ["body", "tolerance"],
  value: ["at", "equals", "tolerance"],
  stays: ["above", "below"],
  rests: ["from"],
} as const satisfies Record<string, readonly (keyof CheckYaml)[]>

type RuleName = keyof typeof ruleKeys
const ruleNames = Object.keys(ruleKeys) as RuleName[]
const settings = [...new Set(Object.values(ruleKeys).flat())]

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
  const allowed: readonly string[] = ruleKeys[rule]
  const idle = settings.filter(key => yaml[key] !== undefined && !allowed.includes(key))
  for (const key of idle) {
    report(findings, lineOf(key), {
      code: "key-without-effect",
      text: `“${key}” has no effect on the check “${name}”, whose rule is “${rule}”.`,
      todo: allowed.length > 0 ? `Take it out; with “${rule}” go: ${allowed.join(", ")}.` : "Take it out.",
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

function readRule(
  findings: Findings,
  name: string,
  yaml: CheckYaml,
  rule: RuleName,
  lineOf: (...path: string[]) => number,
): CheckRule | null {
  const missing = (key: string, todo: string): null => {
    report(findings, lineOf(rule), {
      code: "missing-key",
      text: `The check “${name}” has a rule “${rule}” but no “${key}”.`,
      todo,
    })
    return null
  }
  switch (rule) {
    case "compare":
      return { kind: "compare", series: yaml.compare!, tolerance: yaml.tolerance ?? null }
    case "law":
      if (yaml.body === undefined)
        return missing("body", "Add “body: NAME”, the body whose momentum is booked.")
      return { kind: "law", law: yaml.law!, body: yaml.body, tolerance: yaml.tolerance ?? 1e-6 }
    case "value":
      return {
        kind: "value",
        series: yaml.value!,
        at: yaml.at ?? "end",
        value: yaml.equals ?? null,
        tolerance: yaml.tolerance ?? 0.01,
      }
    case "stays":
      if (yaml.above === undefined && yaml.below === undefined)
        return missing("above", "Add “above: NUMBER”, “below: NUMBER” or both.")
      if (yaml.above !== undefined && yaml.below !== undefined && yaml.above >= yaml.below) {
        report(findings, lineOf("above"), {
          code: "wrong-value",
          text: `The band of the check “${name}” is empty: above ${yaml.above} and below ${yaml.below}.`,
          todo: "“above” is the lower bound and must be less than “below”.",
        })
        return null
      }
      return { kind: "stays", series: yaml.stays!, above: yaml.above ?? null, below: yaml.below ?? null }
    case "rests":
      if (yaml.from === undefined)
        return missing("from", "Add “from: SECONDS”, the time from which it must be at rest.")
      return { kind: "rests", body: yaml.rests!, from: yaml.from }
  }
}

/** What a check looks at, in words, where the author has not said it. */
function saysOf(rule: CheckRule): string {
  switch (rule.kind) {
    case "compare":
      return `${rule.series} follows the reference motion`
    case "law":
      return `each step changes the momentum of ${rule.body} by net force times time step`
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
  }
}
