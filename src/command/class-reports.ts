import type { Problem } from "../cell/problem.ts"
import { isRosterId, type RosterIds } from "../report/index.ts"
import type { Asked, OptionSpec } from "./asked.ts"

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
