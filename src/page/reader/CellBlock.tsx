import type { EditorView } from "@codemirror/view"
import { effect, untracked, useComputed } from "@preact/signals"
import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks"
import type { CellSource } from "../../cell/contract.ts"
import { createValueBoard } from "../editor/besideLines.ts"
import { setListing } from "../editor/listing.ts"
import { createListingEditor, placeTexts, topOfBlank, topOfLine } from "../editor/listingEditor.ts"
import { chooseSuggesting, suggesting } from "../editor/suggesting.ts"
import { setWrong } from "../editor/wrong.ts"
import { type Session, textsOf } from "../session.ts"
import { untouched } from "../tried.ts"
import { plural } from "../words.ts"
import { Checks } from "./Checks.tsx"
import { Earlier } from "./Earlier.tsx"
import { EquationsBelow } from "./EquationsBelow.tsx"
import { cellEquations } from "./equations.ts"
import { followValues, LineValues, useSaid, variableOnLine, wordsForLine } from "./LineValues.tsx"
import { Notes } from "./Notes.tsx"
import { nameHelp } from "./nameHelp.ts"
import { type Anchor, notesFor } from "./notes.ts"
import { valueWords } from "./sheetValues.ts"

/** How long the words about a locked line stay, ms. */
const refusalStays = 4000

