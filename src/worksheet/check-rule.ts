import type { RuleName } from "./check-block.ts"
import type { CheckRule } from "./contract.ts"
import type { CheckYaml } from "./schema.ts"
import { type Findings, report } from "./source.ts"

/** A law of motion that is an identity of the stepper holds to rounding … */
const identityTolerance = 1e-6
/** … and the energy only within what a step costs. */
const energyTolerance = 0.01

/** The rule of a check, once it is known which of them it has; null when a key is missing or makes no sense. */
export function readRule(
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
  const wrong = (key: string, text: string, todo: string): null => {
    report(findings, lineOf(key), { code: "wrong-value", text: `The check “${name}” ${text}`, todo })
    return null
  }
  switch (rule) {
    case "compare":
      return { kind: "compare", series: yaml.compare!, tolerance: yaml.tolerance ?? null }
    case "law":
      if (yaml.body === undefined || yaml.body.length === 0)
        return missing(
          "body",
          `Add “body: NAME”, the body whose ${yaml.law} is booked, or a list of bodies that are booked together.`,
        )
      return readLaw(yaml, yaml.body)
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
      if (yaml.above !== undefined && yaml.below !== undefined && yaml.above >= yaml.below)
        return wrong(
          "above",
          `has an empty band: above ${yaml.above} and below ${yaml.below}.`,
          "“above” is the lower bound and must be less than “below”.",
        )
      return { kind: "stays", series: yaml.stays!, above: yaml.above ?? null, below: yaml.below ?? null }
    case "rests":
      if (yaml.from === undefined)
        return missing("from", "Add “from: SECONDS”, the time from which it must be at rest.")
      return { kind: "rests", body: yaml.rests!, from: yaml.from }
    case "happens": {
      const event = yaml.happens!
      if (yaml.of === undefined)
        return missing(
          "of",
          event === "turning"
            ? "Add “of: SERIES”, the component that turns round, such as key.position.y."
            : event === "rest"
              ? "Add “of: NAME”, the body that comes to rest."
              : "Add “of: FORCE”, the force that acts during the contact, such as boat.forces.fender.",
        )
      if (yaml.at === "end")
        return wrong("at", "looks at the end of the motion.", "Give the time in seconds, or leave “at” out.")
      if (event === "rest" && yaml.count !== undefined)
        return wrong("count", "counts rests.", "Take “count” out: a body comes to rest once.")
      return {
        kind: "happens",
        event,
        of: yaml.of,
        count: yaml.count ?? 1,
        at: yaml.at ?? null,
        within: yaml.within ?? null,
      }
    }
    case "converges":
      if (yaml.order === undefined)
        return missing("order", "Add “order: 1”, the power of the time step with which the error goes away.")
      return { kind: "converges", series: yaml.converges!, order: yaml.order }
    case "units":
      return { kind: "units" }
    case "uses":
      return { kind: "uses", names: yaml.uses! }
    case "avoids":
      return { kind: "avoids", names: yaml.avoids! }
    case "stepper": {
      const [body, ...more] = yaml.body ?? []
      if (body === undefined) return missing("body", "Add “body: NAME”, the body whose steps are looked at.")
      if (more.length > 0)
        return wrong("body", "names several bodies.", "Name one body; write a check for each of the others.")
      return { kind: "stepper", order: yaml.stepper!, body }
    }
  }
}

function readLaw(yaml: CheckYaml, bodies: readonly string[]): CheckRule {
  const external = yaml.external ?? null
  switch (yaml.law!) {
    case "momentum":
      return {
        kind: "law",
        law: "momentum",
        bodies,
        external,
        tolerance: yaml.tolerance ?? identityTolerance,
      }
    case "angular momentum": {
      const [x, y, z = 0] = yaml.about ?? [0, 0]
      return {
        kind: "law",
        law: "angular momentum",
        bodies,
        external,
        about: [x, y, z],
        tolerance: yaml.tolerance ?? identityTolerance,
      }
    }
    case "energy":
      return {
        kind: "law",
        law: "energy",
        bodies,
        energy: yaml.energy ?? null,
        // With a recorded energy the forces that it belongs to do no work in it.
        work: yaml.work ?? (yaml.energy === undefined ? null : []),
        tolerance: yaml.tolerance ?? energyTolerance,
      }
  }
}
