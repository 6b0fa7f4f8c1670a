import { defaultKeymap, history, historyKeymap } from "@codemirror/commands"
import { javascript } from "@codemirror/lang-javascript"
import { bracketMatching, forceParsing, indentOnInput, indentUnit } from "@codemirror/language"
import { EditorState, type Extension, Prec } from "@codemirror/state"
import { EditorView, gutters, highlightSpecialChars, keymap, lineNumbers } from "@codemirror/view"
import { equationLines } from "./equationLines.ts"
import type { Listing } from "./listing.ts"
import { palette } from "./palette.ts"
import { byPage, lockGiven, refusedEdit, regionsField, textsOf } from "./regions.ts"
import { ruledLines } from "./ruled.ts"
import { wrongPlaces } from "./wrong.ts"

export interface ListingEvents {
  /** the blanks whose text one edit changed, as they now stand */
  readonly onTexts: (texts: Readonly<Record<string, string>>) => void
  /** an edit fell on given lines and was left out */
  readonly onRefused: () => void
  readonly onRun: () => void
  readonly onFocus: () => void
  /** heights may have changed: of the text, its wrapping or its prompts */
  readonly onGeometry: () => void
  /** the variable that a line sets is wanted in a plot, or in words; lines count from 1 */
  readonly onPlotLine: (line: number) => void
  readonly onSayLine: (line: number) => void
  /** to the next turn of the motion shown, or the one before */
  readonly onStep: (by: 1 | -1) => void
  /** the lines are wanted as equations, or no longer */
  readonly onEquations: () => void
}

/** The attributes that a screen reader needs. */
export interface ListingLabels {
  readonly label: string
  readonly describedBy: string
}

function events(to: ListingEvents): Extension {
  return EditorView.updateListener.of(update => {
    if (update.focusChanged && update.view.hasFocus) to.onFocus()
    if (update.geometryChanged) to.onGeometry()
    const refused = update.transactions.some(transaction =>
      transaction.effects.some(effect => effect.is(refusedEdit)),
    )
    if (refused) to.onRefused()
    if (!update.docChanged || update.transactions.every(transaction => transaction.annotation(byPage))) return
    const before = textsOf(update.startState)
    const changed = Object.entries(textsOf(update.state)).filter(([blank, text]) => before[blank] !== text)
    if (changed.length > 0) to.onTexts(Object.fromEntries(changed))
  })
}

const readMilliseconds = 1000

/**
 * Has the text read up to the cursor before a new line is begun. On a machine that is busy the editor reads on later, and
 * a line begun in between would stand at the indentation of the one before it.
 */
function readFirst(view: EditorView): boolean {
  forceParsing(view, view.state.selection.main.to, readMilliseconds)
  return false // and the key does what it does
}

/** An editor for one cell: given lines locked, blanks open. */
export function createListingEditor(
  parent: HTMLElement,
  listing: Listing,
  labels: ListingLabels,
  to: ListingEvents,
  more: Extension = [],
): EditorView {
  const first = listing.regions[0]
  const onLine = (act: (line: number) => void) => (view: EditorView) => {
    act(view.state.doc.lineAt(view.state.selection.main.head).number)
    return true
  }
  const stepBy = (by: 1 | -1) => () => {
    to.onStep(by)
    return true
  }
  return new EditorView({
    parent,
    state: EditorState.create({
      doc: listing.text,
      selection: { anchor: first ? first.to : 0 },
      extensions: [
        lockGiven(listing.regions),
        ruledLines,
        equationLines,
        wrongPlaces,
        history(),
        lineNumbers(),
        gutters({ fixed: false }),
        highlightSpecialChars(),
        javascript({ typescript: true }).language,
        palette,
        indentUnit.of("  "),
        indentOnInput(),
        bracketMatching(),
        more,
        EditorView.lineWrapping,
        Prec.highest(
          keymap.of([
            {
              key: "Mod-Enter",
              run: () => {
                to.onRun()
                return true
              },
            },
            { key: "Alt-p", run: onLine(to.onPlotLine) },
            { key: "Alt-v", run: onLine(to.onSayLine) },
            {
              key: "Alt-e",
              run: () => {
                to.onEquations()
                return true
              },
            },
            { key: "Alt-,", run: stepBy(-1) },
            { key: "Alt-.", run: stepBy(1) },
          ]),
        ),
        keymap.of([{ key: "Enter", run: readFirst }, ...defaultKeymap, ...historyKeymap]),
        EditorView.contentAttributes.of({
          "aria-label": labels.label,
          "aria-describedby": labels.describedBy,
          autocapitalize: "off",
          autocorrect: "off",
          spellcheck: "false",
        }),
        events(to),
      ],
    }),
  })
}

/** Puts texts from elsewhere into their blanks; undo brings back what was there. */
export function placeTexts(view: EditorView, texts: Readonly<Record<string, string>>): void {
  const changes = view.state.field(regionsField).flatMap(region => {
    const text = texts[region.name]
    if (text === undefined || text === view.state.sliceDoc(region.from, region.to)) return []
    return [{ from: region.from, to: region.to, insert: text }]
  })
  if (changes.length > 0) view.dispatch({ changes, annotations: byPage.of(true) })
}

/** Height of a line's top above the listing's text, px. */
export function topOfLine(view: EditorView, line: number): number {
  const n = Math.min(Math.max(1, line), view.state.doc.lines)
  return view.lineBlockAt(view.state.doc.line(n).from).top
}

/** Height of a blank's top, its prompt included, px. */
export function topOfBlank(view: EditorView, blank: string): number {
  const region = view.state.field(regionsField).find(candidate => candidate.name === blank)
  return region ? view.lineBlockAt(region.from).top : 0
}
