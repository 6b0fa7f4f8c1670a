import type { Excerpt, Recording, Series } from "./contract.ts"
import { numberView } from "./number-view.ts"

/** Times in an excerpt's wish may have been rounded to 32-bit floats. */
const timeRounding = 2e-7

/** A row at or before `t`, as far as times are told apart. */
export const notAfter = (time: number, t: number): boolean =>
  time <= t + timeRounding * Math.max(1, Math.abs(t))

/** A cell's rows as they were recorded: in chunks, one after the other. */
export interface Rows {
  readonly cell: string
  readonly series: readonly Series[]
  readonly width: number
  readonly chunks: readonly Float64Array[]
}

/** Series that come along where a wanted one is missing, to tell what was recorded instead. */
const tellingSeries = 8

/** What is wanted of a cell's rows. */
export function excerptOf(all: Rows, wish: Excerpt): Recording {
  const wanted = (one: Series): boolean => wish.series.some(name => means(name, one))
  const lacks = wish.series.some(name => !all.series.some(one => means(name, one)))
  const others = lacks ? all.series.filter(one => !wanted(one)).slice(0, tellingSeries) : []
  const kept =
    wish.series.length === 0 ? all.series : all.series.filter(one => wanted(one) || others.includes(one))
  const { series, columns } = pickColumns(kept)
  const { data, rows } = wish.times === undefined ? allRows(all, columns) : rowsAt(all, columns, wish.times)
  return { cell: all.cell, series, rows, width: columns.length, data }
}

/** Some series of a recording as they stand in one that holds them alone, and the columns that they have in the first, time before them. */
export function pickColumns(kept: readonly Series[]): { series: Series[]; columns: number[] } {
  const columns = [0]
  const series = kept.map(one => {
    const column = columns.length
    for (let k = 0; k < (one.kind === "vector" ? 3 : 1); k++) columns.push(one.column + k)
    return { ...one, column }
  })
  return { series, columns }
}

const means = (wanted: string, { name, kind }: Series): boolean =>
  wanted.endsWith(".*")
    ? name.startsWith(wanted.slice(0, -1))
    : wanted === name ||
      (kind === "vector" && wanted.startsWith(name) && /^\.[xyz]$/.test(wanted.slice(name.length)))

interface Taken {
  readonly data: Float64Array
  readonly rows: number
}

/** Copies rows; a locked realm stores through a view several times as fast as into an array (host.ts says why). */
function taker(data: Float64Array, columns: readonly number[]) {
  const view = numberView(data.buffer)
  let to = 0
  return (chunk: Float64Array, from: number): void => {
    for (let c = 0; c < columns.length; c++, to += 8) view.setFloat64(to, chunk[from + columns[c]!]!, true)
  }
}

function allRows({ chunks, width }: Rows, columns: readonly number[]): Taken {
  const rows = chunks.reduce((sum, chunk) => sum + chunk.length, 0) / width
  const data = new Float64Array(rows * columns.length)
  const take = taker(data, columns)
  for (const chunk of chunks) for (let from = 0; from < chunk.length; from += width) take(chunk, from)
  return { data, rows }
}

/** The last row at or before each time, each row once, and the very last. */
function rowsAt({ chunks, width }: Rows, columns: readonly number[], times: Float64Array): Taken {
  const data = new Float64Array((times.length + 1) * columns.length)
  const take = taker(data, columns)
  let rows = 0
  let next = 0
  let before: Float64Array | undefined
  let at = 0
  for (const chunk of chunks) {
    for (let from = 0; from < chunk.length; from += width) {
      // the row before is the last one not after the times that this one lies beyond
      let beyond = false
      while (next < times.length && !notAfter(chunk[from]!, times[next]!)) {
        beyond = true
        next++
      }
      if (beyond && before !== undefined) {
        take(before, at)
        rows++
      }
      before = chunk
      at = from
    }
  }
  if (before !== undefined) {
    take(before, at)
    rows++
  }
  return { data: data.slice(0, rows * columns.length), rows }
}
