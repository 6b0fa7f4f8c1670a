import { assembleProgram } from "../../cell/assemble.ts"
import type { Worksheet } from "../../worksheet/contract.ts"
import { catalogue } from "./catalogue.ts"
import { rolesOf } from "./roles.ts"
import { applyEdits, type Edit, scriptsOf } from "./script.ts"
import type { Slip } from "./slip.ts"

/** The author's answers with one slip made in one blank. */
export interface SlipProgram {
  readonly slip: string
  readonly blank: string
  readonly answers: Readonly<Record<string, string>>
  /** what was changed in the author's text */
  readonly edits: readonly Edit[]
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
  const blanks = scriptsOf(program).map(script => ({
    script,
    roles: rolesOf(script, sheet.parameters),
    seen: new Set([squeezed(answers[script.blank.name] ?? "")]),
  }))
  const made = (ways: (slip: Slip) => Slip["make"] | undefined): SlipProgram[] =>
    blanks.flatMap(({ script, roles, seen }) =>
      catalogue.flatMap(slip => {
        if (onlyWhereAsked.has(slip.name) && !asked.has(slip.name)) return []
        return (ways(slip)?.(script, roles) ?? []).flatMap((edits): SlipProgram[] => {
          const text = applyEdits(script, edits)
          if (seen.has(squeezed(text)) || text.trim() === "") return []
          seen.add(squeezed(text))
          const { name } = script.blank
          return [{ slip: slip.name, blank: name, answers: { ...answers, [name]: text }, edits }]
        })
      }),
    )
  return [...made(slip => slip.make), ...made(slip => slip.late)]
}

const squeezed = (text: string): string => text.replace(/\s+/g, " ").trim()
