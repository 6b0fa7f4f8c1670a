import { rightOnlyHere } from "../judge/mark.ts"
import { slipNamed } from "../judge/slips/catalogue.ts"
import type { Question } from "../worksheet/contract.ts"
import { setLine } from "../worksheet/prose.ts"
import type { Marked, ReportSubject } from "./contract.ts"
import { mathOnly } from "./equations.ts"
import { figureKey, overlay } from "./figure.ts"
import { frame } from "./frame.ts"
import { pointsWords, verdictMark, verdictWord } from "./marks.ts"
import type { Reader } from "./reader.ts"
import { isSuperseded } from "./tally.ts"
import { escaped, nameHtml, shortName, stranger, strangerText } from "./text.ts"
import { haltsOf, messageBeyond, problemsHtml } from "./told.ts"

/**
 * What one student wrote, and beside it the feedback in the judge's own order, with the motion over the
 * reference's. The same for both readers, save that the teacher also reads which slip it is.
 */
export function workHtml(subject: ReportSubject, { result, work }: Marked, reader: Reader): string {
  const feedback = [
    problemsHtml({ result, work }, reader),
    work === null ? "" : checksHtml(subject, { result, work }, reader),
  ].join("")
  const code = work === null ? "" : codeHtml(subject, work.blanks, reader)
  return `<div class="beside"><div class="wrote">${code}</div><div class="feedback">${feedback}</div></div>${work === null ? "" : questionsHtml(subject, { result, work }, reader)}`
}

function checksHtml(subject: ReportSubject, { result, work }: Marked, reader: Reader): string {
  const drawn = new Set<string>()
  const named = new Set<string>()
  const checks = subject.sheet.checks.flatMap(check => {
    const found = result.checks.find(candidate => candidate.name === check.name)
    return found === undefined ? [] : [{ check, found }]
  })
  const halts = haltsOf(result)
  const allMet = checks.every(({ found }) => found.verdict === "met")
  const items = checks.map(({ check, found }) => {
    const key = figureKey(check)
    // One picture of the same curves is enough; what is met needs none, unless there is nothing else to see.
    const wanted =
      key !== null &&
      !drawn.has(key) &&
      (allMet ? drawn.size === 0 : found.verdict !== "met") &&
      // the reference alone says nothing about a program that did not run
      (found.verdict !== "could not run" || (work?.motions ?? []).some(({ cell }) => cell === check.cell))
    const onlyElsewhere = found.message.startsWith(rightOnlyHere)
    const figure = wanted
      ? overlay(
          check,
          work?.motions ?? [],
          reader !== "student" || maySeeReference(subject, check.cell, work?.blanks ?? {})
            ? subject.reference
            : [],
          onlyElsewhere ? null : found.departsAt,
        )
      : ""
    if (figure !== "" && key !== null) drawn.add(key)
    const slip =
      reader !== "student" && found.slip !== null && !named.has(found.slip)
        ? slipNamed(found.slip)
        : undefined
    if (slip !== undefined) named.add(slip.name)
    const message = messageBeyond(found, halts)
    return `<li>
<p class="check-head">${verdictMark(found.verdict)}<span class="says">${stranger(check.says === "" ? check.name : check.says)}</span>${verdictWord(found.verdict)} <span class="points">${pointsWords(found.points, found.outOf)}</span></p>
${slip === undefined ? "" : `<p class="slip"><b>${escaped(slip.name)}</b> ${escaped(slip.teacher)}</p>`}
${message === "" ? "" : `<p class="message">${stranger(message)}</p>`}
${figure}${figure !== "" && onlyElsewhere ? '<p class="aside">The picture shows the values on the sheet.</p>' : ""}
</li>`
  })
  return `<ul class="checks">${items.join("")}</ul>`
}

/**
 * Whether a student may see the author's motion beside their own: as the worksheet says, always, never, or once
 * something of their own stands in each of the cell's blanks.
 */
function maySeeReference(
  { sheet }: ReportSubject,
  cell: string,
  blanks: Readonly<Record<string, string>>,
): boolean {
  const { reference = "shown" } = sheet
  if (reference !== "tried") return reference === "shown"
  const segments = sheet.cells.find(candidate => candidate.name === cell)?.segments ?? []
  return segments.every(segment => {
    if (segment.kind !== "blank") return true
    const text = Object.hasOwn(blanks, segment.name) ? blanks[segment.name]! : segment.starter
    return text.trim() !== "" && text !== segment.starter
  })
}

