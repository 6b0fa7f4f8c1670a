import { type Extension, type Range, StateEffect, StateField } from "@codemirror/state"
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view"

/** A line of the listing as a formula, already set. */
export interface SetEquation {
  /** where the assignment begins in the listing's text */
  readonly from: number
  readonly html: string
  readonly words: string
}

/** Sets the formulas of one listing anew; none to put them away. */
export const setEquations = StateEffect.define<readonly SetEquation[]>()

/** Formulas above a line, as deep as the line. A screen reader has them as a list of their own, below the listing. */
class Formulas extends WidgetType {
  readonly key: string
  constructor(
    readonly equations: readonly SetEquation[],
    readonly indent: number,
  ) {
    super()
    this.key = `${indent} ${equations.map(one => one.html).join("\n")}`
  }
  override eq(other: Formulas): boolean {
    return other.key === this.key
  }
  toDOM(): HTMLElement {
    const all = document.createElement("div")
    all.className = "line-equations"
    all.setAttribute("aria-hidden", "true")
    all.style.setProperty("--indent", String(this.indent))
    for (const { html } of this.equations) {
      const one = document.createElement("span")
      one.className = "line-equation"
      // KaTeX's own output, of a formula that is made from a syntax tree: names and texts are escaped in it
      one.innerHTML = html
      all.append(one)
    }
    return all
  }
  override ignoreEvent(): boolean {
    return false
  }
}

function decorate(doc: EditorView["state"]["doc"], equations: readonly SetEquation[]): DecorationSet {
  const lines = new Map<number, SetEquation[]>()
  for (const one of equations) {
    if (one.from > doc.length) continue
    const { number } = doc.lineAt(one.from)
    const list = lines.get(number) ?? []
    list.push(one)
    lines.set(number, list)
  }
  const ranges: Range<Decoration>[] = [...lines].map(([number, list]) => {
    const line = doc.line(number)
    const indent = /^ */.exec(line.text)![0].length
    // nearer to the line than a prompt, which stands at -1
    return Decoration.widget({ widget: new Formulas(list, indent), block: true, side: -0.5 }).range(line.from)
  })
  return Decoration.set(ranges, true)
}

/** Formulas stay at their lines while one types, until the next ones are set. */
export const equationLines: Extension = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(set, transaction) {
    for (const effect of transaction.effects)
      if (effect.is(setEquations)) return decorate(transaction.state.doc, effect.value)
    return transaction.docChanged ? set.map(transaction.changes) : set
  },
  provide: self => EditorView.decorations.from(self),
})
