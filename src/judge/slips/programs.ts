import { assembleProgram } from "../../cell/assemble.ts"
import type { Worksheet } from "../../worksheet/contract.ts"
import { catalogue } from "./catalogue.ts"
import { rolesOf } from "./roles.ts"
import { applyEdits, scriptsOf } from "./script.ts"

/** The author's answers with one slip made in one blank. */
export interface SlipProgram {
  readonly slip: string
  readonly blank: string
  readonly answers: Readonly<Record<string, string>>
}

/** A slip of the stepping order is one only where the author has words for it, or asks for the other order. */
const onlyWhereAsked = new Set(["old-momentum"])

/** Every slip of the catalogue in every blank where it can be made; each text once, under the first name that makes it. */
export function slipPrograms(worksheet: Worksheet): SlipProgram[] {
  const { sheet, answers } = worksheet
  const program = assembleProgram(
    sheet.cells,
    answers,
    sheet.parameters.map(p => p.name),
    sheet.timeStep,
  )
  const asked = new Set(sheet.checks.flatMap(check => Object.keys(check.slips)))
  if (sheet.checks.some(({ rule }) => rule.kind === "stepper" && rule.order === "momentum first"))
    asked.add("old-momentum")
  const out: SlipProgram[] = []
  for (const script of scriptsOf(program)) {
    const roles = rolesOf(script, sheet.parameters)
    const seen = new Set([squeezed(answers[script.blank.name] ?? "")])
    for (const slip of catalogue) {
      if (onlyWhereAsked.has(slip.name) && !asked.has(slip.name)) continue
      for (const edits of slip.make(script, roles)) {
        const text = applyEdits(script, edits)
        if (seen.has(squeezed(text)) || text.trim() === "") continue
        seen.add(squeezed(text))
        out.push({
          slip: slip.name,
          blank: script.blank.name,
          answers: { ...answers, [script.blank.name]: text },
        })
      }
    }
  }
  return out
}

const squeezed = (text: string): string => text.replace(/\s+/g, " ").trim()
