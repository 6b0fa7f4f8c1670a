import { sha256 } from "@noble/hashes/sha2.js"
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js"
import type { StudentSheet } from "./contract.ts"

/**
 * The digest of a task: SHA-256 over what an answer depends on (id, version, time step, parameters, given lines,
 * blanks and questions), so that a corrected word in the prose or a corrected answer leaves handed-out sheets
 * valid. It is made from the student's sheet alone: a digest over answers would let short ones be guessed.
 */
export function digestOf(sheet: Omit<StudentSheet, "digest">): string {
  const task = {
    id: sheet.id,
    version: sheet.version,
    timeStep: sheet.timeStep,
    parameters: sheet.parameters.map(p => [p.name, p.unit, p.value, p.range[0], p.range[1], p.vary]),
    cells: sheet.cells.map(cell => [
      cell.name,
      cell.segments.map(s => (s.kind === "given" ? [s.text] : [s.name, s.inline, s.starter])),
    ]),
    questions: sheet.questions.map(q => [q.name, q.kind, q.unit, q.choices.map(choice => choice.key)]),
  }
  return `sha256:${bytesToHex(sha256(utf8ToBytes(JSON.stringify(task))))}`
}
