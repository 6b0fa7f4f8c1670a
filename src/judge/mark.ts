import type { Compiled, CompileResult, Program } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { RunRequest } from "../run/contract.ts"
import type { AnswerFile, StudentSheet, Worksheet } from "../worksheet/contract.ts"
import { type AheadTool, ahead, surelyAsked } from "./ahead.ts"
import { coincides, excerptFor } from "./coincides.ts"
import type { CheckResult, Evidence, Judgement, Reference } from "./contract.ts"
import { drawParameters, drawPlaces, ownParameters } from "./draws.ts"
import { collectEvidence, evidenceFor, judgedRun, noEvidence } from "./evidence.ts"
import { lookAt } from "./look.ts"
import { createMemo, type Memo } from "./memo.ts"
import { numberWords, withUnit } from "./quantity.ts"
import { markQuestions } from "./questions.ts"
import { NoReference, programOf } from "./reference.ts"
import type { References } from "./references.ts"
import { judgeSheet } from "./sheet.ts"
import { type JudgeTools, judgeSeed } from "./tools.ts"
import { unfilledBlanks } from "./unfilled.ts"
import { endedByMachine, watch } from "./watch.ts"

/** Marks answers to one worksheet. */
export interface Marker<Kept> {
  /**
   * Every check at the sheet's own parameters, then those that are met also at hidden draws, and the questions
   * that have keys. The same worksheet, student and answers give the same judgement, byte for byte.
   *
   * @throws NoReference when the worksheet's own answers do not run
   */
  mark(answers: AnswerFile): Promise<{ readonly judgement: Judgement; readonly kept: Kept }>
}

/** What is known of one text at the sheet's own parameters. */
interface Own<Kept> {
  readonly result: CompileResult
  readonly checks: readonly CheckResult[]
  /** made by the reference's own method, as far as hidden draws will ask */
  readonly coincident: boolean
  readonly problems: readonly Problem[]
  readonly unsure: Problem | null
  readonly kept: Kept
}

/** What is known of one text at a hidden draw. */
interface AtDraw {
  readonly results: readonly CheckResult[]
  readonly unsure: Problem | null
}

/** Texts of the class that are remembered. */
const textsKept = 256

/**
 * A marker that judges equal texts once: what was found of a text at the sheet's own values, and at each hidden
 * draw, is remembered for the last few hundred.
 *
 * @param references kept by the caller over all answers of a batch
 * @param keep takes what is wanted later out of the evidence at the sheet's own parameters, such as motions to draw
 */
export function createMarker<Kept>(
  worksheet: Worksheet,
  tools: JudgeTools,
  references: References,
  keep: (evidence: Evidence, reference: Reference) => Kept,
): Marker<Kept> {
  const own = createMemo<Own<Kept>>(textsKept)
  const drawn = createMemo<AtDraw>(8 * textsKept)
  return {
    async mark(answers) {
      const program = programOf(worksheet, answers.answers)
      const { result, checks, coincident, problems, unsure, kept } = await own.get(program.text, () =>
        markOwn(worksheet, program, tools, references, keep),
      )
      const tried = result.ok
        ? await tryDraws({
            worksheet,
            checks,
            compiled: result.compiled,
            coincident,
            student: answers.student,
            tools,
            references,
            known: drawn,
          })
        : { standing: checks, unsure: null }
      const all = [...tried.standing, ...markQuestions(worksheet, answers)]
      const doubt = unsure ?? tried.unsure
      const judgement = {
        points: total(all.map(check => check.points)),
        outOf: total(all.map(check => check.outOf)),
        checks: all,
        problems: doubt === null || problems.some(endedByMachine) ? problems : [...problems, doubt],
      }
      return { judgement, kept }
    },
  }
}

/** Marks one answer by itself: see Marker. */
export async function markAnswer(
  worksheet: Worksheet,
  answers: AnswerFile,
  tools: JudgeTools,
  references: References,
): Promise<Judgement> {
  const { judgement } = await createMarker(worksheet, tools, references, () => null).mark(answers)
  return judgement
}

async function markOwn<Kept>(
  worksheet: Worksheet,
  program: Program,
  tools: JudgeTools,
  references: References,
  keep: (evidence: Evidence, reference: Reference) => Kept,
): Promise<Own<Kept>> {
  const { sheet } = worksheet
  const parameters = ownParameters(sheet)
  const result = await tools.compile(program)
  const reference = await references.get(worksheet, tools, parameters, true)
  let evidence = noEvidence(result.ok ? null : (result.problems[0] ?? null), unfilledBlanks(program))
  const watched = watch(tools)
  if (result.ok) {
    const runs = ahead(watched, result.compiled)
    runs.begin(surelyAsked(sheet.checks, result.compiled, reference))
    evidence = (await collectEvidence(sheet, result.compiled, runs, reference, { look: lookAt(sheet) }))!
  }
  const checks = judgeSheet(sheet, reference, evidence)
  return {
    result,
    checks: unexplained(checks, evidence)
      ? judgeSheet(sheet, reference, evidence, await references.pairs(worksheet, tools))
      : checks,
    coincident: sheet.checks.every(
      check => check.draws === 0 || coincides(sheet, check, reference, evidence),
    ),
    problems: problemsOf(result.ok ? [] : result.problems, evidence.problem, evidence.unfilled),
    unsure: watched.unsure(),
    kept: keep(evidence, reference),
  }
}

/** A wrong motion that no single slip explains, of an answer that is complete and runs: then two at once are tried. */
const unexplained = (checks: readonly CheckResult[], { problem, unfilled }: Evidence): boolean =>
  problem === null &&
  unfilled.length === 0 &&
  checks.some(check => check.verdict === "not met" && check.slip === null)

