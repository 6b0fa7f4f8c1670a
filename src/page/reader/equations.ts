import type { EditorView } from "@codemirror/view"
import { computed, effect, type ReadonlySignal, type Signal, signal } from "@preact/signals"
import { assembleProgram } from "../../cell/assemble.ts"
import { equationsOf } from "../../cell/equation/index.ts"
import { type SetEquation, setEquations } from "../editor/equationLines.ts"
import { type Session, textsOf } from "../session.ts"

/** From the last keystroke to the new formulas, ms. */
const setAfter = 150

const key = (sheet: string): string => `deltasheet/equations/${sheet}`

/** The listings of a worksheet that are shown with their equations, as this device remembers it. */
function recall(sheet: string): ReadonlySet<string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key(sheet)) ?? "[]")
    return new Set(Array.isArray(kept) ? kept.filter(one => typeof one === "string") : [])
  } catch {
    return new Set()
  }
}

function keep(sheet: string, cells: ReadonlySet<string>): void {
  try {
    if (cells.size === 0) localStorage.removeItem(key(sheet))
    else localStorage.setItem(key(sheet), JSON.stringify([...cells]))
  } catch {
    // kept for this visit only
  }
}

/** One equation of a listing: for the eye and for the ear. */
export interface LineEquation extends SetEquation {
  /** in the listing, from 1 */
  readonly line: number
}

/** The equations of one listing, while they are wanted. */
export interface CellEquations {
  readonly wanted: ReadonlySignal<boolean>
  readonly list: ReadonlySignal<readonly LineEquation[]>
  toggle(): void
  /** writes them above the lines of an editor, until the returned function is called */
  follow(view: EditorView): () => void
}

const chosen = new WeakMap<Session, Signal<ReadonlySet<string>>>()

function choices(session: Session): Signal<ReadonlySet<string>> {
  const found = chosen.get(session)
  if (found) return found
  const fresh = signal(recall(session.edition.sheet.id))
  chosen.set(session, fresh)
  return fresh
}

/** The equations of one cell of an open worksheet. KaTeX is fetched when the first are asked for. */
export function cellEquations(session: Session, cell: string): CellEquations {
  const { sheet } = session.edition
  const choice = choices(session)
  const wanted = computed(() => choice.value.has(cell))
  const list = signal<readonly LineEquation[]>([])
  let waiting = 0

  const work = async (): Promise<void> => {
    const { default: katex } = await import("katex")
    if (!wanted.peek()) return
    const texts = textsOf(session.edition, session.keeper.answers.peek())
    const program = assembleProgram(
      sheet.cells,
      texts,
      sheet.parameters.map(parameter => parameter.name),
      sheet.timeStep,
    )
    const place = program.cells.find(one => one.name === cell)
    if (!place) return
    list.value = equationsOf(program)
      .filter(one => place.from <= one.from && one.to <= place.to)
      .map(({ from, tex, words }) => ({
        from: from - place.from,
        line: program.text.slice(place.from, from).split("\n").length,
        words,
        html: katex.renderToString(tex, {
          throwOnError: false,
          output: "html",
          strict: "ignore",
          trust: false,
        }),
      }))
  }

  return {
    wanted,
    list,
    toggle() {
      const next = new Set(choice.peek())
      if (!next.delete(cell)) next.add(cell)
      choice.value = next
      keep(sheet.id, next)
    },
    follow(view) {
      const stopAsking = effect(() => {
        session.keeper.answers.value
        clearTimeout(waiting)
        if (!wanted.value) list.value = []
        // without the typesetter the listing stays as it is
        else
          waiting = window.setTimeout(
            () => void work().catch(() => {}),
            list.peek().length > 0 ? setAfter : 0,
          )
      })
      const stopWriting = effect(() => {
        const now = list.value
        view.dispatch({ effects: setEquations.of(now) })
      })
      return () => {
        clearTimeout(waiting)
        stopAsking()
        stopWriting()
      }
    },
  }
}
