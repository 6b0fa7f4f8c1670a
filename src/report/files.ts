import { type Marked, mostInReport, type ReportFiles, type ReportPiece } from "./contract.ts"
import { type Owner, pageName } from "./file-name.ts"
import { pointsWords } from "./marks.ts"
import { createRoster } from "./oneroster.ts"
import type { Naming } from "./parts.ts"
import { reportPage } from "./report.ts"
import { studentPage, whoHtml, workHtml } from "./student.ts"
import { type ClassTally, createTally, type Entry, isSuperseded } from "./tally.ts"
import { escaped, shortName } from "./text.ts"
import { statementsOf } from "./xapi.ts"

/** All report files of a class: see ReportFiles. */
export const reportFiles: ReportFiles = async function* (subject, marked, options) {
  const { sheet } = subject
  const anonymous = options.anonymous ?? false
  const tally = createTally(sheet)
  const roster = createRoster(sheet, options.roster ?? null)
  const works: Marked[] = []
  let small = true
  let statements = 0
  for await (const item of marked) {
    const place = tally.add(item)
    roster.add(item)
    if (small) works.push(item)
    if (place >= mostInReport) {
      small = false
      works.length = 0
    }
    yield {
      name: pageName(item.result),
      text: studentPage(subject, item, options.smallStyles),
    }
    for (const statement of statementsOf(sheet, item))
      yield {
        name: "statements.json",
        text: `${statements++ === 0 ? "[" : ","}\n${JSON.stringify(statement)}`,
      }
  }
  yield { name: "statements.json", text: statements === 0 ? "[]\n" : "\n]\n" }
  yield* roster.pieces()
  const counted = tally.finish()
  const naming = namingOf(counted, anonymous, small)
  yield reportPiece({ subject, counted, works, small, anonymous, naming, styles: options.styles })
}

function reportPiece(parts: {
  readonly subject: Parameters<ReportFiles>[0]
  readonly counted: ClassTally
  readonly works: readonly Marked[]
  readonly small: boolean
  readonly anonymous: boolean
  readonly naming: Naming
  readonly styles: string
}): ReportPiece {
  const { subject, counted, works, small, anonymous, naming, styles } = parts
  const texts = small
    ? new Map(
        subject.sheet.questions
          .filter(question => question.kind === "text")
          .map(question => [
            question.name,
            works.flatMap(({ work }, place): (readonly [number, string])[] => {
              const text = String(work?.questions[question.name] ?? "").trim()
              return text === "" ? [] : [[place, text]]
            }),
          ]),
      )
    : null
  return {
    name: "report.html",
    text: reportPage(
      {
        subject,
        tally: counted,
        naming,
        works: works.map((item, place) => {
          const { result } = item
          const who = anonymous ? escaped(naming.label(place)) : whoHtml(item)
          const points =
            result.status === "graded"
              ? pointsWords(result.points, result.outOf)
              : isSuperseded(item)
                ? "left aside"
                : "not marked"
          return `<article class="student" id="${anchor(place)}"><h3>${who} <span class="points">${points}</span></h3>${workHtml(subject, item, anonymous ? "teacher without names" : "teacher")}<p class="back"><a href="#register">Back to the register</a></p></article>`
        }),
        texts,
        anonymous,
      },
      styles,
    ),
  }
}

const anchor = (place: number): string => `s${place + 1}`

const ownerOf = ({ file, id, name }: Entry): Owner => ({ file, student: { id, name } })

function namingOf(tally: ClassTally, anonymous: boolean, small: boolean): Naming {
  const owners = new Map<string, Set<string>>()
  const plainName = (entry: Entry): string => entry.name.trim() || entry.id.trim() || entry.file
  const other = ({ id, file }: Entry): string => id.trim() || file
  for (const entry of tally.entries)
    owners.set(plainName(entry), (owners.get(plainName(entry)) ?? new Set()).add(other(entry)))
  // two of the same name are told apart; several files of one student are not two
  const nameOf = (entry: Entry): string => {
    const name = plainName(entry)
    return owners.get(name)!.size === 1 || name === other(entry)
      ? name
      : `${shortName(name)} (${other(entry)})`
  }
  return {
    label: place => (anonymous ? `Student ${place + 1}` : nameOf(tally.entries[place]!)),
    href: place => {
      if (small) return `#${anchor(place)}`
      return anonymous ? "" : pageName(ownerOf(tally.entries[place]!))
    },
  }
}
