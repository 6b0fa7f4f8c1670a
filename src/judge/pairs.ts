import type { Worksheet } from "../worksheet/contract.ts"
import type { Reference, SlipMotion } from "./contract.ts"
import { settleReference } from "./pack.ts"
import { programOf, slipMotions } from "./reference.ts"
import { slipNamed } from "./slips/catalogue.ts"
import { pairHint, pairName } from "./slips/pair-words.ts"
import { type SlipProgram, slipPrograms } from "./slips/programs.ts"
import { applyEdits, type Script, scriptsOf } from "./slips/script.ts"
import { type JudgeTools, judgeSeed } from "./tools.ts"

/** Some seconds at a third of a microsecond a turn, once for a class … */
const turnsForPairs = 4_000_000
/** … and pairs at most. */
const mostPairs = 160

/** With one of these, which take away whatever stands there, two slips come to much that is another fault. */
const tooVague = new Set(["factor-missing", "factor-lost", "term-missing"])

interface Pair {
  readonly first: SlipProgram
  readonly second: SlipProgram
  readonly answers: Readonly<Record<string, string>>
}

/**
 * Motions that two slips at once make of the author's answers, in one blank or in two of one cell. Of slips only those that
 * move something by themselves are paired, the more particular first, as many as the budget of turns allows.
 * Two pairs of other names that move alike are left out both: none could be named for sure.
 *
 * @param budget turns that all pairs may take together, by the author's own: counted, so the same on every machine
 */
export async function pairMotions(
  worksheet: Worksheet,
  tools: JudgeTools,
  reference: Reference,
  budget = turnsForPairs,
): Promise<readonly SlipMotion[]> {
  const { checks } = worksheet.sheet
  const compiled = await tools.compile(programOf(worksheet, worksheet.answers))
  if (!compiled.ok) return []
  const right = await tools.run({
    compiled: compiled.compiled,
    parameters: reference.parameters,
    seed: judgeSeed,
  })
  const affordable = Math.min(mostPairs, Math.floor(budget / Math.max(1, right.turns)))
  const pairs = pairsOf(worksheet, reference).slice(0, affordable)
  const programs = pairs.map(({ first, second, answers }) => ({
    slip: pairName(first.slip, second.slip),
    blank: first.blank,
    answers,
  }))
  const motions = await slipMotions(worksheet, tools, reference.parameters, right, programs, "none")
  const settled = settleReference({ ...reference, slips: motions }, checks).slips
  return settled.map(motion => {
    const { first, second } = pairs.find(
      pair =>
        pairName(pair.first.slip, pair.second.slip) === motion.slip && pair.first.blank === motion.blank,
    )!
    const parts = [first, second].map(({ slip }) => ({ slip, hint: slipNamed(slip)?.hint ?? "" }))
    return { ...motion, hint: pairHint(parts[0]!.hint, parts[1]!.hint), parts }
  })
}

/** All pairs of slips that move something, those first whose slips stand first in the catalogue. */
function pairsOf(worksheet: Worksheet, reference: Reference): Pair[] {
  const kept = new Set(reference.slips.map(({ slip, blank }) => `${slip} ${blank}`))
  const singles = slipPrograms(worksheet).filter(
    ({ slip, blank }) => kept.has(`${slip} ${blank}`) && !tooVague.has(slip),
  )
  const program = programOf(worksheet, worksheet.answers)
  const scripts = new Map(scriptsOf(program).map(script => [script.blank.name, script]))
  const cells = new Map(program.blanks.map(({ name, cell }) => [name, cell]))
  // The place within its blank: so the first slips of all blanks come before the last ones of any.
  const places = singles.map(
    ({ blank }, i) => singles.slice(0, i).filter(other => other.blank === blank).length,
  )
  const out: { readonly rank: number; readonly pair: Pair }[] = []
  singles.forEach((first, i) => {
    for (let j = i + 1; j < singles.length; j++) {
      const second = singles[j]!
      // Slips in two cells are told apart by the cells.
      if (cells.get(first.blank) !== cells.get(second.blank)) continue
      const answers = together(worksheet, first, second, scripts.get(first.blank)!)
      if (answers !== null) out.push({ rank: places[i]! + places[j]!, pair: { first, second, answers } })
    }
  })
  return out.sort((a, b) => a.rank - b.rank).map(({ pair }) => pair)
}

/** The author's answers with both slips; null where they change the same place. */
function together(
  { answers }: Worksheet,
  first: SlipProgram,
  second: SlipProgram,
  script: Script,
): Record<string, string> | null {
  const { blank } = first
  if (blank !== second.blank)
    return { ...answers, [blank]: first.answers[blank]!, [second.blank]: second.answers[second.blank]! }
  const apart = first.edits.every(a => second.edits.every(b => a.to < b.from || b.to < a.from))
  return apart ? { ...answers, [blank]: applyEdits(script, [...first.edits, ...second.edits]) } : null
}
