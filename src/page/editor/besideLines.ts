import { type Extension, type Range, StateEffect, StateField } from "@codemirror/state"
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view"

/** A place at the end of a line where values stand: one for each name that the line sets. */
export interface ValuePlace {
  readonly line: number
  readonly variables: readonly { readonly key: string; readonly name: string; readonly named: boolean }[]
}

/** Sets the places anew; sent whenever the program has changed. */
export const setPlaces = StateEffect.define<readonly ValuePlace[]>()

/** The elements of one editor that values are written into, by variable and line. */
export interface ValueBoard {
  /** writes the values as they are now; places that are not named stand empty */
  write(figures: ReadonlyMap<string, string>): void
  readonly extension: Extension
}

const keyOf = (line: number, variable: string): string => `${line} ${variable}`
export const boardKey = keyOf

/**
 * Values at the ends of lines. Numbers that follow the time are written straight into their elements: the editor need not
 * know of each. Not for screen readers, which would hear them with every line; they have a list to ask for.
 */
export function createValueBoard(onPick: (variable: string) => void): ValueBoard {
  const elements = new Map<string, HTMLElement>()
  let now: ReadonlyMap<string, string> = new Map()

  class Values extends WidgetType {
    readonly key: string
    constructor(readonly place: ValuePlace) {
      super()
      this.key = JSON.stringify(place)
    }
    override eq(other: Values): boolean {
      return other.key === this.key
    }
    toDOM(): HTMLElement {
      const all = document.createElement("span")
      all.className = "beside"
      all.setAttribute("aria-hidden", "true")
      for (const { key, name, named } of this.place.variables) {
        const one = document.createElement("span")
        one.className = "beside-one"
        one.title = `${name}: press to plot it`
        if (named) one.dataset.name = name
        const figure = document.createElement("span")
        figure.className = "beside-figure"
        one.append(figure)
        one.addEventListener("mousedown", event => {
          event.preventDefault()
          onPick(key)
        })
        const at = keyOf(this.place.line, key)
        elements.set(at, figure)
        put(figure, now.get(at) ?? "")
        all.append(one)
      }
      return all
    }
    override destroy(dom: HTMLElement): void {
      const gone = new Set(dom.querySelectorAll<HTMLElement>(".beside-figure"))
      for (const [at, element] of elements) if (gone.has(element)) elements.delete(at)
    }
    override ignoreEvent(): boolean {
      return true
    }
  }

  const field = StateField.define<DecorationSet>({
    create: () => Decoration.none,
    update(set, transaction) {
      for (const effect of transaction.effects) {
        if (!effect.is(setPlaces)) continue
        const { doc } = transaction.state
        const ranges: Range<Decoration>[] = effect.value
          .filter(place => place.line <= doc.lines)
          .map(place =>
            Decoration.widget({ widget: new Values(place), side: 1 }).range(doc.line(place.line).to),
          )
        return Decoration.set(ranges, true)
      }
      return transaction.docChanged ? set.map(transaction.changes) : set
    },
    provide: self => EditorView.decorations.from(self),
  })

  return {
    extension: field,
    write(figures) {
      now = figures
      for (const [at, element] of elements) put(element, figures.get(at) ?? "")
    },
  }
}

/** Figures are drawn from an attribute: the listing's own text stays what it is, for copying and searching too. */
function put(element: HTMLElement, text: string): void {
  if (element.dataset.figure === text) return
  element.dataset.figure = text
  element.parentElement?.classList.toggle("beside-none", text === "")
}
