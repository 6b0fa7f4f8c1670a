import { parseUnit } from "../physics/units/index.ts"
import type { Parameter } from "./contract.ts"
import { type Findings, report } from "./source.ts"

interface ParameterYaml {
  label: string
  unit: string | 1
  value: number
  range: [number, number]
  vary: boolean
}

/** Checks each parameter: a range that is one, a value inside it, a unit that is known. */
export function readParameters(
  findings: Findings,
  yaml: Readonly<Record<string, ParameterYaml>>,
  lineOf: (...path: string[]) => number,
): Parameter[] {
  return Object.entries(yaml).map(([name, { label, unit, value, range, vary }]) => {
    const wrong = (key: string, text: string, todo: string): void =>
      report(findings, lineOf("parameters", name, key), {
        code: "parameter",
        text: `The parameter “${name}” ${text}`,
        todo,
      })
    const [low, high] = range
    if (low >= high)
      wrong("range", `has the range [${low}, ${high}], which is empty.`, "Write the smaller number first.")
    else if (value < low || value > high)
      wrong(
        "value",
        `is ${value}, outside its own range [${low}, ${high}].`,
        "Change the value or widen the range.",
      )
    checkUnit(findings, lineOf("parameters", name, "unit"), String(unit), `parameter “${name}”`)
    return { name, label, unit: String(unit), value, range, vary }
  })
}

/** Reports a unit that the SI Brochure's grammar does not have; `owner` says whose it is. */
export function checkUnit(findings: Findings, line: number, unit: string, owner: string): void {
  const read = parseUnit(unit)
  if (read.ok) return
  report(findings, line, { code: read.code, text: `The unit of the ${owner}: ${read.text}`, todo: read.todo })
}
