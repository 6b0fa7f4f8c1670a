import type { Problem } from "../cell/problem.ts"
import type { Check, Worksheet } from "../worksheet/contract.ts"
import type { CheckResult, Reference, Verdict } from "./contract.ts"
import { ownParameters } from "./draws.ts"
import { collectEvidence, noEvidence } from "./evidence.ts"
import { lookAt } from "./look.ts"
import { numberWords } from "./quantity.ts"
import { ratioOf } from "./ratio.ts"
import { NoReference, programOf } from "./reference.ts"
import { createReferences } from "./references.ts"
import { applyRule } from "./rules/index.ts"
import { judgeSheet } from "./sheet.ts"
import { slipPrograms } from "./slips/programs.ts"
import { inTurns, thrifty } from "./thrifty.ts"
import { toleranceWords } from "./tolerance-words.ts"
import type { JudgeTools } from "./tools.ts"
import { unfilledBlanks } from "./unfilled.ts"
import { variantPrograms } from "./variants.ts"

/** How well one check tells right from wrong. Ratios are distances over what is allowed: accepted below 1, refused above. */
export interface ExaminedCheck {
  readonly name: string
  readonly points: number
  /** verdict over the sheet as a student finds it */
  readonly empty: Verdict
  /** the accepted way of writing the answer that lies furthest from the reference */
  readonly nearestAccepted: { readonly name: string; readonly ratio: number } | null
  /** the slip that lies nearest */
  readonly nearestSlip: { readonly name: string; readonly ratio: number } | null
  /** nearest slip over furthest accepted answer: how many times over the two are told apart */
  readonly margin: number | null
  readonly tolerance: string
  /** a chaotic motion is compared up to here alone, s; null for to its end */
  readonly horizon: number | null
}

export interface ExaminedSlip {
  readonly slip: string
  readonly blank: string
  /** checks that refuse it */
  readonly refusedBy: readonly string[]
  /** named rightly when handed in */
  readonly named: boolean
}

export interface Examined {
  readonly sound: boolean
  readonly findings: readonly Problem[]
  readonly checks: readonly ExaminedCheck[]
  readonly slips: readonly ExaminedSlip[]
}

/** A slip must lie this many times as far off as any right answer. */
const leastMargin = 3

interface Trial {
  readonly name: string
  readonly results: readonly CheckResult[]
  readonly ratios: readonly number[]
}

/**
 * Whether a worksheet's checks know right from wrong: the author's own answers earn full points, empty blanks
 * none, other right ways of writing the answers pass, and no slip of the catalogue does. Never throws for what is
 * wrong with the worksheet.
 */
export async function examineWorksheet(worksheet: Worksheet, given: JudgeTools): Promise<Examined> {
  const { sheet } = worksheet
  const tools = thrifty(given)
  let reference: Reference
  try {
    reference = await createReferences().get(worksheet, tools, ownParameters(sheet), true)
  } catch (cause) {
    if (!(cause instanceof NoReference)) throw cause
    return { sound: false, findings: [cause.problem], checks: [], slips: [] }
  }
  const tryOut = async (name: string, answers: Readonly<Record<string, string>>): Promise<Trial> => {
    const program = programOf(worksheet, answers)
    const result = await tools.compile(program)
    const evidence = result.ok
      ? (await collectEvidence(sheet, result.compiled, tools, reference, { look: lookAt(sheet) }))!
      : noEvidence(result.problems[0] ?? null, unfilledBlanks(program))
    return {
      name,
      results: judgeSheet(sheet, reference, evidence),
      ratios: sheet.checks.map(check => ratioOf(sheet, check, reference, evidence)),
    }
  }

  const findings: Problem[] = []
  const author = await tryOut("the author's answers", worksheet.answers)
  tools.allow(tools.turns())
  const empty = await tryOut("empty blanks", {})
  const variants = await inTurns(variantPrograms(worksheet), ({ name, answers }) => tryOut(name, answers))
  const kept = new Set(reference.slips.map(slip => `${slip.slip} ${slip.blank}`))
  const slips = await inTurns(
    slipPrograms(worksheet).filter(({ slip, blank }) => kept.has(`${slip} ${blank}`)),
    async ({ slip, blank, answers }) => ({ ...(await tryOut(slip, answers)), blank }),
  )

  sheet.checks.forEach((check, i) => {
    const place = { file: worksheet.file, line: worksheet.lines[`check:${check.name}`] ?? 1, column: 1 }
    findings.push(
      ...findingsOf(check, i, author, empty, variants).map(problem => ({ ...problem, where: place })),
    )
  })
  const passing = slips.filter(
    slip => changesSomething(slip) && slip.results.every(result => result.verdict === "met"),
  )
  for (const slip of passing) findings.push(slipPasses(worksheet, slip))

  const checks = sheet.checks.map((check, i): ExaminedCheck => {
    const accepted = [author, ...variants].filter(trial => trial.results[i]!.verdict === "met")
    const refused = slips.filter(
      trial => trial.results[i]!.verdict !== "met" && Number.isFinite(trial.ratios[i]!),
    )
    const furthest = accepted.reduce<Trial | null>(
      (a, b) => (a === null || b.ratios[i]! > a.ratios[i]! ? b : a),
      null,
    )
    const nearest = refused.reduce<Trial | null>(
      (a, b) => (a === null || b.ratios[i]! < a.ratios[i]! ? b : a),
      null,
    )
    const spread = check.rule.kind === "compare" || check.rule.kind === "value"
    return {
      name: check.name,
      points: check.points,
      empty: empty.results[i]!.verdict,
      nearestAccepted: furthest === null ? null : { name: furthest.name, ratio: furthest.ratios[i]! },
      nearestSlip: nearest === null ? null : { name: nearest.name, ratio: nearest.ratios[i]! },
      margin: spread && furthest && nearest ? nearest.ratios[i]! / Math.max(furthest.ratios[i]!, 1e-3) : null,
      tolerance: toleranceWords(check, reference),
      horizon:
        check.rule.kind === "compare" ? applyRule({ check, student: reference, reference }).horizon : null,
    }
  })
  for (const [i, check] of checks.entries()) {
    if (check.margin !== null && check.margin < leastMargin) findings.push(cannotTell(worksheet, check))
    if (neverFails(sheet.checks[i]!, i, slips)) findings.push(refusesNoSlip(worksheet, check, slips.length))
  }
  return {
    sound: findings.length === 0,
    findings,
    checks,
    slips: slips.map(slip => ({
      slip: slip.name,
      blank: slip.blank,
      refusedBy: slip.results.filter(result => result.verdict !== "met").map(result => result.name),
      named: slip.results.some(result => result.slip === slip.name),
    })),
  }
}

