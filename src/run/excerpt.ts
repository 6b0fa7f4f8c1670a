import type { Excerpt, Recording, Series } from "./contract.ts"
import { numberView } from "./number-view.ts"

/** Times in an excerpt's wish may have been rounded to 32-bit floats. */
export const timeRounding = 2e-7

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

/** What is wanted of a cell: of its series those that are named, of its rows the last at or before each time, and the very last. */
export function excerptOf({ cell, series, width, chunks }: Rows, wish: Excerpt): Recording {
  const columns = [0]
  const kept = series
    .filter(({ name }) => wish.series.includes(name))
    .map(one => {
      const column = columns.length
      for (let k = 0; k < (one.kind === "vector" ? 3 : 1); k++) columns.push(one.column + k)
      return { ...one, column }
    })
  const data = new Float64Array((wish.times.length + 1) * columns.length)
  // a locked realm stores through a view several times as fast as into an array (host.ts says why)
  const view = numberView(data.buffer)
  let rows = 0
  const take = (chunk: Float64Array, from: number): void => {
    const to = rows++ * columns.length
    for (let c = 0; c < columns.length; c++) view.setFloat64(8 * (to + c), chunk[from + columns[c]!]!, true)
  }
  let next = 0
  let before: Float64Array | undefined
  let at = 0
  const { times } = wish
  for (const chunk of chunks) {
    for (let from = 0; from < chunk.length; from += width) {
      // the row before is the last one not after the times that this one lies beyond
      let beyond = false
      while (next < times.length && !notAfter(chunk[from]!, times[next]!)) {
        beyond = true
        next++
      }
      if (beyond && before !== undefined) take(before, at)
      before = chunk
      at = from
    }
  }
  if (before !== undefined) take(before, at)
  return { cell, series: kept, rows, width: columns.length, data: data.slice(0, rows * columns.length) }
}
