import type { Problem } from "../cell/problem.ts"
import type { CheckResult } from "../judge/contract.ts"
import type { Marked } from "./contract.ts"
import type { Reader } from "./reader.ts"
import { escaped, stranger, strangerText } from "./text.ts"

/** What a student can do, where the marker's own words speak to the teacher. */
const studentTodos: Readonly<Record<string, string>> = {
  "answer-id-shared": "Tell your teacher which file is yours, and look whether the id in it is your own.",
  "answer-superseded":
    "If another file should count, say so to your teacher, or hand that one in again, saved anew.",
  "answer-other-version": "Copy your lines into the version that you were given last, and hand in again.",
  "answer-other-digest": "Copy your lines into the worksheet that you were given last, and hand in again.",
  "answer-other-worksheet": "Hand in the answer file of this worksheet.",
  "answer-earlier-version": "",
  "answer-from-future": "That time was not relied on. Look whether the clock of your computer is right.",
}

const newerCounts: Pick<Problem, "text" | "todo"> = {
  text: "The student handed in a newer file, which counts; this one was left aside.",
  todo: "If this is the one that should count, mark it without the other.",
}

const namesItself: Pick<Problem, "text" | "todo"> = {
  text: "The reason names the file, and is left out here.",
  todo: "Read it in results.csv.",
}

/** A problem in words that tell nobody's name, id or file. */
export function nameless(
  problem: Problem,
  { file, student }: Pick<Marked["result"], "file" | "student">,
): Problem {
  if (problem.code === "answer-superseded") return { ...problem, ...newerCounts }
  const told = `${problem.text} ${problem.todo}`
  const quoted = [student?.id ?? "", student?.name ?? ""].some(
    name => name.trim() !== "" && told.includes(`“${name.trim().slice(0, 60)}`),
  )
  const named = ["file", "zip"].includes(problem.code) || told.includes(file)
  return quoted || named ? { ...problem, ...namesItself } : problem
}

/** What ended the program: said once, and not again at each check that could not run. */
export function haltsOf({ checks, problems }: Marked["result"]): Problem[] {
  return problems.filter(
    problem =>
      problem.code !== "empty-blank" &&
      checks.some(check => check.verdict === "could not run" && check.message.includes(problem.text)),
  )
}

/** What a check that could not run says beyond what ended the program. */
export function messageBeyond(check: CheckResult, halts: readonly Problem[]): string {
  if (check.verdict !== "could not run") return check.message
  return halts
    .reduce((message, { text, todo }) => message.replace(text, "").replace(todo, ""), check.message)
    .replace(/\s+/g, " ")
    .trim()
}

/** A problem that a check's feedback says already is not said twice. */
function isTold({ code, text, where }: Problem, checks: readonly CheckResult[]): boolean {
  return checks.some(
    ({ message }) =>
      message.includes(text) ||
      // several blanks that are not filled stand in one sentence
      (code === "empty-blank" &&
        where?.blank !== undefined &&
        message.includes("not filled yet") &&
        message.includes(`“${where.blank}”`)),
  )
}

/** What is said of a file as a whole, before its checks. */
export function problemsHtml({ result, work }: Marked, reader: Reader): string {
  const { checks } = result
  const halts = haltsOf(result)
  const items = result.problems
    // that a newer file counts is no news to who handed it in, nor without a name to whom it concerns
    .filter(problem => problem.code !== "answer-newest" || reader === "teacher")
    .filter(problem => halts.includes(problem) || !isTold(problem, checks))
    .map(problem => {
      const { code, text, todo, where, excerpt } =
        reader === "teacher without names" ? nameless(problem, result) : problem
      const own = reader === "student" ? (studentTodos[code] ?? todo) : todo
      const place =
        where?.cell === undefined ? "" : placeHtml(where, excerpt ?? "", work?.blanks ?? {}, reader)
      return `<li>${stranger(text)}${own === "" ? "" : ` <span class="todo">${stranger(own)}</span>`}${place}</li>`
    })
  return items.length === 0 ? "" : `<ul class="problems">${items.join("")}</ul>`
}

/** “line 1 of your lines in update: p = p + Fnet * dt)” */
function placeHtml(
  { cell, blank, line }: NonNullable<Problem["where"]>,
  excerpt: string,
  blanks: Readonly<Record<string, string>>,
  reader: Reader,
): string {
  const whose = reader === "student" ? "your lines" : "the lines"
  const own = blank === undefined ? -1 : lineOf(Object.hasOwn(blanks, blank) ? blanks[blank]! : "", excerpt)
  const place =
    blank === undefined
      ? `cell ${escaped(cell ?? "")}, line ${line}`
      : `${own < 0 ? "" : `line ${own} of `}${whose} in ${escaped(blank)}`
  return `<span class="place">${place}${excerpt === "" ? "" : `: <code>${strangerText(excerpt)}</code>`}</span>`
}

/** Which line of a listing an excerpt is, from 1, empty lines in front not counted; -1 where it is none or several. */
function lineOf(text: string, excerpt: string): number {
  const lines = text.replace(/^(?:[ \t]*\n)+/, "").split("\n")
  const places = lines.flatMap((line, place) => (line.trim() === excerpt.trim() ? [place + 1] : []))
  return places.length === 1 ? places[0]! : -1
}
