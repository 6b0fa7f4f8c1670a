import type { Signal } from "@preact/signals"
import { useMemo, useState } from "preact/hooks"
import { type Books, booksOf } from "./books.ts"
import { booksWords } from "./books-words.ts"
import type { Clock } from "./clock.ts"
import { significant } from "./number.ts"
import { Plot } from "./Plot.tsx"
import type { Measured } from "./PlotsDrawer.tsx"
import type { PlotWish } from "./plot-model.ts"

/** Momentum, forces and energy of a body over time, and what each force paid into them. */
export function BooksDrawer({
  own,
  reference,
  clock,
  label,
}: {
  own: Measured
  reference: Measured | null
  clock: Signal<Clock>
  label: (body: string) => string
}) {
  const { study } = own
  const kept = study.bodies.filter(b => b.momentum !== null)
  const [name, setName] = useState("")
  const body = kept.find(b => b.name === name) ?? kept[0]
  const books = useMemo(() => (body ? booksOf(study.recording, study.timeline, body) : null), [study, body])
  const wishes = useMemo(() => (body ? wishesFor(body.name, own) : []), [body, own])
  if (!body) return <p class="bn-note">No momentum is recorded, so there is nothing to book.</p>
  if (!books) return <p class="bn-note">Books need at least two rows with a time that goes on.</p>
  return (
    <>
      {kept.length > 1 && (
        <label class="bn-choose">
          <span>books of</span>
          <select value={body.name} onChange={event => setName(event.currentTarget.value)}>
            {kept.map(b => (
              <option key={b.name} value={b.name}>
                {label(b.name)}
              </option>
            ))}
          </select>
        </label>
      )}
      {booksWords(study, books).map((text, k) => (
        <p key={text} class={k === 0 && books.gap ? "bn-warn" : "bn-text"}>
          {text}
        </p>
      ))}
      <BooksTable books={books} />
      {wishes.map(wish => (
        <Plot key={wish.y.join()} {...own} reference={reference} wish={wish} clock={clock} height={150} />
      ))}
    </>
  )
}

function BooksTable({ books }: { books: Books }) {
  const space = books.change.momentum[2] !== 0 || books.entries.some(e => e.impulse[2] !== 0)
  const parts = space ? [0, 1, 2] : [0, 1]
  const names = ["x", "y", "z"]
  const total = (k: number) => books.entries.reduce((sum, e) => sum + (e.impulse[k] ?? 0), 0)
  const work = books.change.energy === null ? null : books.entries.reduce((sum, e) => sum + (e.work ?? 0), 0)
  return (
    <table class="bn-books">
      <caption>Paid over the whole recording</caption>
      <thead>
        <tr>
          <th scope="col">force</th>
          {parts.map(k => (
            <th key={k} scope="col">{`impulse ${names[k]} (N s)`}</th>
          ))}
          <th scope="col">work (J)</th>
        </tr>
      </thead>
      <tbody>
        {books.entries.map(entry => (
          <tr key={entry.force}>
            <th scope="row">{entry.force}</th>
            {parts.map(k => (
              <td key={k}>{booked(entry.impulse[k] ?? 0)}</td>
            ))}
            <td>{booked(entry.work)}</td>
          </tr>
        ))}
        <tr class="bn-sum">
          <th scope="row">sum</th>
          {parts.map(k => (
            <td key={k}>{booked(total(k))}</td>
          ))}
          <td>{booked(work)}</td>
        </tr>
        <tr>
          <th scope="row">change recorded</th>
          {parts.map(k => (
            <td key={k}>{booked(books.change.momentum[k] ?? 0)}</td>
          ))}
          <td>{booked(books.change.energy)}</td>
        </tr>
      </tbody>
    </table>
  )
}

/** Sums that cancel to rounding are written as 0, as a book-keeper would. */
function booked(value: number | null): string {
  return value === null ? "no mass" : significant(Math.abs(value) < 1e-12 ? 0 : value, 4)
}

/** Components that are zero throughout are left out, unless all are. */
function wishesFor(body: string, { study, quantities }: Measured): PlotWish[] {
  const moves = (id: string) => {
    const read = quantities.find(q => q.id === id)?.read
    for (let row = 0; read && row < study.recording.rows; row++) if (read(row) !== 0) return true
    return false
  }
  const has = (id: string) => quantities.some(q => q.id === id)
  const sum = has(`${body}.netForce.x`) ? [`${body}.netForce`] : []
  const vectors = [`${body}.momentum`, ...sum].map(name => {
    const parts = ["x", "y", "z"].map(k => `${name}.${k}`)
    const moving = parts.filter(moves)
    return moving.length > 0 ? moving : parts.slice(0, 1)
  })
  const energy = has(`${body}.kineticEnergy`) ? [[`${body}.kineticEnergy`]] : []
  return [...vectors, ...energy].map(y => ({ x: "t", y, caption: "" }))
}
