import type { Recording } from "../run/contract.ts"
import type { Check } from "../worksheet/contract.ts"
import { fromBase64, toBase64 } from "./base64.ts"
import type { Reference, Sensitive } from "./contract.ts"
import { neededSeries, restrict } from "./needed.ts"
import { packedRows, packedSlipRows, thin } from "./thin.ts"

/** A column that never changes is its one number; any other is base64 of little-endian 32-bit floats. */
type PackedColumn = number | string

interface PackedRecording {
  readonly cell: string
  readonly series: readonly { readonly name: string; readonly kind: "vector" | "scalar" }[]
  readonly rows: number
  readonly columns: readonly PackedColumn[]
}

/** JSON form of a Reference: only the series that checks read, thinned. Holds numbers and slip names, no answer. */
export interface PackedReference {
  readonly format: "deltasheet-reference/1"
  readonly parameters: Readonly<Record<string, number>>
  readonly factors: readonly number[]
  readonly runs: readonly (readonly PackedRecording[])[]
  readonly slips: readonly {
    readonly slip: string
    readonly blank: string
    readonly hint: string
    readonly recordings: readonly PackedRecording[]
  }[]
  readonly sensitive?: readonly Sensitive[]
}

export function packReference(reference: Reference, checks: readonly Check[]): PackedReference {
  const pack = (recordings: readonly Recording[], rows: number): PackedRecording[] =>
    recordings.flatMap(recording => {
      const names = neededSeries(checks, recording)
      return names.length === 0 ? [] : [packRecording(thin(restrict(recording, names), rows))]
    })
  return {
    format: "deltasheet-reference/1",
    parameters: reference.parameters,
    factors: reference.factors,
    runs: reference.runs.map(recordings => pack(recordings, packedRows)),
    slips: reference.slips.map(({ slip, blank, hint, recordings }) => ({
      slip,
      blank,
      hint,
      recordings: pack(recordings, packedSlipRows),
    })),
    ...(reference.sensitive === undefined ? {} : { sensitive: reference.sensitive }),
  }
}

/** @throws TypeError when `packed` is not what packReference made */
export function unpackReference(packed: unknown): Reference {
  if (!isPacked(packed))
    throw new TypeError("This is no packed reference of the format deltasheet-reference/1.")
  return {
    parameters: packed.parameters,
    factors: packed.factors,
    runs: packed.runs.map(recordings => recordings.map(unpackRecording)),
    slips: packed.slips.map(slip => ({ ...slip, recordings: slip.recordings.map(unpackRecording) })),
    ...(packed.sensitive === undefined ? {} : { sensitive: packed.sensitive }),
  }
}

/** The one form that verdicts are made against, in the browser and in Node alike. */
export const settleReference = (reference: Reference, checks: readonly Check[]): Reference =>
  unpackReference(packReference(reference, checks))

const isPacked = (value: unknown): value is PackedReference =>
  typeof value === "object" &&
  value !== null &&
  (value as { format?: unknown }).format === "deltasheet-reference/1"

function packRecording({ cell, series, rows, width, data }: Recording): PackedRecording {
  const columns = Array.from({ length: width }, (_, c): PackedColumn => {
    const column = Float32Array.from({ length: rows }, (_, row) => data[row * width + c]!)
    return column.every(value => value === column[0]) && rows > 0 ? column[0]! : toBase64(column)
  })
  return { cell, series: series.map(({ name, kind }) => ({ name, kind })), rows, columns }
}

function unpackRecording({ cell, series, rows, columns }: PackedRecording): Recording {
  const width = columns.length
  const data = new Float64Array(rows * width)
  columns.forEach((column, c) => {
    const numbers = typeof column === "number" ? null : fromBase64(column)
    for (let row = 0; row < rows; row++)
      data[row * width + c] = numbers === null ? (column as number) : numbers[row]!
  })
  let next = 1
  const named = series.map(({ name, kind }) => {
    const column = next
    next += kind === "vector" ? 3 : 1
    return { name, kind, column }
  })
  return { cell, series: named, rows, width, data }
}
