import type { Recording } from "../run/contract.ts"
import { pickColumns } from "../run/excerpt.ts"
import type { Check } from "../worksheet/contract.ts"
import { seriesOf } from "../worksheet/series.ts"

/** Series of the reference that a check reads; component paths name the series they belong to. */
export function pathsOf({ rule }: Check): string[] {
  // Forces are booked in the student's own recording: of the reference only what they change is looked at.
  const forces = rule.kind === "law" ? ((rule.law === "energy" ? rule.work : rule.external) ?? []) : []
  return seriesOf(rule)
    .map(series => series.name)
    .filter(name => !forces.includes(name))
}

/** Names of the whole series of one cell that its checks need. */
export function neededSeries(checks: readonly Check[], recording: Recording): string[] {
  const paths = checks.filter(check => check.cell === recording.cell).flatMap(pathsOf)
  return recording.series
    .filter(series => paths.some(path => path === series.name || path.startsWith(`${series.name}.`)))
    .map(series => series.name)
}

/** The same recording with the named series only. */
export function restrict(recording: Recording, names: readonly string[]): Recording {
  const { series, columns } = pickColumns(recording.series.filter(series => names.includes(series.name)))
  const width = columns.length
  const data = new Float64Array(recording.rows * width)
  for (let row = 0; row < recording.rows; row++) {
    for (let c = 0; c < width; c++)
      data[row * width + c] = recording.data[row * recording.width + columns[c]!]!
  }
  return { cell: recording.cell, series, rows: recording.rows, width, data }
}
