import type { Problem } from "../cell/problem.ts"
import type { Check } from "../worksheet/contract.ts"
import type { Evidence } from "./contract.ts"
import type { Diagnosis } from "./diagnose.ts"
import type { Finding } from "./finding.ts"
import { pairHint } from "./slips/pair-words.ts"

/**
 * What a student reads about one check, always in the same order: what the motion does right; the first thing that
 * is wrong, where and when; a hint, the teacher's own where the worksheet has one; where to look on the bench.
 */
export function feedback(
  check: Check,
  finding: Finding,
  unfilled: readonly Problem[],
  diagnosis: Diagnosis | null,
): string {
  if (finding.met) return finding.right
  if (unfilled.length > 0) return join(unfilledWords(unfilled), finding.right, finding.wrong)
  const hint = finding.onlyReach ? "" : hintWords(check, diagnosis, finding.slip)
  return join(finding.right, finding.wrong, hint, finding.look)
}

export function couldNotRunWords(
  check: Check,
  { problem }: Evidence,
  unfilled: readonly Problem[],
  diagnosis: Diagnosis | null,
): string {
  const blanks = unfilledWords(unfilled)
  if (problem === null) return blanks || "The program did not run."
  if (problem.code === "empty-blank" && blanks !== "") return blanks
  const hint = diagnosis === null ? "" : hintWords(check, diagnosis)
  return join(blanks, problem.text, problem.todo, hint)
}

/** The teacher's words for the slip, else for the check; ours where there are none. */
function hintWords(check: Check, diagnosis: Diagnosis | null, seen: string | null = null): string {
  if (diagnosis === null) return (seen === null ? undefined : check.slips[seen]) ?? check.hint
  const { slip, hint, parts } = diagnosis.motion
  const [first, second] = (parts ?? []).map(part => check.slips[part.slip] ?? part.hint)
  return first !== undefined && second !== undefined ? pairHint(first, second) : (check.slips[slip] ?? hint)
}

function unfilledWords(unfilled: readonly Problem[]): string {
  const names = [...new Set(unfilled.flatMap(problem => problem.where?.blank ?? []))]
  if (names.length < 2) return unfilled[0]?.text ?? ""
  return `These blanks are not filled yet: ${names.map(name => `“${name}”`).join(", ")}.`
}

const join = (...parts: readonly string[]): string =>
  parts
    .map(part => part.trim())
    .filter(part => part !== "")
    .join(" ")