/** A rewriting that only changes what no check looks at is no slip here. */
const changesSomething = (trial: Trial): boolean => trial.ratios.some(ratio => ratio > 0.05)

function findingsOf(
  check: Check,
  i: number,
  author: Trial,
  empty: Trial,
  variants: readonly Trial[],
): Problem[] {
  const out: Problem[] = []
  const own = author.results[i]!
  if (own.verdict !== "met")
    out.push({
      code: "check-refuses-author",
      text: `The check “${check.name}” does not accept the author's own answers: ${own.message}`,
      todo: "Mend the answers, the check's numbers or its tolerance.",
    })
  if (empty.results[i]!.verdict === "met" && check.points > 0)
    out.push({
      code: "check-met-by-empty",
      text: `The check “${check.name}” is met although no blank is filled.`,
      todo: "Let it look at a series that only the right answer changes, or give it no points.",
    })
  for (const variant of variants) {
    if (own.verdict === "met" && variant.results[i]!.verdict !== "met")
      out.push({
        code: "check-refuses-right",
        text: `The check “${check.name}” refuses a right answer written in another way (${variant.name}): ${variant.results[i]!.message}`,
        todo: "Shorten the time step, widen the tolerance, or say in the sheet which way you ask for.",
      })
  }
  return out
}

function cannotTell(worksheet: Worksheet, check: ExaminedCheck): Problem {
  const side = (found: ExaminedCheck["nearestSlip"]): string =>
    found === null ? "" : `“${found.name}” at ${numberWords(found.ratio, 2)} times the tolerance`
  return {
    code: "check-cannot-tell",
    text: `The check “${check.name}” hardly tells right from wrong: the furthest right answer is ${side(check.nearestAccepted)}, the nearest slip ${side(check.nearestSlip)}.`,
    todo: "Choose parameters for which the mistake shows more, or a narrower tolerance.",
    where: { file: worksheet.file, line: worksheet.lines[`check:${check.name}`] ?? 1, column: 1 },
  }
}

/** What looks for a named thing, or for the order of a step, is not made to catch slips. */
const catchesSlips = new Set<Check["rule"]["kind"]>([
  "compare",
  "law",
  "value",
  "stays",
  "rests",
  "happens",
  "converges",
])

const neverFails = (check: Check, i: number, slips: readonly Trial[]): boolean =>
  check.points > 0 &&
  catchesSlips.has(check.rule.kind) &&
  slips.every(slip => slip.results[i]!.verdict === "met")

function refusesNoSlip(worksheet: Worksheet, check: ExaminedCheck, tried: number): Problem {
  return {
    code: "check-never-fails",
    text:
      tried === 0
        ? `For the check “${check.name}” no slip could be tried: none of the known ones can be made in these blanks.`
        : `None of the ${tried} slips that were tried is refused by the check “${check.name}”.`,
    todo: "Let it look at a series that a mistake in a blank changes, or give it no points.",
    where: { file: worksheet.file, line: worksheet.lines[`check:${check.name}`] ?? 1, column: 1 },
  }
}

function slipPasses(worksheet: Worksheet, slip: Trial & { blank: string }): Problem {
  return {
    code: "slip-passes",
    text: `The slip “${slip.name}” in the blank “${slip.blank}” meets every check.`,
    todo: "Add a check, or choose parameters for which this mistake shows.",
    where: {
      file: worksheet.file,
      line: worksheet.lines[`blank:${slip.blank}`] ?? 1,
      column: 1,
      blank: slip.blank,
    },
  }
}
