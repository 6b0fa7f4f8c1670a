import { numberView } from "../number-view.ts"
import type { FromPlace } from "../protocol.ts"

/** A recording as it crosses to the parent: columns that never change, such as the third of a motion in a plane, as one number. */
interface Packed {
  /** by column: its one number, or null where it has a number a row in `data` */
  readonly still: readonly (number | null)[]
  readonly data: Float64Array
}

/** Leaves out what a recording says again and again: the pipe between the processes is the narrowest place of all. */
export function pack(message: FromPlace): object {
  if (message.kind !== "outcome") return message
  const { outcome } = message
  const recordings = outcome.recordings.map(({ data, rows, width, ...named }) => ({
    ...named,
    rows,
    width,
    ...packColumns(data, rows, width),
  }))
  return { ...message, outcome: { ...outcome, recordings } }
}

function packColumns(data: Float64Array, rows: number, width: number): Packed {
  const still = Array.from({ length: width }, (_, column) => stillColumn(data, rows, width, column))
  const moving = still.flatMap((value, column) => (value === null ? [column] : []))
  const packed = new Float64Array(rows * moving.length)
  // A locked realm stores through a view several times as fast as into an array (host.ts says why).
  const view = numberView(packed.buffer)
  for (const [i, column] of moving.entries()) {
    const stride = 8 * moving.length
    for (let from = column, to = 8 * i; from < rows * width; from += width, to += stride)
      view.setFloat64(to, data[from]!, true)
  }
  return { still, data: packed }
}

/** The one number of a column, zero and minus zero told apart; null if it has several or none. */
function stillColumn(data: Float64Array, rows: number, width: number, column: number): number | null {
  if (rows === 0) return null
  const first = data[column]!
  for (let at = column; at < rows * width; at += width) if (data[at] !== first) return null
  if (first === 0)
    for (let at = column; at < rows * width; at += width) if (!Object.is(data[at], first)) return null
  return first
}

/**
 * A message as the child meant it. What is not of the packed form is handed on as none, for the one who reads outcomes
 * to refuse; nothing larger than the run's limit is laid out.
 *
 * @param recorded numbers that the run was allowed to record, in all of its `cells`
 */
export function unpack(message: unknown, recorded: number, cells: number): unknown {
  if (!isRecord(message) || !isRecord(message.outcome) || !Array.isArray(message.outcome.recordings))
    return message
  // a list that is longer than the program is no answer, and is not gone through
  if (message.outcome.recordings.length > cells) return null
  let left = recorded + 1000 * cells
  const recordings = message.outcome.recordings.map((item: unknown) => {
    if (!isPacked(item)) return null
    left -= item.rows * item.still.length
    if (!(left >= 0)) return null
    const { still, data, ...named } = item
    return { ...named, data: layOut(still, data, item.rows) }
  })
  return { ...message, outcome: { ...message.outcome, recordings } }
}

function isPacked(item: unknown): item is Packed & { readonly rows: number } {
  if (!isRecord(item)) return false
  const { still, data, rows, width } = item
  return (
    Number.isSafeInteger(rows) &&
    (rows as number) >= 0 &&
    Array.isArray(still) &&
    still.length === width &&
    still.every(value => value === null || typeof value === "number") &&
    data instanceof Float64Array &&
    data.length === (rows as number) * still.filter(value => value === null).length
  )
}

function layOut(still: readonly (number | null)[], packed: Float64Array, rows: number): Float64Array {
  const width = still.length
  const data = new Float64Array(rows * width)
  const moving = still.flatMap((value, column) => (value === null ? [column] : []))
  for (const [column, value] of still.entries()) {
    // the array is made of zeros
    if (value === null || Object.is(value, 0)) continue
    for (let at = column; at < data.length; at += width) data[at] = value
  }
  let from = 0
  for (let row = 0; row < rows; row++)
    for (let i = 0; i < moving.length; i++) data[row * width + moving[i]!] = packed[from++]!
  return data
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null
