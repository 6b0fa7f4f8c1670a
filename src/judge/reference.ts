import { assembleProgram } from "../cell/assemble.ts"
import type { Compiled } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import { defaultLimits, type Limits, type Recording, type RunOutcome } from "../run/contract.ts"
import type { Worksheet } from "../worksheet/contract.ts"
import type { Reference, Sensitive, SlipMotion } from "./contract.ts"
import { judgedRun } from "./evidence.ts"
import { recordingsUnlike, rowsInPicture } from "./likeness.ts"
import { neededSeries, restrict } from "./needed.ts"
import { hairs, perturbed, sensitiveCells, unsettledCells } from "./sensitivity.ts"
import { slipNamed } from "./slips/catalogue.ts"
import { type SlipProgram, slipPrograms } from "./slips/programs.ts"
import { inTurns } from "./thrifty.ts"
import { firstFactors, type JudgeTools, judgeSeed } from "./tools.ts"
import { endedByMachine } from "./watch.ts"
import { wishOf } from "./wish.ts"

/** A reference that cannot be made: the author's own answers do not compile or do not run. */
export class NoReference extends Error {
  constructor(readonly problem: Problem) {
    super(`${problem.text} ${problem.todo}`)
    this.name = "NoReference"
  }
}

/** A wrong answer may run for this many times as long as the right one before it is cut. */
const patience = 3
const leastTurns = 20_000
const leastRecorded = 200_000
/** A slip that runs on is cut off and has a motion; one that the cell language refuses has its own message already. */
const cutOff = new Set([
  "endless-loop",
  "recorded-too-much",
  "time-step-too-long",
  "became-not-finite",
  "grew-without-bound",
])
/** Motions nearer than this part of the extent are the same. */
const same = 1e-6

/**
 * The motion of the author's own answers at these parameters, at the given time step and shorter ones, and the
 * motions that slips make of it. Slips that change nothing here, or that move exactly as an earlier one, are
 * left out.
 *
 * @param slips false for hidden draws, where only right or wrong counts
 * @throws NoReference when the author's answers do not run
 */
export async function buildReference(
  worksheet: Worksheet,
  tools: JudgeTools,
  parameters: Readonly<Record<string, number>>,
  { slips = true }: { readonly slips?: boolean } = {},
): Promise<Reference> {
  const compiled = await compileAnswers(worksheet, tools, worksheet.answers)
  const excerpt = wishOf(worksheet.sheet.checks)
  // whole, as how much is recorded in all bounds what slips may record
  const first = await tools.run({ compiled, parameters, seed: judgeSeed })
  if (first.problem !== null) throw new NoReference(first.problem)
  const factors = [1]
  const runs = [first.recordings]
  const shorter = first.timeStepFound ? firstFactors.slice(1) : []
  const outcomes = await Promise.all(
    shorter.map(factor => tools.run(judgedRun(compiled, parameters, judgeSeed, factor, excerpt))),
  )
  for (const [i, outcome] of outcomes.entries()) {
    // what the machine ended says nothing about the motion, and must not make the verdicts milder
    if (endedByMachine(outcome.problem)) throw new NoReference(outcome.problem!)
    if (outcome.problem !== null) break
    factors.push(shorter[i]!)
    runs.push(outcome.recordings)
  }
  // Two steps alone show no order: then only the given one counts.
  const refined = factors.length === firstFactors.length
  const sensitive = refined
    ? await sensitivityOf(worksheet, tools, compiled, parameters, { factors, runs })
    : []
  return {
    parameters: { ...parameters },
    factors: refined ? factors : [1],
    runs: refined ? runs : [first.recordings],
    ...(sensitive.length === 0 ? {} : { sensitive }),
    slips: slips ? await slipMotions(worksheet, tools, parameters, first) : [],
  }
}

/**
 * Cells with a chaotic motion. Only where shorter steps leave it open where the reference goes is it run again with its
 * start changed by a hair: parameters and, for programs that read none, the time step.
 */
async function sensitivityOf(
  { sheet }: Worksheet,
  tools: JudgeTools,
  compiled: Compiled,
  parameters: Readonly<Record<string, number>>,
  reference: Pick<Reference, "factors" | "runs">,
): Promise<Sensitive[]> {
  const open = unsettledCells(sheet.checks, reference)
  if (open.length === 0) return []
  const moved: (readonly Recording[])[] = []
  for (const hair of hairs) {
    const outcome = await tools.run({
      compiled,
      parameters: perturbed(parameters, sheet, hair),
      seed: judgeSeed,
      stepFactor: 1 + hair,
      excerpt: wishOf(sheet.checks),
    })
    moved.push(outcome.recordings)
  }
  return sensitiveCells(sheet.checks, open, reference.runs[0]!, moved)
}

