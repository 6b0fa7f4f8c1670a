import { readFileSync, writeFileSync } from "node:fs"
import type { WrongAnswer } from "./corpus/corpus.ts"
import type { Marked, Measured } from "./measure.ts"

export const namedRightly = ({ answer, named }: Marked<WrongAnswer>): boolean =>
  named.length > 0 && named.every(name => answer.slips.includes(name))

/** The judge measured like a medical test, as a Markdown table. */
export function tableOf(measured: readonly Measured[]): string {
  const rows = measured.map(({ corpus, right, wrong }) => {
    const slips = wrong.filter(({ answer }) => answer.slips.length > 0)
    const faults = wrong.filter(({ answer }) => answer.slips.length === 0)
    return [
      corpus.worksheet,
      right.length,
      right.filter(({ unmet }) => unmet.length > 0).length,
      wrong.length,
      wrong.filter(({ unmet }) => unmet.length === 0).length,
      `${slips.filter(namedRightly).length} of ${slips.length}`,
      faults.filter(({ named }) => named.length > 0).length,
    ]
  })
  return [
    "| worksheet | right answers | falsely refused | wrong answers | falsely passed | slips named rightly | faults named as a slip |",
    "| --- | --- | --- | --- | --- | --- | --- |",
    ...rows.sort((a, b) => (String(a[0]) < String(b[0]) ? -1 : 1)).map(row => `| ${row.join(" | ")} |`),
  ].join("\n")
}

const begin = "<!-- judging: begin -->"
const end = "<!-- judging: end -->"

/** Puts the table between its two marks in a Markdown file. */
export function writeTable(file: string, table: string): void {
  const text = readFileSync(file, "utf8")
  const [from, to] = [text.indexOf(begin), text.indexOf(end)]
  if (from < 0 || to < from) throw new Error(`${file} has no place for the table: ${begin} … ${end}`)
  writeFileSync(file, `${text.slice(0, from + begin.length)}\n${table}\n${text.slice(to)}`)
}