function codeHtml(
  { sheet }: ReportSubject,
  blanks: Readonly<Record<string, string>>,
  reader: Reader,
): string {
  const figures = sheet.cells.flatMap(cell =>
    cell.segments.flatMap(segment => {
      if (segment.kind !== "blank") return []
      const text = Object.hasOwn(blanks, segment.name) ? outdented(blanks[segment.name]!) : ""
      const prompt = segment.prompt === "" ? segment.name : segment.prompt
      const name = `${reader === "student" ? "Your lines" : "Lines"} in ${segment.name}`
      const listing = text.trim() === "" ? '<p class="empty">Left empty.</p>' : listingHtml(name, text)
      return [
        `<figure class="listing"><figcaption>${stranger(prompt)}${prompt === segment.name ? "" : ` <code>${escaped(segment.name)}</code>`}</figcaption>${listing}</figure>`,
      ]
    }),
  )
  return figures.join("")
}

/** Listings beyond this scroll in a window of their own, which the keyboard can reach. */
const longListing = 1500

function listingHtml(name: string, text: string): string {
  const window =
    text.length > longListing ? ` class="long" role="region" tabindex="0" aria-label="${escaped(name)}"` : ""
  return `<pre${window}><code>${strangerText(text)}</code></pre>`
}

/** Without the indent that all lines share, and without empty lines at the ends. */
function outdented(text: string): string {
  const lines = text.replace(/^(?:[ \t]*\n)+|\s+$/g, "").split("\n")
  const indents = lines.filter(line => line.trim() !== "").map(line => /^ */.exec(line)![0].length)
  const shared = indents.length === 0 ? 0 : Math.min(...indents)
  return lines.map(line => line.slice(shared)).join("\n")
}

function questionsHtml({ sheet }: ReportSubject, { result, work }: Marked, reader: Reader): string {
  if (sheet.questions.length === 0) return ""
  const items = sheet.questions.map(question => {
    const found = result.checks.find(candidate => candidate.name === question.name)
    const given = work?.questions[question.name]
    const unread =
      String(given ?? "").trim() === ""
        ? ""
        : `<p class="verdict"><span class="word">${reader === "student" ? "read by your teacher" : "for you to read"}</span></p>`
    const verdict =
      found === undefined
        ? unread
        : `<p class="verdict">${verdictMark(found.verdict)}${verdictWord(found.verdict)} <span class="points">${pointsWords(found.points, found.outOf)}</span> <span class="message">${stranger(found.message)}</span></p>`
    return `<dt>${asked(question)}</dt><dd>${givenHtml(question, given)}${verdict}</dd>`
  })
  return `<dl class="questions">${items.join("")}</dl>`
}

const askedBefore = new WeakMap<Question, string>()

/** The question itself, its equations as MathML. Worked out once: thousands of pages show it. */
export function asked(question: Question): string {
  const known = askedBefore.get(question)
  if (known !== undefined) return known
  const html = mathOnly(question.askHtml || setLine(question.ask).html)
  askedBefore.set(question, html)
  return html
}

export function givenHtml(question: Question, given: string | number | null | undefined): string {
  if (given === null || given === undefined || given === "") return '<p class="empty">No answer.</p>'
  const choice = question.choices.find(candidate => candidate.key === String(given))
  if (question.kind === "choice" && choice !== undefined)
    return `<p class="given">${mathOnly(choice.html)}</p>`
  return `<p class="given">${stranger(String(given))}</p>`
}

/** Who handed in, on one line: name, id, file. */
export function whoHtml({ result }: Marked): string {
  const { student, file } = result
  const name = student?.name.trim() || student?.id.trim() || file
  const rest = [student?.id ?? "", file].filter(part => part !== "" && part !== name)
  return `${nameHtml(name)}${rest.length === 0 ? "" : ` <span class="who">${rest.map(nameHtml).join(" · ")}</span>`}`
}

/** A student's own page: feedback, and nothing of anybody else. */
export function studentPage(subject: ReportSubject, marked: Marked, styles: string): string {
  const { sheet } = subject
  const { result } = marked
  const name = shortName(result.student?.name.trim() || result.student?.id.trim() || result.file)
  const standing =
    result.status === "graded"
      ? `<p class="standing"><b>${pointsWords(result.points, result.outOf)}</b></p>`
      : `<p class="standing"><b>${isSuperseded(marked) ? "A newer file of yours counts." : "This file could not be marked."}</b></p>`
  return frame(
    `${sheet.title}: ${name}`,
    styles,
    `<main class="single">
<header><p class="kicker">Feedback</p><h1>${escaped(sheet.title)}</h1><p class="who-line">${whoHtml(marked)}</p>${standing}</header>
${workHtml(subject, marked, "student")}
<footer><p>Worksheet ${escaped(sheet.id)}, version ${sheet.version}.</p></footer>
</main>`,
  )
}
