import type { Signal } from "@preact/signals"
import { useMemo, useState } from "preact/hooks"
import type { SceneView } from "../../worksheet/contract.ts"
import { accountOf, accountOfAll } from "./account.ts"
import { type AngularBooks, angularBooks, hasMomentum } from "./angular.ts"
import { type Books, booksOf } from "./books.ts"
import { booksWords, payWords } from "./books-words.ts"
import type { Clock } from "./clock.ts"
import { significant } from "./number.ts"
import { Plot } from "./Plot.tsx"
import type { Measured } from "./PlotsDrawer.tsx"
import { pushesOf } from "./work.ts"

/** Momentum, forces and energy of a body over time, and what each force paid into them. */
export function BooksDrawer({
  own,
  reference,
  clock,
  label,
  view,
}: {
  own: Measured
  reference: Measured | null
  clock: Signal<Clock>
  label: (body: string) => string
  view: SceneView
}) {
  const { study } = own
  const kept = study.bodies.filter(b => b.momentum !== null)
  const [name, setName] = useState("")
  const [about, setAbout] = useState<readonly [number, number, number]>([0, 0, 0])
  const all = name === everyBody && kept.length > 1
  const body = kept.find(b => b.name === name) ?? kept[0]
  const books = useMemo(() => (body ? booksOf(study.recording, study.timeline, body) : null), [study, body])
  const account = useMemo(() => {
    if (all) return accountOfAll(study, kept, about)
    return body ? accountOf(study, body, label(body.name), about, own.quantities) : null
  }, [all, body, own, about, label])
  const quantities = useMemo(() => [...own.quantities, ...(account?.quantities ?? [])], [own, account])
  const pays = useMemo(
    () => (body ? payWords(study, pushesOf(study.recording, study.timeline, body), label(body.name)) : []),
    [study, body, label],
  )
  if (!body) return <p class="bn-note">No momentum is recorded, so there is nothing to book.</p>
  if (!books) return <p class="bn-note">Books need at least two rows with a time that goes on.</p>
  return (
    <>
      {kept.length > 1 && (
        <label class="bn-choose">
          <span>books of</span>
          <select value={all ? everyBody : body.name} onChange={event => setName(event.currentTarget.value)}>
            {kept.map(b => (
              <option key={b.name} value={b.name}>
                {label(b.name)}
              </option>
            ))}
            <option value={everyBody}>all bodies together</option>
          </select>
        </label>
      )}
      {!all && (
        <>
          {booksWords(study, books, view).map((text, k) => (
            <p key={text} class={k === 0 && books.gap ? "bn-warn" : "bn-text"}>
              {text}
            </p>
          ))}
          {pays.map(text => (
            <p key={text} class="bn-text">
              {text}
            </p>
          ))}
          <BooksTable books={books} />
          {hasMomentum(body) && (
            <AngularTable
              books={angularBooks(
                study.recording,
                study.timeline,
                body,
                about,
                books.forceOf === "step before" ? 0 : 1,
              )}
            />
          )}
        </>
      )}
      <About about={about} onAbout={setAbout} />
      {account?.wishes.map((wish, k) => (
        <Plot
          key={k}
          study={study}
          quantities={quantities}
          reference={reference}
          wish={wish}
          clock={clock}
          height={150}
        />
      ))}
    </>
  )
}

/** As no body is named: names of recorded bodies hold no blank. */
const everyBody = "all bodies"

/** The point that angular momentum is taken about. */
function About({
  about,
  onAbout,
}: {
  about: readonly [number, number, number]
  onAbout: (about: readonly [number, number, number]) => void
}) {
  const field = (name: string, k: 0 | 1) => (
    <label>
      <span class="bn-symbol">{name}</span>
      <input
        type="text"
        inputMode="decimal"
        value={String(about[k])}
        aria-label={`${name} of the point, m`}
        onChange={event => {
          const value = Number(event.currentTarget.value.replace("\u2212", "-").replace(",", "."))
          if (Number.isFinite(value)) onAbout(k === 0 ? [value, about[1], 0] : [about[0], value, 0])
          else event.currentTarget.value = String(about[k])
        }}
      />
    </label>
  )
  return (
    <fieldset class="bn-about">
      <legend>angular momentum about the point</legend>
      {field("x", 0)}
      {field("y", 1)}
      <span>m</span>
    </fieldset>
  )
}

/** Angular impulses of the forces, against the change of angular momentum. */
function AngularTable({ books }: { books: AngularBooks }) {
  const space = [books.change, ...books.entries.map(e => e.impulse)].some(v => v[0] !== 0 || v[1] !== 0)
  const parts = space ? ([0, 1, 2] as const) : ([2] as const)
  const names = ["x", "y", "z"]
  const sizes = [...books.entries.map(e => e.impulse), books.change].flat().map(Math.abs)
  // sums that cancel leave rounding of what was summed
  const dust = 1e-12 * Math.max(...sizes)
  const row = (name: string, values: readonly number[], sum = false) => (
    <tr key={name} class={sum ? "bn-sum" : undefined}>
      <th scope="row">{name}</th>
      {parts.map(k => (
        <td key={k}>{booked(Math.abs(values[k] ?? 0) < dust ? 0 : (values[k] ?? 0))}</td>
      ))}
    </tr>
  )
  const total = [0, 1, 2].map(k => books.entries.reduce((sum, e) => sum + (e.impulse[k] ?? 0), 0))
  return (
    <table class="bn-books">
      <caption>Angular impulses</caption>
      <thead>
        <tr>
          <th scope="col">force</th>
          {parts.map(k => (
            <th key={k} scope="col">{`about ${names[k]} (kg m²/s)`}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {books.entries.map(entry => row(entry.force, entry.impulse))}
        {row("sum", total, true)}
        {row("change recorded", books.change)}
      </tbody>
    </table>
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
