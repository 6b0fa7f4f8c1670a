import { useLayoutEffect, useRef, useState } from "preact/hooks"
import { ProblemLink } from "../ProblemWords.tsx"
import { verdictWords } from "../words.ts"
import { type Anchor, type Note, stackNotes } from "./notes.ts"
import { VerdictMark } from "./VerdictMark.tsx"

/** An equals sign stays with what stands round it. */
const unbroken = (text: string): string => text.replace(/ ([=<>≤≥]) /g, "\u00a0$1\u00a0")

/** Notes beside a listing. Where there is a margin each stands at the height of what it speaks of. */
export function Notes(props: {
  notes: readonly Note[]
  /** height of an anchor below the listing's top, px */
  topOf: (anchor: Anchor) => number
  /** changes when heights may have */
  geometry: number
}) {
  const { notes, topOf, geometry } = props
  const list = useRef<HTMLUListElement>(null)
  const [tops, setTops] = useState<{ tops: ReadonlyMap<string, number>; height: number }>({
    tops: new Map(),
    height: 0,
  })
  useLayoutEffect(() => {
    const items = [...(list.current?.children ?? [])] as HTMLElement[]
    const measured = notes.map((note, i) => ({
      key: note.key,
      top: topOf(note.anchor),
      height: items[i]?.offsetHeight ?? 0,
    }))
    const stacked = stackNotes(measured, 12)
    const height = Math.max(0, ...measured.map(note => (stacked.get(note.key) ?? 0) + note.height))
    const same =
      height === tops.height && measured.every(note => stacked.get(note.key) === tops.tops.get(note.key))
    if (!same) setTops({ tops: stacked, height })
  }, [notes, geometry])
  if (notes.length === 0) return null
  return (
    <ul class="notes" ref={list} style={{ "--notes-height": `${tops.height}px` }}>
      {notes.map(note => (
        <li
          key={note.key}
          class={`note note-${note.tone.replaceAll(" ", "-")}${note.stale ? " note-stale" : ""}`}
          style={{ "--top": `${tops.tops.get(note.key) ?? topOf(note.anchor)}px` }}
        >
          <p class="note-head">
            <VerdictMark verdict={note.tone} />
            <span>{note.head}</span>
            {note.tone !== "problem" && <span class="note-verdict">{verdictWords(note.tone)}</span>}
          </p>
          <p class="note-text">{unbroken(note.text)}</p>
          {note.todo !== "" && (
            <p class="note-todo">
              {note.todo} {note.code !== "" && <ProblemLink code={note.code} />}
            </p>
          )}
          {note.aside !== "" && <p class="note-todo">{note.aside}</p>}
          {note.stale && <p class="note-todo">Said of the text before your last change.</p>}
        </li>
      ))}
    </ul>
  )
}
