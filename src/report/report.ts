import type { Question } from "../worksheet/contract.ts"
import { mostInReport, type ReportSubject } from "./contract.ts"
import { mathOnly } from "./equations.ts"
import { type Finding, findingsOf, slipSentence } from "./findings.ts"
import { frame } from "./frame.ts"
import { histogram } from "./histogram.ts"
import { shares, verdictMark, verdictWords } from "./marks.ts"
import { notMarkedSection } from "./not-marked.ts"
import { type Naming, namesHtml, type ReportParts, type Section, scrolled } from "./parts.ts"
import { registerSection } from "./register.ts"
import { asked } from "./student.ts"
import type { AnswerCount, AnswerTally, ClassTally } from "./tally.ts"
import { count, escaped, grouped, listed, nameHtml, number, stranger } from "./text.ts"

/** The teacher's page: first what to take up in class, then the class, then each student. */
export function reportPage(parts: ReportParts, styles: string): string {
  const { subject, tally } = parts
  const sections = [
    mondaySection(parts),
    checksSection(parts),
    slipsSection(parts),
    questionsSection(parts),
    textsSection(parts),
    notMarkedSection(parts),
    registerSection(parts),
    worksSection(parts),
  ].filter(section => section !== null)
  const links = sections.map(({ id, title }) => `<li><a href="#${id}">${title}</a></li>`).join("")
  const body = sections
    .map(
      ({ id, title, html }) =>
        `<section id="${id}" aria-labelledby="${id}-title"><h2 id="${id}-title">${title}</h2>\n${html}</section>`,
    )
    .join("\n")
  const { sheet } = subject
  return frame(
    `${sheet.title}: the class`,
    styles,
    `<a class="skip" href="#main">To the report</a>
<header class="top"><p class="kicker">Report of a class</p><h1>${escaped(sheet.title)}</h1>
<p class="who-line">Worksheet ${escaped(sheet.id)}, version ${sheet.version} · ${standing(tally)}</p>
<nav aria-label="Parts of the report"><ul>${links}</ul></nav></header>
<main id="main">
${body}
</main>
<footer class="end"><p>Made from the worksheet and the answer files alone; the same files give the same report.</p></footer>`,
  )
}

const standing = (tally: ClassTally): string =>
  [
    count(tally.entries.length, "file"),
    ...(tally.refused.length === 0 ? [] : [`${grouped(tally.refused.length)} could not be marked`]),
    ...(tally.superseded === 0 ? [] : [`${grouped(tally.superseded)} left aside for a newer one`]),
  ].join(", ")

function mondaySection({ subject, tally, naming }: ReportParts): Section {
  const { sheet, keys } = subject
  const findings = findingsOf(sheet, keys, tally)
  const full = `<p class="lead"><b>${grouped(tally.full)} of ${grouped(tally.graded)}</b> have all ${number(tally.outOf)} points. Half have at least <b>${number(tally.median)}</b>; the mean is ${number(tally.mean)}.</p>`
  const items = findings.map(finding => findingHtml(finding, naming))
  const list =
    items.length === 0
      ? "<p>Nothing was got wrong by anybody.</p>"
      : `<ol class="findings">${items.join("")}</ol>`
  const refused =
    tally.refused.length === 0
      ? ""
      : `<p class="aside"><a href="#not-marked">${count(tally.refused.length, "file")}</a> could not be marked: the reasons, and what to do, stand there.</p>`
  return {
    id: "class",
    title: "What to take up in class",
    html: `<div class="opening"><div>${full}${list}${refused}</div>${histogram(tally.entries, tally.outOf)}</div>`,
  }
}

function findingHtml({ count: n, seen, about, say, who }: Finding, naming: Naming): string {
  return `<li><span class="many">${grouped(n)}</span><div><p class="seen">${stranger(seen)}</p>${about === "" ? "" : `<p class="about">${stranger(about)}</p>`}${say === "" ? "" : `<p class="say">${stranger(say)}</p>`}${namesHtml(who, naming, 8)}</div></li>`
}