interface Drawn {
  readonly worksheet: Worksheet
  /** verdicts at the sheet's own values */
  readonly checks: readonly CheckResult[]
  readonly compiled: Compiled
  /** whether one run a draw will probably do */
  readonly coincident: boolean
  readonly student: AnswerFile["student"]
  readonly tools: JudgeTools
  readonly references: References
  readonly known: Memo<AtDraw>
}

/** Checks that are met at the sheet's own values must be met at others too: there a copied curve shows. */
async function tryDraws({
  worksheet,
  checks,
  compiled,
  coincident,
  student,
  tools,
  references,
  known,
}: Drawn): Promise<{ standing: CheckResult[]; unsure: Problem | null }> {
  const { sheet } = worksheet
  const standing = [...checks]
  const most = Math.max(0, ...sheet.checks.map(check => check.draws))
  if (!sheet.parameters.some(parameter => parameter.vary)) return { standing, unsure: null }
  const places = drawPlaces(worksheet, student, most)
  const askedOf = (i: number): StudentSheet["checks"] =>
    sheet.checks.filter((check, j) => check.draws > i && standing[j]!.verdict === "met")
  const keyOf = (i: number): string =>
    JSON.stringify([places[i], askedOf(i).map(check => check.name), compiled.program.text])
  const referenceOf = (i: number): Promise<Reference | null> =>
    references.get(worksheet, tools, drawParameters(worksheet, places[i]!), false).catch(authorsFault)
  const watched = watch(tools)
  const runs = ahead(watched, compiled)
  let unsure: Problem | null = null
  const begin = async (i: number): Promise<void> => {
    const asked = askedOf(i)
    if (asked.length === 0 || known.has(keyOf(i))) return
    const reference = await referenceOf(i)
    if (reference === null) return
    runs.begin(
      coincident ? [excerptRun(asked, compiled, reference)] : surelyAsked(asked, compiled, reference),
    )
  }
  // While one draw is judged the next is under way; of short runs all are.
  const together = coincident ? places.length : 2
  let begun = 0
  for (const i of places.keys()) {
    const asked = askedOf(i)
    if (asked.length === 0) break
    const reference = await referenceOf(i)
    // Where the author's own answers stop, nothing can be asked of the student's.
    if (reference === null) continue
    while (begun < Math.min(i + together, places.length)) await begin(begun++)
    const { results, ...at } = await known.get(keyOf(i), async () => ({
      results: await judgeDraw({ ...sheet, checks: asked }, compiled, coincident, runs, reference),
      unsure: watched.unsure(),
    }))
    unsure ??= at.unsure
    for (const result of results) {
      if (result.verdict === "met") continue
      const at = sheet.checks.findIndex(check => check.name === result.name)
      standing[at] = {
        ...standing[at]!,
        verdict: "not met",
        points: 0,
        departsAt: result.departsAt,
        message: drawWords(sheet, reference.parameters, result.message),
      }
    }
  }
  return { standing, unsure }
}

/** A run at a draw of which no more comes back than shows whether the motion is the reference's own. */
const excerptRun = (checks: StudentSheet["checks"], compiled: Compiled, reference: Reference): RunRequest =>
  judgedRun(compiled, reference.parameters, judgeSeed, 1, excerptFor(checks, reference))

/** Verdicts of the sheet's checks at a draw; of motions that are the reference's own, none need be given. */
async function judgeDraw(
  part: StudentSheet,
  compiled: Compiled,
  coincident: boolean,
  runs: AheadTool,
  reference: Reference,
): Promise<readonly CheckResult[]> {
  if (coincident) {
    const outcome = await runs.run(excerptRun(part.checks, compiled, reference))
    const given = await evidenceFor(compiled, runs, reference.parameters, judgeSeed, [1], outcome)
    if (part.checks.every(check => coincides(part, check, reference, given))) return []
  }
  const evidence = (await collectEvidence(part, compiled, runs, reference, { look: lookAt(part) }))!
  // Open blanks that these checks hang on have been told at the sheet's own values.
  return judgeSheet(part, reference, { ...evidence, unfilled: [] })
}

function authorsFault(cause: unknown): null {
  if (cause instanceof NoReference && !endedByMachine(cause.problem)) return null
  throw cause
}

/** How feedback starts where only a hidden draw shows the fault: the motion at the sheet's own values is right. */
export const rightOnlyHere = "With the values on the sheet it comes out right"

function drawWords(sheet: StudentSheet, parameters: Readonly<Record<string, number>>, seen: string): string {
  const values = sheet.parameters
    .filter(parameter => parameter.vary)
    .map(
      ({ name, unit }) =>
        `${name} = ${unit === "1" ? numberWords(parameters[name]!) : withUnit(parameters[name]!, unit)}`,
    )
  return `${rightOnlyHere}, but not with others, such as ${values.join(", ")}: the lines must give the motion for every value that the parameters may have. ${seen}`
}

/** Byte-safe sum of points such as 0.1: rounded to a millionth. */
const total = (points: readonly number[]): number => Math.round(points.reduce((a, b) => a + b, 0) * 1e6) / 1e6

function problemsOf(
  compile: readonly Problem[],
  run: Problem | null,
  unfilled: readonly Problem[],
): readonly Problem[] {
  const stopped = run === null || compile.some(problem => problem.text === run.text) ? [] : [run]
  const open = unfilled.filter(
    problem => ![...compile, ...stopped].some(other => other.text === problem.text),
  )
  return [...open, ...compile, ...stopped]
}
