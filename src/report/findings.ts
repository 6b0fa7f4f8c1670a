import { slipNamed } from "../judge/slips/catalogue.ts"
import type { Question, QuestionKey, StudentSheet } from "../worksheet/contract.ts"
import type { AnswerCount, ClassTally, Hints } from "./tally.ts"
import { grouped, listed } from "./text.ts"

/** One thing worth taking up in class. Plain text, not yet HTML, of the worksheet's author and of ours alone. */
export interface Finding {
  readonly count: number
  /** what was seen, one sentence */
  readonly seen: string
  /** the question it was seen in; "" for others */
  readonly about: string
  /** what can be said or asked; "" where nobody has written anything */
  readonly say: string
  /** places in the register; empty where the answers tell nobody's name */
  readonly who: readonly number[]
}

/** Things that are the same in fewer answers than this are not the class's, save in a small class. */
const mostFindings = 6

/** What a class got wrong, the most frequent first, in sentences that can be said in front of it. */
export function findingsOf(sheet: StudentSheet, keys: readonly QuestionKey[], tally: ClassTally): Finding[] {
  const findings = [
    ...slipFindings(tally),
    ...questionFindings(sheet, keys, tally),
    ...otherFindings(sheet, tally),
    ...runFindings(tally),
  ]
  return findings
    .filter(finding => finding.count > 0)
    .sort((a, b) => b.count - a.count)
    .slice(0, mostFindings)
}

export const slipSentence = (slip: string): string => slipNamed(slip)?.teacher ?? slip

function slipFindings(tally: ClassTally): Finding[] {
  return tally.slips.map(([slip, who]) => ({
    count: who.length,
    seen: slipSentence(slip),
    about: "",
    say: mostTold(tally.hints.get(slip)),
    who,
  }))
}

/** Of several hints that students read, the one of most checks. */
function mostTold(hints: Hints | undefined): string {
  return [...(hints ?? [])].sort(([, a], [, b]) => b.size - a.size)[0]?.[0] ?? ""
}

function questionFindings(sheet: StudentSheet, keys: readonly QuestionKey[], tally: ClassTally): Finding[] {
  return sheet.questions.flatMap(question => {
    const wrong = tally.checks.get(question.name)?.counts["not met"] ?? 0
    const answers = tally.answers.get(question.name)
    const unanswered = answers?.none ?? 0
    if (question.kind === "text" || wrong - unanswered <= 0) return []
    const key = keys.find(candidate => candidate.name === question.name)
    const words = commonWords(question, [...(answers?.given ?? [])], wrong - unanswered)
    return [
      {
        count: wrong - unanswered,
        seen: `A wrong answer to “${question.name}”${words}.`,
        about: plainAsk(question.ask),
        say: key?.why ?? "",
        who: [],
      },
    ]
  })
}

/** The wrong answer that was given most often; "" where each was given once. */
function commonWords(
  { choices }: Question,
  given: readonly (readonly [string, AnswerCount])[],
  wrong: number,
): string {
  const [common] = given.filter(([, count]) => count.wrong > 0).sort(([, a], [, b]) => b.wrong - a.wrong)
  if (common === undefined) return ""
  const [text, count] = common
  const said = `“${choices.find(choice => choice.key === text)?.text ?? text.slice(0, 40)}”`
  if (wrong === 1) return `: ${said}`
  return count.wrong === 1 ? "" : `, most often ${said} (${grouped(count.wrong)})`
}

/** TeX of short equations reads well enough without its dollars. */
const plainAsk = (ask: string): string => ask.replace(/\$([^$]*)\$/g, "$1").replace(/\*+/g, "")

/** Wrong motions that are nobody's known slip, by the checks that they miss. */
function otherFindings(sheet: StudentSheet, tally: ClassTally): Finding[] {
  const groups = new Map<string, { who: readonly number[]; names: string[]; say: string }>()
  for (const check of sheet.checks) {
    const who = tally.checks.get(check.name)?.unexplained ?? []
    if (who.length === 0) continue
    const key = who.join()
    const group = groups.get(key)
    if (group === undefined) groups.set(key, { who, names: [check.name], say: check.hint })
    else group.names.push(check.name)
  }
  return [...groups.values()].map(({ who, names, say }) => ({
    count: who.length,
    seen: `Wrong in ${listed(names.map(name => `“${name}”`))}, in ways that are no known slip: look at their pictures.`,
    about: "",
    say,
    who,
  }))
}

function runFindings(tally: ClassTally): Finding[] {
  const who = [...new Set(tally.stopped.flatMap(([, places]) => places))].sort((a, b) => a - b)
  const reasons = tally.stopped.map(([code, places]) => `${places.length} ${code.replaceAll("-", " ")}`)
  return [
    {
      count: tally.open.length,
      seen: "A blank was left empty.",
      about: "",
      say: "",
      who: tally.open,
    },
    {
      count: who.length,
      seen: `The program could not run to its end: ${reasons.slice(0, 4).join(", ")}${reasons.length > 4 ? " and others" : ""}.`,
      about: "",
      say: "",
      who,
    },
  ]
}
