import {
  acceptCompletion,
  autocompletion,
  type Completion,
  type CompletionContext,
  type CompletionResult,
  closeCompletion,
  moveCompletionSelection,
  startCompletion,
} from "@codemirror/autocomplete"
import { type Extension, Prec } from "@codemirror/state"
import { keymap } from "@codemirror/view"
import type { Suggestion, Suggestions } from "../../cell/types/contract.ts"
import { regionAt } from "./clip.ts"
import { regionsField } from "./regions.ts"
import { suggesting } from "./suggesting.ts"

/** Where the words come from: the checker, asked with the whole text and the caret. */
export type AskSuggestions = (text: string, offset: number, wait: boolean) => Promise<Suggestions | null>

/** A word shorter than this is sooner typed than chosen. */
const shortest = 2

/** Nearer things first: what the sheet itself made, then the library, then the language. */
const weight: Readonly<Record<Suggestion["sort"], number>> = {
  part: 6,
  own: 5,
  parameter: 4,
  library: 2,
  language: 0,
  word: -2,
}

const sortWords: Readonly<Record<Suggestion["sort"], string>> = {
  part: "",
  own: "",
  parameter: "parameter",
  library: "library",
  language: "",
  word: "",
}

function optionOf({ name, sort, kind, says }: Suggestion): Completion {
  const detail = [kind, sortWords[sort]].filter(word => word !== "").join("; ")
  return {
    label: name,
    boost: weight[sort],
    ...(detail === "" ? {} : { detail }),
    ...(says === ""
      ? {}
      : {
          info: () => {
            const dom = document.createElement("p")
            dom.className = "suggestion-says"
            dom.textContent = says
            return dom
          },
        }),
  }
}

/**
 * Names suggested while one types in a blank, and with Ctrl-Space wherever one may write. Nothing is chosen until an arrow key
 * chooses it, so that Enter stays a new line and Tab leaves; Escape puts the list away.
 */
export function suggestions(ask: AskSuggestions): Extension {
  const source = async (context: CompletionContext): Promise<CompletionResult | null> => {
    const { state, pos, explicit } = context
    if (!explicit && !suggesting.peek()) return null
    if (!regionAt(state.field(regionsField), pos)) return null
    const word = context.matchBefore(/[\p{ID_Start}_$][\p{ID_Continue}$]*/u)
    const behindDot = /\.$/.test(state.sliceDoc(Math.max(0, (word?.from ?? pos) - 1), word?.from ?? pos))
    if (!explicit && !behindDot && (word === null || word.to - word.from < shortest)) return null
    const found = await ask(state.doc.toString(), pos, explicit)
    if (context.aborted || found === null || found.list.length === 0) return null
    const names = new Set(found.list.map(({ name }) => name))
    // A word that is a name already asks for nothing: the list would only catch the arrow keys.
    if (!explicit && names.has(state.sliceDoc(found.from, pos))) return null
    return {
      from: found.from,
      options: found.list.map(optionOf),
      validFor: text => /^[\p{ID_Continue}$]*$/u.test(text) && !names.has(text),
    }
  }
  return [
    autocompletion({
      override: [source],
      selectOnOpen: false,
      defaultKeymap: false,
      icons: false,
      // few enough to stand without scrolling; arrow keys bring the rest
      maxRenderedOptions: 9,
      tooltipClass: () => "suggestions",
    }),
    Prec.highest(
      keymap.of([
        { key: "Ctrl-Space", run: startCompletion },
        { key: "Escape", run: closeCompletion },
        { key: "ArrowDown", run: moveCompletionSelection(true) },
        { key: "ArrowUp", run: moveCompletionSelection(false) },
        { key: "Enter", run: acceptCompletion },
      ]),
    ),
  ]
}
