import type { Check, CheckRule, StudentSheet } from "../worksheet/contract.ts"
import { answered } from "./answered.ts"
import { bearingOn } from "./bearing.ts"
import { completeRuns } from "./complete.ts"
import type { CheckResult, Evidence, Reference, SlipMotion } from "./contract.ts"
import { type Scarce, scarcity } from "./coverage.ts"
import { type Diagnosis, diagnose } from "./diagnose.ts"
import { couldNotRunWords, feedback } from "./feedback.ts"
import type { Finding } from "./finding.ts"
import { pathsOf } from "./needed.ts"
import { seconds } from "./quantity.ts"
import { applyRule } from "./rules/index.ts"

/**
 * The verdicts of all checks over one answer's evidence at one set of parameters. Pure: the same sheet, reference
 * and evidence give the same results, wherever they are judged.
 *
 * @param reference in its packed form (settleReference), so that page and marker judge against the same numbers
 * @param pairs motions of two slips at once, looked at where no single one explains a cell
 */
export function judgeSheet(
  sheet: StudentSheet,
  reference: Reference,
  evidence: Evidence,
  pairs: readonly SlipMotion[] = [],
): CheckResult[] {
  const diagnoses = new Map<string, Diagnosis | null>()
  const open = new Map(sheet.checks.map(check => [check, bearingOn(check, evidence.unfilled, reference)]))
  const closed = sheet.checks.filter(check => open.get(check)!.length === 0)
  const bearsOn = (check: Check, diagnosis: Diagnosis | null): diagnosis is Diagnosis =>
    diagnosis !== null && pathsOf(check).some(path => diagnosis.paths.includes(path))
  const pairDiagnoses = new Map<string, Diagnosis | null>()
  const pairOf = (check: Check): Diagnosis | null => {
    if (pairs.length === 0) return null
    if (!pairDiagnoses.has(check.cell)) {
      // Single slips stand beside the pairs, so that a pair is named only where it is clearly nearer than those too.
      const both = { ...reference, slips: [...reference.slips, ...pairs] }
      const found = diagnose(sheet, check.cell, both, evidence, closed)
      pairDiagnoses.set(check.cell, found?.motion.parts === undefined ? null : found)
    }
    const diagnosis = pairDiagnoses.get(check.cell) ?? null
    return bearsOn(check, diagnosis) ? diagnosis : null
  }
  const diagnosisOf = (check: Check): Diagnosis | null => {
    if (!diagnoses.has(check.cell))
      diagnoses.set(check.cell, diagnose(sheet, check.cell, reference, evidence, closed))
    const diagnosis = diagnoses.get(check.cell) ?? null
    return bearsOn(check, diagnosis) ? diagnosis : pairOf(check)
  }
  return sheet.checks.map(check => {
    const base = { name: check.name, outOf: check.points }
    const unfilled = open.get(check)!
    const student = completeRuns(sheet, evidence, check.cell)
    if (student.factors.length === 0) {
      const slip = unfilled.length > 0 ? null : diagnosisOf(check)
      return {
        ...base,
        verdict: "could not run",
        points: 0,
        departsAt: null,
        slip: slip?.motion.slip ?? null,
        message: couldNotRunWords(check, evidence, unfilled, slip),
      }
    }
    const finding = judgeCheck(check, reference, evidence, student)
    const met =
      finding.met && (unfilled.length === 0 || check.rule.kind === "compare" || check.rule.kind === "value")
    const diagnosis = met || unfilled.length > 0 ? null : diagnosisOf(check)
    return {
      ...base,
      verdict: met ? "met" : "not met",
      points: met ? check.points : 0,
      departsAt: met || finding.departsAt === null ? null : plainTime(finding.departsAt),
      slip: diagnosis?.motion.slip ?? (met || unfilled.length > 0 ? null : finding.slip),
      message: feedback(check, { ...finding, met }, unfilled, diagnosis),
    }
  })
}

/** Times of a packed motion carry rounding that nobody wants to read. */
const plainTime = (t: number): number => Number(t.toPrecision(6))

/** True while a check's verdict hangs on runs with a still shorter time step. */
export function wantsFiner(sheet: StudentSheet, reference: Reference, evidence: Evidence): boolean {
  return sheet.checks.some(check => {
    const student = completeRuns(sheet, evidence, check.cell)
    return student.factors.length > 0 && judgeCheck(check, reference, evidence, student).undecided
  })
}

function judgeCheck(
  check: Check,
  reference: Reference,
  evidence: Evidence,
  student: ReturnType<typeof completeRuns>,
): Finding {
  const finding = answered({ check, student, reference, looked: evidence.looked }, applyRule)
  // A program that only runs at the step it was written for does not go to a limit.
  if (
    finding.met &&
    evidence.finerProblem !== null &&
    reference.factors.length > 1 &&
    student.factors.length < 2
  )
    return {
      ...finding,
      met: false,
      right: "",
      wrong: `With the time step as given it comes out right, but with a shorter time step the program stops: ${evidence.finerProblem.text}`,
      look: "Look for a number in your lines that stands for a count of steps.",
      departsAt: null,
    }
  if (!finding.met || !ofSomeMotion.has(check.rule.kind)) return finding
  const scarce = scarcity(student, reference, check.cell)
  return scarce === null
    ? finding
    : {
        ...finding,
        met: false,
        right: "",
        wrong: scarceWords(scarce),
        look: scarceLook(scarce),
        departsAt: null,
      }
}

/** Rules that a motion keeps for nothing where next to none of it was recorded. */
const ofSomeMotion = new Set<CheckRule["kind"]>(["law", "stepper", "stays", "rests", "happens", "value"])

function scarceWords({ lasts, rows, sparse, referenceEnd, shorter }: Scarce): string {
  const where = shorter ? "With a shorter time step your program" : "Your program"
  return sparse
    ? `${where} records only ${rows} instants of a motion that lasts ${seconds(lasts)}: too few to judge it by.`
    : `${where} records only ${seconds(lasts)} of the motion, too little to judge it by; the reference goes on until ${seconds(referenceEnd)}.`
}

const scarceLook = ({ sparse }: Scarce): string =>
  sparse
    ? "See how often the line with record is reached: each step should be recorded."
    : "See which condition ends the loop, and whether a line leaves it."
