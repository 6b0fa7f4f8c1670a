import type { Problem } from "../../cell/problem.ts"
import type { AnswerFile } from "../../worksheet/index.ts"
import { count } from "../say.ts"

/** What is to be said of one file because of when it was saved, or because its student handed in others. */
export interface Standing {
  /** another file of the student is newer; this one does not count */
  readonly superseded: boolean
  readonly problems: readonly Problem[]
}

export interface Dated {
  readonly file: string
  readonly student: AnswerFile["student"]
  readonly savedAt: string
  /** when the file itself was last changed, ms since 1970 */
  readonly fileTime: number | null
}

/** A clock that is ahead by less than this is no wonder, ms. */
const mostAhead = 3_600_000

/** RFC 3339 with a time zone. */
const instantForm = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/i

/**
 * Of several files of one student the newest counts: by the time written inside it, and where there is none that can be
 * relied on, by the time of the file itself. A time still to come is said and not relied on.
 *
 * @param now ms since 1970
 */
export function standings(files: readonly Dated[], now: number): ReadonlyMap<string, Standing> {
  const byStudent = new Map<string, { dated: Dated; time: number; problems: Problem[] }[]>()
  for (const dated of files) {
    const { time, problems } = timeOf(dated, now)
    const key = studentKey(dated)
    const group = byStudent.get(key)
    if (group === undefined) byStudent.set(key, [{ dated, time, problems }])
    else group.push({ dated, time, problems })
  }
  const found = new Map<string, Standing>()
  for (const group of byStudent.values()) {
    const newest = group.reduce((best, other) => (other.time > best.time ? other : best))
    for (const item of group) {
      const superseded = item !== newest
      const problems = [...item.problems, ...(group.length > 1 ? [words(item, newest, group)] : [])]
      if (problems.length > 0) found.set(item.dated.file, { superseded, problems })
    }
  }
  return found
}

/** One student by the id, by the name where there is no id; a file with neither stands for itself. */
function studentKey({ student, file }: Dated): string {
  const [id, name] = [student.id.trim(), student.name.trim()]
  return id !== "" ? `id ${id}` : name !== "" ? `name ${name}` : `file ${file}`
}

function timeOf({ savedAt, fileTime }: Dated, now: number): { time: number; problems: Problem[] } {
  const trusted = (time: number | null): number =>
    time !== null && time <= now + mostAhead ? time : Number.NEGATIVE_INFINITY
  const inside = instantForm.test(savedAt) ? Date.parse(savedAt) : Number.NaN
  if (Number.isNaN(inside)) return { time: trusted(fileTime), problems: [] }
  if (inside <= now + mostAhead) return { time: inside, problems: [] }
  return {
    time: trusted(fileTime),
    problems: [
      {
        code: "answer-from-future",
        text: `The file says that it was saved at ${savedAt}, a time that was still to come when it was marked.`,
        todo: "That time was not relied on. The clock of the computer on which it was written is probably wrong.",
      },
    ],
  }
}

interface Item {
  readonly dated: Dated
}

const mostNames = 5

function words(item: Item, newest: Item, group: readonly Item[]): Problem {
  const { student } = newest.dated
  const who = (student.id.trim() || student.name.trim()).slice(0, 60)
  if (item !== newest)
    return {
      code: "answer-superseded",
      text: `“${who}” handed in ${count(group.length, "file")}; the newest, “${newest.dated.file}”, counts, and this one was left aside.`,
      todo: "If this is the one that should count, mark it without the other.",
    }
  const others = group.filter(other => other !== newest).map(other => `“${other.dated.file}”`)
  const named = others.slice(0, mostNames).join(", ")
  const more = others.length > mostNames ? ` and ${others.length - mostNames} more` : ""
  return {
    code: "answer-newest",
    text: `“${who}” handed in ${count(group.length, "file")}; this is the newest and counts. Left aside: ${named}${more}.`,
    todo: "Nothing, unless another one should count: then mark that one without this.",
  }
}
