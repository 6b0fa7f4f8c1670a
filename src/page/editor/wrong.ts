import { type Extension, StateEffect, StateField } from "@codemirror/state"
import { Decoration, type DecorationSet, EditorView } from "@codemirror/view"
import type { Place } from "../../cell/problem.ts"

/** Underlines the places of problems; sent anew whenever they change. */
export const setWrong = StateEffect.define<readonly Place[]>()

const mark = Decoration.mark({ class: "wrong" })

function underline(view: { doc: EditorView["state"]["doc"] }, places: readonly Place[]): DecorationSet {
  const { doc } = view
  const ranges = places.flatMap(place => {
    if (place.line < 1 || place.line > doc.lines) return []
    const line = doc.line(place.line)
    let from = Math.min(line.from + Math.max(0, place.column - 1), line.to)
    const endLine = doc.line(Math.min(Math.max(place.endLine ?? place.line, place.line), doc.lines))
    let to = Math.min(endLine.from + Math.max(0, (place.endColumn ?? place.column + 1) - 1), endLine.to)
    // an end of line or an empty stretch still has to be seen: the nearest character carries the mark
    if (to <= from) to = Math.min(from + 1, line.to)
    if (to <= from) from = Math.max(line.from, to - 1)
    return from < to ? [mark.range(from, to)] : []
  })
  return Decoration.set(ranges, true)
}

export const wrongPlaces: Extension = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(set, transaction) {
    for (const effect of transaction.effects)
      if (effect.is(setWrong)) return underline(transaction.state, effect.value)
    return set.map(transaction.changes)
  },
  provide: self => EditorView.decorations.from(self),
})
