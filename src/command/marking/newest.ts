import type { Problem } from "../../cell/problem.ts"
import { readInstant } from "../../report/index.ts"
import type { AnswerFile } from "../../worksheet/index.ts"
import { count } from "../say.ts"

/** What is to be said of one file because of when it was saved, or because its student handed in others. */
export interface Standing {
  /** another file of the student counts; this one does not */
  readonly superseded: boolean
  readonly problems: readonly Problem[]
}

export interface Dated {
  readonly file: string
  readonly student: AnswerFile["student"]
  readonly savedAt: string
  /** when the file itself was last changed, ms since 1970 */
  readonly fileTime: number | null
  /** digest of its bytes */
  readonly bytes: string
}

/** A clock that is ahead by less than this is no wonder, ms. */
const mostAhead = 3_600_000

/**
 * Of several files of one student the newest counts: by the time written inside it, and where there is none that can be
 * relied on, by the time of the file itself. A time still to come is said and not relied on.
 *
 * Everything in a file was written by whoever handed it in. So files that carry one id and different names put none
 * aside: anyone could write another's id. All of them are marked, and it is said that somebody must decide.
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
    if (new Set(group.map(({ dated }) => folded(dated.student.name))).size > 1) {
      for (const { dated, problems } of group)
        found.set(dated.file, { superseded: false, problems: [...problems, sharedId(dated)] })
      continue
    }
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

/** A name without what makes no other person of it: case, spacing, the way in which accents are written. */
const folded = (name: string): string => name.normalize("NFC").trim().replace(/\s+/g, " ").toLowerCase()

/** Names neither the other files nor their students: students read this. */
function sharedId({ student }: Dated): Problem {
  return {
    code: "answer-id-shared",
    text: `Another file carries the same id, “${student.id.trim().slice(0, 60)}”, with another name. Both were marked, and neither was left aside.`,
    todo: "Find out who wrote which file, and mark the class again without the one that should not count.",
  }
}

function timeOf({ savedAt, fileTime }: Dated, now: number): { time: number; problems: Problem[] } {
  const trusted = (time: number | null): number =>
    time !== null && time <= now + mostAhead ? time : Number.NEGATIVE_INFINITY
  const inside = readInstant(savedAt)
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
  readonly time: number
}

const mostNames = 5

function words(item: Item, newest: Item, group: readonly Item[]): Problem {
  const { student } = newest.dated
  const who = (student.id.trim() || student.name.trim()).slice(0, 60)
  // without an id only the name joins them, and two students may have one name
  const byName = student.id.trim() === ""
  const doubt = byName ? " They carry no id, only the same name: are they of one student?" : ""
  const apart = byName ? "If they are of two students, give each an id and mark the class again. " : ""
  const handed = `“${who}” handed in ${count(group.length, "file")}`
  if (item !== newest)
    return {
      code: "answer-superseded",
      text: `${asideWords(item, newest, handed)}${doubt}`,
      todo: `${apart}If this is the one that should count, mark it without the other.`,
    }
  const others = group.filter(other => other !== newest).map(other => `“${other.dated.file}”`)
  const named = others.slice(0, mostNames).join(", ")
  const more = others.length > mostNames ? ` and ${others.length - mostNames} more` : ""
  const newer = group.every(other => other === newest || other.time < newest.time)
  return {
    code: "answer-newest",
    text: `${handed}; this ${newer ? "is the newest and counts" : "one counts"}. Left aside: ${named}${more}.${doubt}`,
    todo: `${apart}Otherwise nothing, unless another one should count: then mark that one without this.`,
  }
}

/** Which file counts instead of this one, and why. */
function asideWords(item: Item, newest: Item, handed: string): string {
  const counts = `“${newest.dated.file}”`
  if (item.dated.bytes === newest.dated.bytes)
    return `${handed}; this one is the same as ${counts} to the letter, which counts.`
  if (item.time === newest.time)
    return `${handed}; ${counts} and this one are of the same time, so the first by name counts, and this one was left aside.`
  return `${handed}; the newest, ${counts}, counts, and this one was left aside.`
}
