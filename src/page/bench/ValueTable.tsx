import type { Signal } from "@preact/signals"
import { useMemo, useState } from "preact/hooks"
import { type Clock, shownInstant } from "./clock.ts"
import { decimalsFor, fixed, unitText } from "./number.ts"
import type { Quantity } from "./quantities.ts"
import { strobeOf } from "./strobe.ts"
import type { Study } from "./study.ts"
import { meanStep, nearestRow } from "./timeline.ts"

/** bodies and rows of the table at first */
const mostBodies = 2
const usualRows = 8

/** Values at chosen times: at equal intervals at first, and at each instant that the reader adds. */
export function ValueTable({
  study,
  quantities,
  clock,
}: {
  study: Study
  quantities: readonly Quantity[]
  clock: Signal<Clock>
}) {
  const [added, setAdded] = useState<readonly number[]>([])
  const columns = useMemo(() => tabled(study, quantities), [study, quantities])
  const { timeline } = study
  const rows = useMemo(() => {
    const wanted = [...strobeOf(timeline, usualRows).instants, timeline.end, ...added]
    const found = wanted.map(t => nearestRow(timeline, t))
    return [...new Set(found)].sort((a, b) => a - b)
  }, [timeline, added])
  const places = new Map(
    columns.map(q => [q.id, decimalsFor(Math.max(...rows.map(row => Math.abs(q.read(row)))) / 1000)]),
  )
  const decimals = Math.min(6, decimalsFor(meanStep(timeline)))
  return (
    <div class="bn-values">
      <table>
        <caption>Values at some times</caption>
        <thead>
          <tr>
            <th scope="col">{timeline.unit === "s" ? "t (s)" : "row"}</th>
            {columns.map(q => (
              <th key={q.id} scope="col">
                {heading(q)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(row => (
            <tr key={row}>
              <th scope="row">{timeline.unit === "s" ? fixed(timeline.at(row), decimals) : row + 1}</th>
              {columns.map(q => (
                <td key={q.id}>{fixed(q.read(row), places.get(q.id) ?? 3)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="bn-actions">
        <button
          type="button"
          class="bn-key"
          onClick={() => setAdded([...added, shownInstant(clock.value, timeline)])}
        >
          add the instant shown
        </button>
        {added.length > 0 && (
          <button type="button" class="bn-quiet" onClick={() => setAdded([])}>
            only the usual times
          </button>
        )}
      </p>
    </div>
  )
}

function tabled(study: Study, quantities: readonly Quantity[]): Quantity[] {
  const ids = study.bodies
    .slice(0, mostBodies)
    .flatMap(b => ["position", "momentum"].flatMap(s => [`${b.name}.${s}.x`, `${b.name}.${s}.y`]))
  const found = ids.map(id => quantities.find(q => q.id === id)).filter(q => q !== undefined)
  return found.length > 0 ? found : quantities.slice(1, 5)
}

function heading(q: Quantity): string {
  const unit = q.unit === "" || q.unit === "1" ? "" : ` (${unitText(q.unit)})`
  const body = q.id.split(".")[0] ?? ""
  return `${body} ${q.short}${unit}`
}
