import type { Found } from "./beside.ts"
import type { LineValue } from "./figures.ts"
import { lineValue } from "./figures.ts"
import { nameOfKey, settingLines, variableKey } from "./names.ts"

/** A variable of the program that was sent to a plot: its value at each row of a recording. */
export interface Variable {
  readonly key: string
  /** `push`, or `push in pushOf` where it stands in a function */
  readonly name: string
  readonly cell: string
  readonly unit: string
  readonly kind: "number" | "vector"
  /** rows of the recording that it is known for */
  readonly rows: number
  /** a part of it at a row: 0 1 2 for x y z, 0 for a number; NaN where it was not set */
  read(row: number, part: number): number
}

/** Sites of the lines that set a variable. */
export function sitesOf(found: Pick<Found, "compiled">, key: string): number[] {
  return settingLines(found.compiled)
    .filter(line => variableKey(line) === key)
    .map(line => line.site)
}

/**
 * The variable as it stood at the end of each row's turn: of the lines that set it, the last in the text that did.
 * Null where the program has no such variable any more, or never set it to a number or vector.
 */
export function variableOf(found: Found, key: string): Variable | null {
  const lines = settingLines(found.compiled).filter(line => variableKey(line) === key)
  const places = lines.flatMap(line => {
    const place = found.values.sites.indexOf(line.site)
    return place < 0 ? [] : [place]
  })
  const [first] = lines
  if (!first || places.length === 0) return null
  const at = (row: number): LineValue | null => {
    for (let k = places.length - 1; k >= 0; k--) {
      const value = lineValue(found.values, row, places[k]!)
      if (value !== null) return value
    }
    return null
  }
  const { from, rows } = found.values
  let kind: Variable["kind"] | null = null
  for (let row = from; row < from + rows && kind === null; row++) {
    const value = at(row)
    if (typeof value === "number") kind = "number"
    else if (value !== null && typeof value !== "boolean") kind = "vector"
  }
  if (kind === null) return null
  const unit = lines.map(line => found.units[line.at] ?? "").find(text => text !== "") ?? ""
  return {
    key,
    name: nameOfKey(key),
    cell: first.cell,
    unit,
    kind,
    rows: from + rows,
    read(row, part) {
      const value = at(row)
      if (typeof value === "number") return part === 0 ? value : Number.NaN
      return value === null || typeof value === "boolean" ? Number.NaN : (value[part] ?? Number.NaN)
    },
  }
}