function checksSection({ subject, tally }: ReportParts): Section | null {
  const { sheet } = subject
  if (sheet.checks.length === 0 || tally.graded === 0) return null
  const rows = sheet.checks.map(check => {
    const { counts } = tally.checks.get(check.name)!
    return `<tr><th scope="row"><b>${escaped(check.name)}</b><span class="says">${stranger(check.says)}</span></th><td class="wide-only">${shares(counts)}</td><td class="n">${grouped(counts.met)}</td><td class="n">${grouped(counts["not met"])}</td><td class="n">${grouped(counts["could not run"])}</td></tr>`
  })
  const head = (["met", "not met", "could not run"] as const)
    .map(verdict => `<th scope="col" class="n">${verdictMark(verdict)}${verdictWords[verdict]}</th>`)
    .join("")
  return {
    id: "checks",
    title: "Check by check",
    html: `${scrolled("Checks", `<table class="checks-table"><caption>How many answers met each check, of ${grouped(tally.graded)} that were marked.</caption><thead><tr><th scope="col">check</th><th scope="col" class="wide-only">shares</th>${head}</tr></thead><tbody>${rows.join("")}</tbody></table>`)}`,
  }
}

function slipsSection({ tally, naming }: ReportParts): Section | null {
  if (tally.slips.length === 0) return null
  const items = tally.slips.map(([slip, who]) => {
    const told = [...(tally.hints.get(slip) ?? [])]
    const toldHtml = told.map(
      ([words, checks]) =>
        `<p class="about">The student is told${told.length === 1 ? "" : ` at ${listed([...checks].map(name => `“${escaped(name)}”`))}`}: ${stranger(words)}</p>`,
    )
    return `<li><span class="many">${grouped(who.length)}</span><div><p class="seen">${stranger(slipSentence(slip))} <code>${escaped(slip)}</code></p>${toldHtml.join("")}${namesHtml(who, naming)}</div></li>`
  })
  return {
    id: "slips",
    title: "Slips",
    html: `<p class="aside">Common mistakes whose motion an answer has, the most frequent first, and who made them.</p><ol class="findings">${items.join("")}</ol>`,
  }
}

function questionsSection({ subject, tally }: ReportParts): Section | null {
  const questions = subject.sheet.questions.filter(question => question.kind !== "text")
  if (questions.length === 0 || tally.graded === 0) return null
  return {
    id: "questions",
    title: "Questions",
    html: questions.map(question => questionHtml(question, subject, tally)).join("\n"),
  }
}

/** Answers of one question that get a line of their own. */
const mostAnswerLines = 8

function questionHtml(question: Question, { keys }: ReportSubject, tally: ClassTally): string {
  const key = keys.find(candidate => candidate.name === question.name)
  const answers = tally.answers.get(question.name)!
  const right = String(key?.answer ?? "")
  const lines =
    question.kind === "choice"
      ? [
          ...question.choices.map(choice => ({
            html: mathOnly(choice.html),
            n: timesOf(answers.given.get(choice.key)),
            right: choice.key === right,
          })),
          ...strayAnswers(question, answers),
        ]
      : numberAnswers(answers, right)
  const { none } = answers
  const most = Math.max(1, none, ...lines.map(line => line.n))
  const rows = [...lines, ...(none === 0 ? [] : [{ html: "<i>no answer</i>", n: none, right: false }])].map(
    line =>
      `<tr${line.right ? ' class="right"' : ""}><th scope="row">${line.html}${line.right ? ' <span class="word met">right</span>' : ""}</th><td class="n">${grouped(line.n)}</td><td class="wide-only">${bar(line.n / most)}</td></tr>`,
  )
  const unit = question.kind === "number" && question.unit !== "1" ? `, in ${escaped(question.unit)}` : ""
  const found = tally.checks.get(question.name)?.counts.met ?? 0
  return `<article class="question"><h3>${asked(question)}</h3>${scrolled(
    question.name,
    `<table class="answers"><caption>${grouped(found)} of ${grouped(tally.graded)} answered rightly.</caption><thead class="unseen"><tr><th scope="col">answer${unit}</th><th scope="col">how many</th><th scope="col" class="wide-only">share</th></tr></thead><tbody>${rows.join("")}</tbody></table>`,
  )}${key === undefined || key.why === "" ? "" : `<p class="why"><b>Why:</b> ${stranger(key.why)}</p>`}</article>`
}

