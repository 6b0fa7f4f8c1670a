import { type EditorState, type Extension, StateEffect, StateField } from "@codemirror/state"
import { type EditorView, hoverTooltip, keymap, showTooltip, type Tooltip } from "@codemirror/view"
import type { About } from "../../cell/types/contract.ts"
import type { ReferenceEntry } from "../reference/extract.ts"

/** Where the build puts the library's page and the same as data. */
const page = "reference/index.html"
const data = "reference/reference.json"

type Words = ReadonlyMap<string, Pick<ReferenceEntry, "name" | "signature" | "summary" | "law">>

let words: Promise<Words> | null = null

/** Fetched when somebody first asks; without a connection there is nothing to show, and the next one asks again. */
function libraryWords(): Promise<Words> {
  words ??= fetch(data)
    .then(answer => (answer.ok ? (answer.json() as Promise<ReferenceEntry[]>) : []))
    .then(entries => new Map(entries.filter(({ kind }) => kind !== "type").map(entry => [entry.name, entry])))
  words.catch(() => {
    words = null
  })
  return words
}

/** What the checker knows of a name; null where it knows none, or is not there. */
export type AskAbout = (text: string, offset: number) => Promise<About | null>

async function tooltipAt(state: EditorState, at: number, ask: AskAbout): Promise<Tooltip | null> {
  const word = state.wordAt(at)
  if (word === null) return null
  const known = await libraryWords().catch(() => new Map() as Words)
  const entry = known.get(state.sliceDoc(word.from, word.to))
  const about = await ask(state.doc.toString(), at)
  // a name of the sheet's own may be that of a library function too
  const own = about !== null && entry !== undefined && !about.head.startsWith(`${entry.name}(`)
  if (entry !== undefined && !own) return tooltip(word, card(entry))
  return about && tooltip(about, plainCard(about))
}

const tooltip = ({ from, to }: { from: number; to: number }, dom: HTMLElement): Tooltip => ({
  pos: from,
  end: to,
  above: true,
  create: () => ({ dom }),
})

function plainCard({ head, says }: About): HTMLElement {
  const dom = document.createElement("div")
  dom.className = "library-words"
  const code = document.createElement("code")
  code.textContent = head
  const words = document.createElement("p")
  words.textContent = says
  dom.append(code, ...(says === "" ? [] : [words]))
  return dom
}

function card({
  name,
  signature,
  summary,
  law,
}: Pick<ReferenceEntry, "name" | "signature" | "summary" | "law">): HTMLElement {
  const dom = document.createElement("div")
  dom.className = "library-words"
  const line = (tag: "p" | "code", text: string): void => {
    const element = document.createElement(tag)
    element.textContent = text
    dom.append(element)
  }
  line("code", signature)
  line("p", summary)
  if (law !== undefined && law !== "") line("code", law)
  const more = document.createElement("a")
  more.href = `${page}#${name}`
  more.target = "_blank"
  more.rel = "noopener"
  more.textContent = "more in the library"
  dom.append(more)
  return dom
}

const asked = StateEffect.define<Tooltip | null>()

/** The card that was asked for by key; it goes with the next edit or move. */
const byKey = StateField.define<Tooltip | null>({
  create: () => null,
  update(tooltip, transaction) {
    for (const effect of transaction.effects) if (effect.is(asked)) return effect.value
    return transaction.docChanged || transaction.selection ? null : tooltip
  },
  provide: field => showTooltip.from(field),
})

/** What a name is and what a library function does: on the word under the pointer, or with Alt-h on the word at the caret. */
export function wordCards(ask: AskAbout): Extension {
  const askByKey = (view: EditorView): boolean => {
    const { head } = view.state.selection.main
    void tooltipAt(view.state, head, ask).then(tooltip => view.dispatch({ effects: asked.of(tooltip) }))
    return true
  }
  return [
    hoverTooltip((view, at) => tooltipAt(view.state, at, ask), { hoverTime: 400 }),
    byKey,
    keymap.of([{ key: "Alt-h", run: askByKey }]),
  ]
}
