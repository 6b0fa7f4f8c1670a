import { useMemo, useState } from "preact/hooks"
import { Bench } from "../bench/Bench.tsx"
import type { Departure } from "../bench/departures.ts"
import type { Session } from "../session.ts"
import { referenceDue, untouched } from "../tried.ts"
import { plural, showsOlder, stateWords } from "../words.ts"
import { lookedAt } from "./departed.ts"
import { notesFor } from "./notes.ts"

const key = "deltasheet/bench-folded"
/** in a window lower than this the plate would leave no text to read, px */
const lowWindow = 560

function recallFolded(): boolean {
  try {
    const kept = localStorage.getItem(key)
    if (kept !== null) return kept === "yes"
  } catch {
    // forbidden storage: the window's height decides
  }
  return innerHeight < lowWindow
}

/** Instants at which this cell's motion leaves the reference, as far as a verdict is due. */
function departuresOf(session: Session, name: string): readonly Departure[] {
  const standing = session.standing.value
  const cell = session.edition.sheet.cells.find(candidate => candidate.name === name)
  if (!standing?.current || !cell || session.varied.value) return []
  const notes = notesFor(
    cell,
    session.edition.sheet.checks,
    [],
    standing,
    session.reference,
    untouched(session.edition, session.keeper.answers.value),
  )
  const shown = new Set(notes.map(note => note.key))
  return standing.judgement.checks.flatMap(({ name: of, departsAt }) => {
    const check = session.edition.sheet.checks.find(candidate => candidate.name === of)
    return check && shown.has(of) && departsAt !== null
      ? [{ instant: departsAt, of: lookedAt(check.rule) }]
      : []
  })
}

/** The right half; on a narrow page a plate at the foot, which stays folded or open as it was left. */
export function BenchSide({ session, cell }: { session: Session; cell: string }) {
  const [folded, setFolded] = useState(recallFolded)
  const fold = (): void => {
    setFolded(!folded)
    try {
      localStorage.setItem(key, folded ? "no" : "yes")
    } catch {
      // kept for this visit only
    }
  }
  const state = stateWords(session.state.value)
  const printed = session.output.value.length
  const printedWords = printed > 0 ? `; printed: ${plural(printed, "line")}` : ""
  const found = departuresOf(session, cell)
  // the bench compares by identity
  const departures = useMemo(() => found, [JSON.stringify(found)])
  return (
    <section class={folded ? "bench-side folded" : "bench-side"} id="bench" aria-label="Bench" tabIndex={-1}>
      <button
        type="button"
        class="bench-fold"
        aria-expanded={!folded}
        aria-controls="bench-inside"
        onClick={fold}
      >
        <span class="caps">Bench</span>
        <span class="bench-fold-state">{folded ? state + printedWords : ""}</span>
        <span class="bench-fold-word">{folded ? "open" : "fold"}</span>
      </button>
      <div class="bench-inside" id="bench-inside">
        <Bench
          sheet={session.edition.sheet}
          cell={cell}
          recordings={session.recordings.value}
          ghost={session.ghost.value}
          reference={
            referenceDue(session.edition, cell, session.keeper.answers.value) ? session.reference : null
          }
          departures={departures}
          parameters={session.parameters.value}
          onParameter={session.setParameter}
          onResetParameters={session.resetParameters}
          state={state}
          running={session.running.value}
          printed={session.output.value}
          onRun={session.run}
          onStop={session.stop}
          problem={session.problems.value[0] ?? null}
          older={showsOlder(session.state.value)}
          units={session.edition.units[cell]}
          stepping={session.stepping}
          hand={session.looking.hand}
          variables={session.looking.variables.value}
          onDropVariable={session.looking.drop}
        />
      </div>
    </section>
  )
}
