import type { StudentSheet } from "../worksheet/contract.ts"
import type { Evidence } from "./contract.ts"
import type { Runs } from "./finding.ts"

/** Runs that are complete for a cell: none when the program was stopped in it or before it. */
export function completeRuns(sheet: StudentSheet, evidence: Evidence, cell: string): Runs {
  const at = (name: string | undefined): number => sheet.cells.findIndex(source => source.name === name)
  const ran = evidence.problem === null || at(cell) < at(evidence.problem.where?.cell)
  return ran ? evidence : { factors: [], runs: [] }
}