/** A cell set like a listing in a book, with its notes in the margin and what will be looked at below. */
export function CellBlock(props: {
  session: Session
  cell: CellSource
  number: number
  onFocus: () => void
}) {
  const { session, cell, number, onFocus } = props
  const id = useId()
  const place = useRef<HTMLDivElement>(null)
  const view = useRef<EditorView | null>(null)
  const [geometry, setGeometry] = useState(0)
  const [refused, setRefused] = useState(false)
  const [said, say] = useSaid()
  const { looking } = session
  const equations = useMemo(() => cellEquations(session, cell.name), [session, cell])
  const blanks = cell.segments.flatMap(segment => (segment.kind === "blank" ? [segment] : []))
  const checks = session.edition.sheet.checks.filter(check => check.cell === cell.name)
  const points = checks.reduce((sum, check) => sum + check.points, 0)

  useEffect(() => {
    if (!place.current) return
    let forget = 0
    const listing = setListing(
      cell,
      untracked(() => textsOf(session.edition, session.keeper.answers.value)),
    )
    const board = createValueBoard(looking.send)
    const names = blanks.map(blank => blank.name).join(", ")
    const editor = createListingEditor(
      place.current,
      listing,
      {
        label: `Listing ${number}, ${cell.name}${names === "" ? ", to read" : `; blanks: ${names}`}`,
        describedBy: `${id}-keys`,
      },
      {
        onTexts: texts => session.write(texts),
        onRefused: () => {
          setRefused(true)
          clearTimeout(forget)
          forget = window.setTimeout(() => setRefused(false), refusalStays)
        },
        onRun: session.run,
        onFocus,
        onGeometry: () => setGeometry(count => count + 1),
        onPlotLine: line => {
          const one = variableOnLine(looking, cell.name, line)
          if (one) looking.send(one.variable)
          say(one ? `${one.name} is plotted on the bench.` : wordsForLine(looking, cell.name, line))
        },
        onSayLine: line => say(wordsForLine(looking, cell.name, line)),
        onEquations: equations.toggle,
        onStep: by => looking.hand.peek()?.step(by),
      },
      [board.extension, nameHelp(session, cell.name, say)],
    )
    view.current = editor
    setGeometry(count => count + 1)
    const stopTexts = effect(() => placeTexts(editor, textsOf(session.edition, session.keeper.answers.value)))
    const stopWrong = effect(() => {
      const here = session.findings.value.flatMap(problem =>
        problem.where?.cell === cell.name ? [problem.where] : [],
      )
      editor.dispatch({ effects: setWrong.of(here) })
    })
    const stopEquations = equations.follow(editor)
    const stopValues = followValues(looking, cell.name, editor, board)
    return () => {
      clearTimeout(forget)
      stopEquations()
      stopValues()
      stopTexts()
      stopWrong()
      editor.destroy()
      view.current = null
    }
  }, [])

  const notes = useComputed(() =>
    notesFor(
      cell,
      session.edition.sheet.checks,
      session.findings.value,
      session.standing.value,
      session.reference,
      untouched(session.edition, session.keeper.answers.value),
      (check, verdict) => valueWords(session.edition.sheet, check, verdict, session.varied.value),
    ),
  ).value
  const topOf = (anchor: Anchor): number => {
    if (!view.current) return 0
    const inside =
      anchor.kind === "blank" ? topOfBlank(view.current, anchor.name) : topOfLine(view.current, anchor.line)
    return inside + (place.current?.offsetTop ?? 0)
  }
  const typed = session.keeper.answers.value
  const changed = blanks.filter(
    blank => typed[blank.name] !== undefined && typed[blank.name] !== blank.starter,
  )
  return (
    <section class="listing-block" data-cell={cell.name} aria-labelledby={`${id}-caption`}>
      <figure class="listing">
        <figcaption class="listing-caption" id={`${id}-caption`}>
          <span class="caps">Listing {number}</span> <i>{cell.name}</i>
        </figcaption>
        {points > 0 && <p class="margin-points">{plural(points, "point")}</p>}
        <div class="listing-text" ref={place} />
      </figure>
      <Notes notes={notes} topOf={topOf} geometry={geometry} />
      <div class="listing-foot screen-only">
        <LineValues looking={looking} cell={cell.name} />
        <EquationsBelow equations={equations} number={number} />
        <p id={`${id}-keys`} class={refused ? "listing-keys refused" : "listing-keys"}>
          {said !== "" ? (
            <span role="status">{said}</span>
          ) : refused ? (
            <span role="status">
              The given lines stay as they are; write on the ruled {blanks.length > 1 ? "lines" : "line"}.
            </span>
          ) : (
            <>
              <kbd>Ctrl</kbd> <kbd>Enter</kbd> runs at once, <kbd>Ctrl</kbd> <kbd>]</kbd> indents,{" "}
              <kbd>Alt</kbd> <kbd>h</kbd> explains a word, <kbd>F2</kbd> renames it, <kbd>Ctrl</kbd>{" "}
              <kbd>Space</kbd> suggests names, <kbd>Alt</kbd> <kbd>v</kbd> says the values of the line,{" "}
              <kbd>Alt</kbd> <kbd>p</kbd> plots them, <kbd>Alt</kbd> <kbd>e</kbd> sets the lines as equations,{" "}
              <kbd>Alt</kbd> <kbd>,</kbd> and <kbd>.</kbd> go a turn back and on, <kbd>Tab</kbd> leaves
            </>
          )}
        </p>
        {blanks.length > 0 && (
          <button
            type="button"
            class="word-button"
            aria-pressed={suggesting.value}
            onClick={() => chooseSuggesting(!suggesting.value)}
          >
            names suggested while typing: {suggesting.value ? "yes" : "no"}
          </button>
        )}
        {changed.map(blank => (
          <button
            key={blank.name}
            type="button"
            class="word-button"
            onClick={() =>
              session.keeper.replace(
                { answers: { [blank.name]: blank.starter }, questions: {} },
                "before it was started again",
              )
            }
          >
            start {blanks.length > 1 ? <i>{blank.name}</i> : "this blank"} again
          </button>
        ))}
        {blanks.map(blank => (
          <Earlier
            key={blank.name}
            blank={blank.name}
            past={session.keeper.work.value.past}
            onBring={text =>
              session.keeper.replace(
                { answers: { [blank.name]: text }, questions: {} },
                "before an earlier text was brought back",
              )
            }
          />
        ))}
      </div>
      <Checks cell={cell} checks={checks} session={session} />
    </section>
  )
}
