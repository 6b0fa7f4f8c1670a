import type { Check, StudentSheet } from "../worksheet/contract.ts"
import { answered } from "./answered.ts"
import { completeRuns } from "./complete.ts"
import type { Evidence, Reference } from "./contract.ts"
import { applyRule } from "./rules/index.ts"

/** How far an answer lies from what a check wants, over what it allows; endless when it could not run. */
export function ratioOf(sheet: StudentSheet, check: Check, reference: Reference, evidence: Evidence): number {
  const student = completeRuns(sheet, evidence, check.cell)
  if (student.factors.length === 0) return Number.POSITIVE_INFINITY
  return answered({ check, student, reference, looked: evidence.looked }, applyRule).ratio
}
