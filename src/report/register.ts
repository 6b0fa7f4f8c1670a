import { slipSentence } from "./findings.ts"
import { verdictMark, verdictWords } from "./marks.ts"
import { linkHtml, mostLines, type Naming, type ReportParts, type Section, scrolled } from "./parts.ts"
import { type Entry, isFull, judged } from "./tally.ts"
import { escaped, grouped, number, stranger } from "./text.ts"

/** One order on every machine; “Student 2” before “Student 10”. */
const order = new Intl.Collator("en", { numeric: true })

/** A line a student, a stroke a check. */
export function registerSection({ subject, tally, naming, anonymous }: ReportParts): Section | null {
  const all = tally.entries.flatMap((entry, place) => (entry.refused ? [] : [place]))
  if (all.length === 0) return null
  const large = all.length > mostLines
  const shown = large ? all.filter(place => !isFull(tally.entries[place]!)).slice(0, mostLines) : all
  const names = judged(subject.sheet)
  // in a report without names their order would tell something of them
  if (!anonymous)
    shown.sort(
      (a, b) =>
        order.compare(naming.label(a), naming.label(b)) ||
        order.compare(tally.entries[a]!.file, tally.entries[b]!.file) ||
        a - b,
    )
  const met = names.map(name => tally.checks.get(name)?.counts.met ?? 0)
  const rows = shown.map(place => registerRow(tally.entries[place]!, place, naming))
  const left = large
    ? ` ${grouped(all.length - shown.length)} others, ${grouped(tally.full)} of them with all points, are in results.csv.`
    : ""
  return {
    id: "register",
    title: "Register",
    html: `<p class="key">${(["met", "not met", "could not run"] as const).map(verdict => `<span>${verdictMark(verdict)} ${verdictWords[verdict]}</span>`).join("")}</p>${scrolled(
      "Register",
      `<table class="register"><caption>${anonymous ? "The number of a student is the one in the first column of results.csv." : "In the order of the names."}${left}</caption><thead><tr><th scope="col">student</th><th scope="col" class="n">points<br>of ${number(tally.outOf)}</th>${names.map(name => `<th scope="col">${escaped(name)}</th>`).join("")}<th scope="col">what was seen</th></tr></thead><tbody>${rows.join("\n")}</tbody><tfoot><tr><th scope="row">met by</th><td></td>${met.map(n => `<td class="n">${grouped(n)}</td>`).join("")}<td>of ${grouped(tally.graded)} that were marked</td></tr></tfoot></table>`,
    )}`,
  }
}

function registerRow(entry: Entry, place: number, naming: Naming): string {
  const cells = entry.verdicts.map(
    verdict =>
      `<td class="v ${verdict === null ? "" : verdict.replaceAll(" ", "-")}"><span class="unseen">${verdict === null ? "nothing judged" : verdictWords[verdict]}</span></td>`,
  )
  return `<tr><th scope="row">${linkHtml(place, naming)}</th><td class="n">${number(entry.points)}</td>${cells.join("")}<td>${[...entry.slips.map(slip => stranger(slipSentence(slip))), ...(entry.note === "" ? [] : [escaped(entry.note)])].join(" ")}</td></tr>`
}
