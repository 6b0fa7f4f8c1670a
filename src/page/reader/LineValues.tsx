import type { EditorView } from "@codemirror/view"
import { effect, useComputed } from "@preact/signals"
import { useEffect, useState } from "preact/hooks"
import { boardKey, setPlaces, type ValueBoard, type ValuePlace } from "../editor/besideLines.ts"
import { type Beside, besideLines } from "../lines/beside.ts"
import type { Looking } from "../lines/looking.ts"
import { keepValues } from "../lines/remember.ts"
import { grouped } from "../words.ts"

/** While the time runs, values beside lines are written so often in a second: numbers, not a flicker. */
const perSecond = 8

/** Follows the values of one cell's lines and writes them beside it, until the returned function is called. */
export function followValues(
  looking: Looking,
  cell: string,
  view: EditorView,
  board: ValueBoard,
): () => void {
  let places = ""
  let waiting = 0
  let last = 0
  const write = (): void => {
    waiting = 0
    last = performance.now()
    const beside = looking.wanted.peek() ? besideNow(looking, cell) : []
    board.write(new Map(beside.map(one => [boardKey(one.line, one.variable), one.figure])))
  }
  const stop = effect(() => {
    const found = looking.wanted.value ? looking.found.value : null
    const next = found && looking.current.value ? placesOf(besideLines(found, cell, 0)) : null
    const text = JSON.stringify(looking.wanted.value ? next : [])
    view.dom.classList.toggle("beside-old", looking.wanted.value && !looking.current.value)
    looking.hand.value?.row.value
    if (text !== "null" && text !== places) {
      places = text
      view.dispatch({ effects: setPlaces.of(next ?? []) })
    }
    const wait = Math.max(0, last + 1000 / perSecond - performance.now())
    if (waiting === 0) waiting = window.setTimeout(write, wait)
  })
  return () => {
    clearTimeout(waiting)
    stop()
  }
}

/** The values beside a cell's lines now; none while they are being found. */
export function besideNow(looking: Looking, cell: string): Beside[] {
  const found = looking.found.value
  const row = looking.hand.value?.row.value
  if (!found || row === undefined || !looking.current.value) return []
  return besideLines(found, cell, row)
}

function placesOf(beside: readonly Beside[]): ValuePlace[] {
  const lines = new Map<number, ValuePlace["variables"][number][]>()
  for (const { line, variable, name, named } of beside)
    lines.set(line, [...(lines.get(line) ?? []), { key: variable, name, named }])
  return [...lines].map(([line, variables]) => ({ line, variables }))
}

/** Below a listing: whether its values are shown, which turn they are of, and the same as a list that can be read out. */
export function LineValues({ looking, cell }: { looking: Looking; cell: string }) {
  const wanted = looking.wanted.value
  const choose = (): void => {
    looking.wanted.value = !wanted
    keepValues(!wanted)
  }
  return (
    <div class="line-values">
      <button type="button" class="word-button" onClick={choose}>
        {wanted ? "put the values away" : "values beside the lines"}
      </button>
      {wanted && <Turn looking={looking} cell={cell} />}
    </div>
  )
}

function Turn({ looking, cell }: { looking: Looking; cell: string }) {
  const hand = looking.hand.value
  const [open, setOpen] = useState(false)
  const any = useComputed(() => besideNow(looking, cell).some(one => one.figure !== "")).value
  if (!hand) return <span class="line-values-row">none: nothing is recorded yet</span>
  const row = hand.row.value + 1
  const time = hand.time.value
  return (
    <>
      <span class="line-values-row">
        row {grouped(row)} of {grouped(hand.rows)}
        {time && <>, {time}</>}
        {hand.cell !== cell && <> of {hand.cell}</>}
      </span>
      <span class="line-values-steps">
        <button type="button" class="word-button" aria-label="one turn back" onClick={() => hand.step(-1)}>
          back
        </button>
        <button type="button" class="word-button" aria-label="one turn on" onClick={() => hand.step(1)}>
          on
        </button>
      </span>
      {any && (
        <details class="line-values-list" open={open} onToggle={event => setOpen(event.currentTarget.open)}>
          <summary>as a list</summary>
          {open && <List looking={looking} cell={cell} />}
        </details>
      )}
    </>
  )
}

function List({ looking, cell }: { looking: Looking; cell: string }) {
  const shown = besideNow(looking, cell).filter(one => one.figure !== "")
  return (
    <table aria-label={`Values that the lines of ${cell} set in the turn shown`}>
      <thead>
        <tr>
          <th scope="col">line</th>
          <th scope="col">sets</th>
          <th scope="col">to</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {shown.map(one => (
          <tr key={`${one.line} ${one.variable}`}>
            <td>{one.line}</td>
            <th scope="row">{one.name}</th>
            <td>{one.figure}</td>
            <td>
              <button
                type="button"
                class="word-button"
                aria-label={`plot ${one.name}`}
                onClick={() => looking.send(one.variable)}
              >
                plot
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Words for the line that the caret stands on, for whoever asks. */
export function wordsForLine(looking: Looking, cell: string, line: number): string {
  if (!looking.wanted.peek()) return "The values beside the lines are put away."
  const here = besideNow(looking, cell).filter(one => one.line === line)
  if (here.length === 0) return `Line ${line} sets nothing.`
  return here
    .map(one => (one.figure === "" ? `${one.name} is not set in this turn` : `${one.name} is ${one.figure}`))
    .join(", ")
}

/** The first variable that a line sets; null for none. */
export function variableOnLine(looking: Looking, cell: string, line: number): Beside | null {
  return besideNow(looking, cell).find(one => one.line === line) ?? null
}

/** Holds one text for a moment, so that the same words can be said twice. */
export function useSaid(): [string, (text: string) => void] {
  const [said, setSaid] = useState("")
  useEffect(() => {
    if (said === "") return
    const timer = setTimeout(() => setSaid(""), 4000)
    return () => clearTimeout(timer)
  }, [said])
  return [said, setSaid]
}