async function compileAnswers(
  worksheet: Worksheet,
  tools: JudgeTools,
  answers: Readonly<Record<string, string>>,
): Promise<Compiled> {
  const result = await tools.compile(programOf(worksheet, answers))
  if (!result.ok) throw new NoReference(result.problems[0]!)
  return result.compiled
}

export function programOf({ sheet }: Pick<Worksheet, "sheet">, answers: Readonly<Record<string, string>>) {
  const names = sheet.parameters.map(parameter => parameter.name)
  return assembleProgram(sheet.cells, answers, names, sheet.timeStep)
}

type WrongProgram = Pick<SlipProgram, "slip" | "blank" | "answers">

/**
 * The motions that wrong answers make, those left out that change nothing.
 *
 * @param alikes which of several that move alike are kept: the first, or none where their names differ
 */
export async function slipMotions(
  worksheet: Worksheet,
  tools: JudgeTools,
  parameters: Readonly<Record<string, number>>,
  right: Pick<RunOutcome, "turns" | "recordings">,
  programs: readonly WrongProgram[] = slipPrograms(worksheet),
  alikes: "first" | "none" = "first",
): Promise<SlipMotion[]> {
  const limits: Partial<Limits> = {
    turns: Math.min(defaultLimits.turns, Math.max(leastTurns, patience * right.turns)),
    recorded: Math.max(
      leastRecorded,
      patience * right.recordings.reduce((sum, r) => sum + r.rows * r.width, 0),
    ),
  }
  const excerpt = wishOf(worksheet.sheet.checks)
  const made = await inTurns(programs, async (program): Promise<SlipMotion[]> => {
    const result = await tools.compile(programOf(worksheet, program.answers))
    if (!result.ok) return []
    const outcome = await tools.run({
      compiled: result.compiled,
      parameters,
      seed: judgeSeed,
      limits,
      excerpt,
    })
    if (outcome.problem !== null && !cutOff.has(outcome.problem.code)) return []
    const recordings = keptOf(worksheet, outcome.recordings, right.recordings)
    const hint = slipNamed(program.slip)?.hint ?? ""
    return [{ slip: program.slip, blank: program.blank, hint, recordings }]
  })
  const motions: SlipMotion[] = []
  const unclear = new Set<SlipMotion>()
  for (const motion of made.flat()) {
    const { recordings } = motion
    if (recordings.length === 0 || alike(recordings, right.recordings, right.recordings)) continue
    const other = motions.find(one => alike(one.recordings, recordings, right.recordings))
    if (other === undefined) motions.push(motion)
    else if (alikes === "none" && other.slip !== motion.slip) unclear.add(other)
  }
  const kept = motions.filter(motion => !unclear.has(motion))
  return kept.map(motion => ({ ...motion, recordings: changedOf(motion.recordings, right.recordings) }))
}

/** Only the series that move otherwise than the reference's: what is left out, the slip does not touch. */
function changedOf(recordings: readonly Recording[], right: readonly Recording[]): Recording[] {
  return recordings.flatMap(recording => {
    const reference = right.find(r => r.cell === recording.cell)
    const names = recording.series
      .map(series => series.name)
      .filter(name => recordingsUnlike(recording, reference, reference, name, false, same) > same)
    return names.length === 0 ? [] : [restrict(recording, names)]
  })
}

/** Of each cell the series that checks read, until the motion has run far out of the picture. */
function keptOf(
  { sheet }: Worksheet,
  recordings: readonly Recording[],
  right: readonly Recording[],
): Recording[] {
  return recordings.flatMap(recording => {
    const names = neededSeries(sheet.checks, recording)
    const reference = right.find(r => r.cell === recording.cell)
    if (names.length === 0 || reference === undefined) return []
    const kept = restrict(recording, names)
    if (kept.rows === 0) return []
    const rows = rowsInPicture(kept, reference)
    return [{ ...kept, rows, data: kept.data.slice(0, rows * kept.width) }]
  })
}

/** Every series of every cell moves the same. */
function alike(a: readonly Recording[], b: readonly Recording[], reference: readonly Recording[]): boolean {
  if (a.length !== b.length && b !== reference) return false
  return a.every(recording => {
    const other = b.find(r => r.cell === recording.cell)
    const measure = reference.find(r => r.cell === recording.cell)
    return recording.series.every(
      series => recordingsUnlike(recording, other, measure, series.name, false, same) <= same,
    )
  })
}
