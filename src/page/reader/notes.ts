import type { CellSource } from "../../cell/contract.ts"
import type { Problem } from "../../cell/problem.ts"
import type { CheckResult, Reference, Verdict } from "../../judge/contract.ts"
import type { Check } from "../../worksheet/contract.ts"
import type { Standing } from "../session.ts"
import { placeWords } from "../words.ts"

/** What a note in the margin stands beside. */
export type Anchor =
  | { readonly kind: "blank"; readonly name: string }
  | { readonly kind: "line"; readonly line: number }

/** A note in the margin of a listing, as a teacher's pencil would set it. */
export interface Note {
  readonly key: string
  readonly anchor: Anchor
  readonly tone: Verdict | "problem"
  /** what it is about, in a few words */
  readonly head: string
  readonly text: string
  readonly todo: string
  /** which values the verdict is about, where that has to be said; "" else */
  readonly aside: string
  /** of a problem: its page says more; "" for a verdict */
  readonly code: string
  /** speaks of a text that has been changed since */
  readonly stale: boolean
}

const blanksOf = (cell: CellSource): string[] =>
  cell.segments.flatMap(segment => (segment.kind === "blank" ? [segment.name] : []))

/** The blank that a check speaks of: where its slip was made, else the one of its own name, else the cell's first. */
export function blankOf(
  cell: CellSource,
  check: Pick<Check, "name">,
  result: Pick<CheckResult, "slip"> | null,
  reference: Reference | null,
): string | null {
  const blanks = blanksOf(cell)
  const slipped = result?.slip && reference?.slips.find(motion => motion.slip === result.slip)?.blank
  if (slipped && blanks.includes(slipped)) return slipped
  if (blanks.includes(check.name)) return check.name
  return blanks[0] ?? null
}

/**
 * All notes beside one listing: what stops it first, then what the judge saw.
 *
 * @param untouched blanks that nobody has written in: what is missing there is no news
 * @param asideOf which values a verdict is about, in words
 */
export function notesFor(
  cell: CellSource,
  checks: readonly Check[],
  problems: readonly Problem[],
  standing: Standing | null,
  reference: Reference | null,
  untouched: ReadonlySet<string>,
  asideOf: (check: Check, verdict: Verdict) => string = () => "",
): readonly Note[] {
  const here = problems.filter(problem => problem.where?.cell === cell.name)
  const stops = here.map((problem, i): Note => {
    const line = problem.where?.line ?? 1
    return {
      key: `problem ${i}`,
      anchor: { kind: "line", line },
      tone: "problem",
      head: placeWords(problem),
      text: problem.text,
      todo: problem.todo,
      aside: "",
      code: problem.code,
      stale: false,
    }
  })
  const seen = checks
    .filter(check => check.cell === cell.name)
    .flatMap((check): Note[] => {
      const result = standing?.judgement.checks.find(candidate => candidate.name === check.name)
      if (!standing || !result) return []
      if (result.verdict === "could not run" && problems.length > 0) return []
      const blank = blankOf(cell, check, result, reference)
      if (blank !== null && untouched.has(blank) && result.verdict !== "met") return []
      return [
        {
          key: check.name,
          anchor: blank ? { kind: "blank", name: blank } : { kind: "line", line: 1 },
          tone: result.verdict,
          head: check.name,
          text: result.message,
          todo: "",
          aside: standing.current ? asideOf(check, result.verdict) : "",
          code: "",
          stale: !standing.current,
        },
      ]
    })
  return [...stops, ...saidOnce(seen)]
}

/** Words that hold for all notes beside one blank stand in the first of them. */
function saidOnce(notes: readonly Note[]): Note[] {
  const said = new Set<string>()
  return notes.map(note => {
    const key = `${JSON.stringify(note.anchor)} ${note.aside}`
    if (said.has(key)) return { ...note, aside: "" }
    said.add(key)
    return note
  })
}

/** Sets notes one below the other where they would overlap, each as near to its own height as that allows. */
export function stackNotes(
  notes: readonly { readonly key: string; readonly top: number; readonly height: number }[],
  gap: number,
): ReadonlyMap<string, number> {
  const placed = new Map<string, number>()
  let free = 0
  for (const note of [...notes].sort((a, b) => a.top - b.top)) {
    const top = Math.max(note.top, free)
    placed.set(note.key, top)
    free = top + note.height + gap
  }
  return placed
}