interface AnswerLine {
  readonly html: string
  readonly n: number
  readonly right: boolean
}

/** What stands in a file though no choice has that key. */
function strayAnswers(question: Question, { given, others }: AnswerTally): AnswerLine[] {
  const keys = new Set(question.choices.map(choice => choice.key))
  const stray = [...given].filter(([text]) => !keys.has(text))
  const n = stray.reduce((sum, [, count]) => sum + timesOf(count), timesOf(others))
  return n === 0 ? [] : [{ html: "<i>something that is no choice</i>", n, right: false }]
}

/** The most frequent answers, right or wrong as they were judged: “9.81” and “9.81 m/s” may both be right. */
function numberAnswers({ given, others }: AnswerTally, right: string): AnswerLine[] {
  const lines = [...given]
    .flatMap(([text, count]) => [
      { text, n: count.right, right: true },
      { text, n: count.wrong, right: false },
    ])
    .filter(({ n }) => n > 0)
    .sort((a, b) => b.n - a.n || (a.text < b.text ? -1 : 1))
  const shown = lines.slice(0, mostAnswerLines)
  const rest = (met: boolean): number =>
    lines.slice(mostAnswerLines).reduce((sum, line) => sum + (line.right === met ? line.n : 0), 0) +
    (met ? others.right : others.wrong)
  return [
    ...(shown.some(line => line.right) ? [] : [{ html: stranger(right), n: 0, right: true }]),
    ...shown.map(line => ({ ...line, html: nameHtml(line.text) })),
    ...[true, false].map(met => ({ html: "<i>others</i>", n: rest(met), right: met })),
  ].filter((line, place) => line.n > 0 || place === 0)
}

const timesOf = (count: AnswerCount | undefined): number =>
  count === undefined ? 0 : count.right + count.wrong

const bar = (share: number): string =>
  `<svg class="bar" viewBox="0 0 200 10" width="200" height="10" aria-hidden="true"><rect x="0" y="1" width="${number(Math.max(share * 200, share > 0 ? 1 : 0))}" height="8"/></svg>`

function textsSection({ subject, tally, texts, naming }: ReportParts): Section | null {
  const questions = subject.sheet.questions.filter(question => question.kind === "text")
  if (questions.length === 0 || tally.graded === 0) return null
  const html =
    texts === null
      ? `<p>In a class of more than ${mostInReport} the texts stand on the students' own pages and in results.json.</p>`
      : questions
          .map(question => textsHtml(question, subject, texts.get(question.name) ?? [], naming))
          .join("\n")
  return { id: "texts", title: "Texts to read", html }
}

function textsHtml(
  question: Question,
  { keys }: ReportSubject,
  texts: readonly (readonly [number, string])[],
  naming: Naming,
): string {
  const why = keys.find(candidate => candidate.name === question.name)?.why ?? ""
  // the same words of several students are read once
  const groups = new Map<string, number[]>()
  for (const [place, text] of texts) {
    const group = groups.get(text)
    if (group === undefined) groups.set(text, [place])
    else group.push(place)
  }
  const items = [...groups].map(
    ([text, who]) =>
      `<li><div class="prose">${stranger(text)}</div>${namesHtml(who, naming, who.length)}</li>`,
  )
  return `<article class="question"><h3>${asked(question)}</h3>${why === "" ? "" : `<p class="why"><b>To look for:</b> ${stranger(why)}</p>`}${items.length === 0 ? "<p>Nobody wrote anything.</p>" : `<ul class="texts">${items.join("")}</ul>`}</article>`
}

function worksSection({ works, tally, anonymous }: ReportParts): Section | null {
  if (tally.entries.length === 0) return null
  if (works.length > 0) return { id: "students", title: "Each student", html: works.join("\n") }
  const where = anonymous
    ? "Their answers are not shown here."
    : "Plots, code and feedback stand on the students' own pages, to which the names lead; keep the folder “students” beside this file."
  return {
    id: "students",
    title: "Each student",
    html: `<p>The class has more than ${mostInReport} files. ${where}</p>`,
  }
}
