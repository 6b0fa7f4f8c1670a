import { type EditorState, type Extension, type Range, StateField } from "@codemirror/state"
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view"
import type { Region } from "./listing.ts"
import { regionsField } from "./regions.ts"

/** The prompt of a blank, in small italics above its line, starting where the blank starts. */
class Prompt extends WidgetType {
  constructor(
    readonly text: string,
    readonly indent: number,
    readonly inline: boolean,
  ) {
    super()
  }
  override eq(other: Prompt): boolean {
    return other.text === this.text && other.indent === this.indent && other.inline === this.inline
  }
  toDOM(): HTMLElement {
    const line = document.createElement("div")
    line.className = this.inline ? "prompt prompt-inline" : "prompt"
    line.style.setProperty("--indent", String(this.indent))
    line.textContent = this.text
    return line
  }
  override ignoreEvent(): boolean {
    return false
  }
}

/** The ruled gap of an empty blank inside a line. */
class Gap extends WidgetType {
  override eq(): boolean {
    return true
  }
  toDOM(): HTMLElement {
    const gap = document.createElement("span")
    gap.className = "gap-empty"
    gap.setAttribute("aria-hidden", "true")
    return gap
  }
  override ignoreEvent(): boolean {
    return false
  }
}

const indentOf = (text: string): number => /^[ ]*/.exec(text)?.[0].length ?? 0

/** The prompt's column: where the blank's text begins, or as deep as the line before an empty one. */
function promptIndent(state: EditorState, region: Region): number {
  const line = state.doc.lineAt(region.from)
  if (region.inline) return region.from - line.from
  if (line.text.trim() !== "") return indentOf(line.text)
  const before = line.number > 1 ? state.doc.line(line.number - 1).text : ""
  return indentOf(before) + (/[{(]\s*$/.test(before) ? 2 : 0)
}

function decorate(state: EditorState): DecorationSet {
  const regions = state.field(regionsField)
  const ranges: Range<Decoration>[] = []
  const ruled = new Map<number, "first" | "more">()
  for (const region of regions) {
    const line = state.doc.lineAt(region.from)
    if (region.prompt !== "")
      ranges.push(
        Decoration.widget({
          widget: new Prompt(region.prompt, promptIndent(state, region), region.inline),
          block: true,
          side: -1,
        }).range(line.from),
      )
    if (region.inline) {
      ranges.push(
        region.from === region.to
          ? Decoration.widget({ widget: new Gap(), side: 1 }).range(region.from)
          : Decoration.mark({ class: "gap", inclusive: true }).range(region.from, region.to),
      )
      continue
    }
    const last = state.doc.lineAt(region.to).number
    for (let n = line.number; n <= last; n++) ruled.set(n, n === line.number ? "first" : "more")
  }
  for (let n = 1; n <= state.doc.lines; n++) {
    const line = state.doc.line(n)
    ranges.push(
      Decoration.line({
        class: ruled.has(n) ? "ruled" : "given",
        attributes: { style: `--indent:${indentOf(line.text)}` },
      }).range(line.from),
    )
  }
  return Decoration.set(ranges, true)
}

const field = StateField.define<DecorationSet>({
  create: decorate,
  update: (set, transaction) => (transaction.docChanged ? decorate(transaction.state) : set),
  provide: self => EditorView.decorations.from(self),
})

/** Given lines in grey, blanks as ruled lines with their prompts. */
export const ruledLines: Extension = field
