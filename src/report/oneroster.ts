import type { StudentSheet } from "../worksheet/contract.ts"
import type { Marked, ReportPiece } from "./contract.ts"
import { savedInstant } from "./instant.ts"
import { pointsOf } from "./results.ts"
import { isContested, isSuperseded } from "./tally.ts"
import { uuidOf } from "./uuid.ts"

/** All data files that a OneRoster 1.2 set can hold; the manifest says of each whether it is there. */
const dataFiles = [
  "academicSessions",
  "categories",
  "classes",
  "classResources",
  "courses",
  "courseResources",
  "demographics",
  "enrollments",
  "lineItemLearningObjectiveIds",
  "lineItems",
  "lineItemScoreScales",
  "orgs",
  "resources",
  "resultLearningObjectiveIds",
  "results",
  "resultScoreScales",
  "roles",
  "scoreScales",
  "userProfiles",
  "userResources",
  "users",
]
const written = ["categories", "lineItems", "results"]

const categoryColumns = ["sourcedId", "status", "dateLastModified", "title", "weight"]
const lineItemColumns = [
  "sourcedId",
  "status",
  "dateLastModified",
  "title",
  "description",
  "assignDate",
  "dueDate",
  "classSourcedId",
  "categorySourcedId",
  "academicSessionSourcedId",
  "resultValueMin",
  "resultValueMax",
  "schoolSourcedId",
]
const resultColumns = [
  "sourcedId",
  "status",
  "dateLastModified",
  "lineItemSourcedId",
  "studentSourcedId",
  "scoreStatus",
  "score",
  "scoreDate",
  "comment",
  "textScore",
  "classSourcedId",
  "inProgress",
  "incomplete",
  "late",
  "missing",
]

/** Ids that the school's own system uses for the class that is marked; each a OneRoster GUID. */
export interface RosterIds {
  readonly class: string
  readonly academicSession: string
  readonly school: string
}

/** What a OneRoster GUID may be: printable, 255 characters at most. */
const guidForm = /^[0-9A-Za-z./@_-]{1,255}$/

export const isRosterId = (id: string): boolean => guidForm.test(id)

/** A date is required: where none is known that can be relied on, the day before all days stands for none. */
const noDay = "1970-01-01"

interface Row {
  readonly id: string
  readonly graded: boolean
  readonly score: number
  readonly day: string
  readonly comment: string
}

/**
 * Results as a OneRoster 1.2 CSV set (1EdTech, CSV binding, final release of 2022-09-19): one line item, which is
 * the worksheet, and a result for each student. Bulk files: status and dateLastModified stay empty, as the binding
 * asks. Ids are the school's own where they are known, else name UUIDs, so that a second export replaces the first.
 * Students are those whose files name an id; of several files of one student the last marked one counts,
 * and an id that two names claim has no result.
 */
export function createRoster(sheet: StudentSheet, ids: RosterIds | null) {
  const rows = new Map<string, Row>()
  const lineItem = uuidOf("line item", sheet.id, String(sheet.version))
  const category = uuidOf("category", "worksheets")
  const school: RosterIds = ids ?? {
    class: uuidOf("class", "unknown"),
    academicSession: uuidOf("academic session", "unknown"),
    school: uuidOf("school", "unknown"),
  }
  const unread = sheet.questions.some(question => question.kind === "text" && question.points > 0)

  return {
    add(marked: Marked): void {
      const { result } = marked
      const id = result.student?.id.trim() ?? ""
      if (id === "" || isSuperseded(marked) || isContested(marked)) return
      const graded = result.status === "graded"
      const before = rows.get(id)
      if (before?.graded && !graded) return
      const day = savedInstant(marked)?.slice(0, 10) ?? ""
      if (before?.graded && before.day > day) return
      rows.set(id, {
        id,
        graded,
        score: result.points,
        day,
        comment: graded
          ? result.checks.map(check => `${check.name} ${check.points}/${check.outOf}`).join(", ")
          : "The answer file could not be marked.",
      })
    },
    *pieces(): Generator<ReportPiece> {
      const days = [...rows.values()].flatMap(row => (row.day === "" ? [] : [row.day])).sort()
      const first = days[0] ?? noDay
      const last = days.at(-1) ?? first
      yield piece(
        "manifest",
        ["propertyName", "value"],
        [
          ["manifest.version", "1.0"],
          ["oneroster.version", "1.2"],
          ...dataFiles.map(name => [`file.${name}`, written.includes(name) ? "bulk" : "absent"]),
          ["source.systemName", "Deltasheet"],
          ["source.systemCode", "deltasheet"],
        ],
      )
      yield piece("categories", categoryColumns, [[category, "", "", "Worksheets", ""]])
      yield piece("lineItems", lineItemColumns, [
        [
          lineItem,
          "",
          "",
          sheet.title,
          sheet.summary,
          first,
          last,
          school.class,
          category,
          school.academicSession,
          "0",
          String(pointsOf(sheet)),
          school.school,
        ],
      ])
      yield piece(
        "results",
        resultColumns,
        [...rows.values()].map(row => [
          uuidOf("result", lineItem, row.id),
          "",
          "",
          lineItem,
          isRosterId(row.id) ? row.id : uuidOf("student", row.id),
          row.graded ? (unread ? "partially graded" : "fully graded") : "submitted",
          row.graded ? String(row.score) : "",
          row.day === "" ? noDay : row.day,
          row.comment,
          "",
          school.class,
          row.graded && !unread ? "false" : "true",
          row.graded ? "false" : "true",
          "",
          "",
        ]),
      )
    },
  }
}

/** RFC 4180, in UTF-8 without a mark in front. */
function piece(name: string, columns: readonly string[], rows: readonly (readonly string[])[]): ReportPiece {
  const text = [columns, ...rows].map(cells => `${cells.map(cell).join(",")}\r\n`).join("")
  return { name: `oneroster/${name}.csv`, text }
}

const cell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
