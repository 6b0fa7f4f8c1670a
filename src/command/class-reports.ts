import type { Problem } from "../cell/problem.ts"
import { NoReference, ownParameters, type References } from "../judge/index.ts"
import { isRosterId, type Marked, motionsOf, type RosterIds, reportFiles } from "../report/index.ts"
import type { Worksheet } from "../worksheet/index.ts"
import type { Asked, OptionSpec } from "./asked.ts"
import { writePieces } from "./pieces.ts"
import { reportLook } from "./report-look.ts"
import type { Tools } from "./tools.ts"

/** Options of `grade` that concern the reports. */
export const reportOptions: Readonly<Record<string, OptionSpec>> = {
  "results-only": { value: null, says: "write results.json and results.csv, no reports" },
  anonymous: { value: null, says: "leave names, ids and file names out of report.html" },
  roster: {
    value: "NAME=ID",
    says: "the school's own ids for the OneRoster files: class=, school= and session=",
    many: true,
  },
}

export interface ReportsAsked {
  readonly reports: boolean
  readonly anonymous: boolean
  readonly roster: RosterIds | null
}

const rosterNames = ["class", "school", "session"] as const

/** What is asked of the reports; a wrong id comes back as a problem. */
export function readReportsAsked({ values }: Asked): ReportsAsked | Problem {
  const given = new Map<string, string>()
  for (const pair of values.roster ?? []) {
    const [name, id] = [pair.split("=", 1)[0]!, pair.slice(pair.indexOf("=") + 1)]
    if (!pair.includes("=") || !(rosterNames as readonly string[]).includes(name) || given.has(name))
      return rosterProblem(
        `“--roster ${pair.slice(0, 60)}” is not class=ID, school=ID or session=ID, each once.`,
      )
    if (!isRosterId(id))
      return rosterProblem(
        `“${id.slice(0, 60)}” is not an id that OneRoster knows: letters, digits and . - _ / @, 255 characters at most.`,
      )
    given.set(name, id)
  }
  const missing = rosterNames.filter(name => !given.has(name))
  if (given.size > 0 && missing.length > 0)
    return rosterProblem(`“--roster” lacks ${missing.map(name => `${name}=ID`).join(" and ")}.`)
  return {
    reports: values["results-only"] === undefined,
    anonymous: values.anonymous !== undefined,
    roster:
      given.size === 0
        ? null
        : {
            class: given.get("class")!,
            school: given.get("school")!,
            academicSession: given.get("session")!,
          },
  }
}

const rosterProblem = (text: string): Problem => ({
  code: "asked-wrongly",
  text,
  todo: "Write it as: --roster class=ID school=ID session=ID, with the ids of your school's own system.",
})

/**
 * Writes all reports of a class into `folder`.
 *
 * @param marked in the order of results.json; read once, one file at a time
 * @returns names of the files that one looks for, without the students' pages
 */
export async function writeReports(
  { anonymous, roster }: ReportsAsked,
  worksheet: Worksheet,
  marked: Iterable<Marked> | AsyncIterable<Marked>,
  {
    home,
    folder,
    tools,
    references,
  }: {
    readonly home: string
    readonly folder: string
    readonly tools: Tools
    readonly references: References
  },
): Promise<string[]> {
  const { sheet, keys } = worksheet
  const reference = await references.get(worksheet, tools, ownParameters(sheet), true).catch(cause => {
    // then nothing could be marked either, and each result says so
    if (cause instanceof NoReference) return null
    throw cause
  })
  const subject = { sheet, keys, reference: motionsOf(sheet, reference?.runs[0]) }
  const options = { ...reportLook(home), anonymous, ...(roster === null ? {} : { roster }) }
  const names = await writePieces(folder, reportFiles(subject, marked, options))
  return names.filter(name => !name.startsWith("students/"))
}
