import { type Extension, StateEffect, StateField } from "@codemirror/state"
import { type EditorView, keymap, showTooltip, type Tooltip } from "@codemirror/view"

/** Asks for, or carries out, a new name for what stands at an offset; null when it was done, else why not. */
export interface RenameDesk {
  /** the name at the offset if it may be changed, else why not */
  look(text: string, offset: number): Promise<{ readonly name: string } | { readonly why: string }>
  change(text: string, offset: number, name: string): Promise<{ readonly why: string } | null>
  say(words: string): void
}

const shown = StateEffect.define<Tooltip | null>()

const field = StateField.define<Tooltip | null>({
  create: () => null,
  update(tooltip, transaction) {
    for (const effect of transaction.effects) if (effect.is(shown)) return effect.value
    return transaction.docChanged ? null : tooltip
  },
  provide: self => showTooltip.from(self),
})

function slip(view: EditorView, desk: RenameDesk, at: number, before: string): HTMLElement {
  const dom = document.createElement("form")
  dom.className = "rename"
  const label = document.createElement("label")
  label.textContent = `New name for ${before} `
  const input = document.createElement("input")
  input.value = before
  input.spellcheck = false
  input.autocomplete = "off"
  input.setAttribute("autocapitalize", "off")
  label.append(input)
  const words = document.createElement("p")
  words.setAttribute("role", "status")
  words.textContent = "Enter changes it everywhere, Escape leaves it."
  dom.append(label, words)
  const close = (): void => {
    view.dispatch({ effects: shown.of(null) })
    view.focus()
  }
  dom.addEventListener("keydown", event => {
    event.stopPropagation()
    if (event.key !== "Escape") return
    event.preventDefault()
    close()
  })
  dom.addEventListener("submit", event => {
    event.preventDefault()
    void desk.change(view.state.doc.toString(), at, input.value.trim()).then(refused => {
      if (refused === null) close()
      else {
        words.textContent = refused.why
        words.className = "rename-refused"
        input.focus()
      }
    })
  })
  setTimeout(() => {
    input.focus()
    input.select()
  }, 0)
  return dom
}

/** F2 on a name: a new name for it, everywhere in what may be written. Given lines stay as they are; then it says so. */
export function renaming(desk: RenameDesk): Extension {
  const ask = (view: EditorView): boolean => {
    const at = view.state.selection.main.head
    void desk.look(view.state.doc.toString(), at).then(found => {
      if ("why" in found) {
        desk.say(found.why)
        return
      }
      const tooltip: Tooltip = {
        pos: at,
        above: true,
        create: () => ({ dom: slip(view, desk, at, found.name) }),
      }
      view.dispatch({ effects: shown.of(tooltip) })
    })
    return true
  }
  return [field, keymap.of([{ key: "F2", run: ask }])]
}
