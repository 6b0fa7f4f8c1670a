import type { Compiled } from "../../cell/contract.ts"
import type { LineValues } from "../../run/contract.ts"
import { type LineValue, lineFigure, lineValue } from "./figures.ts"
import { type SettingLine, settingLines, variableKey } from "./names.ts"

/** What stands beside one line of a listing: a name that it sets, with its value at the row shown. */
export interface Beside {
  readonly line: number
  readonly name: string
  readonly variable: string
  /** value and unit; "" where the line sets nothing at that row */
  readonly figure: string
  /** the line sets more than one name, so that the figure needs its own */
  readonly named: boolean
}

/** Values of the program's lines over some rows, with the program they belong to. */
export interface Found {
  readonly compiled: Compiled
  readonly values: LineValues
  /** unit texts by the offset of the name on the left */
  readonly units: Readonly<Record<number, string>>
}

interface Row {
  readonly lines: readonly SettingLine[]
  readonly places: readonly number[]
}

const known = new WeakMap<Found, ReadonlyMap<string, readonly Row[]>>()

/** Lines that set one name twice, such as the head of a for loop, show the later value: they stand as one. */
function rowsOf(found: Found): ReadonlyMap<string, readonly Row[]> {
  const before = known.get(found)
  if (before) return before
  const places = new Map(found.values.sites.map((site, place) => [site, place]))
  const rows = new Map<string, Row[]>()
  for (const line of settingLines(found.compiled)) {
    const place = places.get(line.site)
    if (place === undefined) continue
    const cell = rows.get(line.cell) ?? []
    rows.set(line.cell, cell)
    const same = cell.findIndex(({ lines: [first] }) => first?.line === line.line && first.name === line.name)
    const held = cell[same]
    if (held) cell[same] = { lines: [...held.lines, line], places: [...held.places, place] }
    else cell.push({ lines: [line], places: [place] })
  }
  known.set(found, rows)
  return rows
}

/** What stands beside the lines of a cell when a row is shown. */
export function besideLines(found: Found, cell: string, row: number): Beside[] {
  const rows = rowsOf(found).get(cell) ?? []
  const counts = new Map<number, number>()
  for (const { lines } of rows) counts.set(lines[0]!.line, (counts.get(lines[0]!.line) ?? 0) + 1)
  return rows.map(({ lines, places }) => {
    const [first] = lines as readonly [SettingLine]
    const at = places.findLastIndex(place => lineValue(found.values, row, place) !== null)
    const value: LineValue | null = at < 0 ? null : lineValue(found.values, row, places[at]!)
    return {
      line: first.line,
      name: first.name,
      variable: variableKey(first),
      figure: value === null ? "" : lineFigure(value, unitOf(found, lines[at]!), lines[at]!.steady),
      named: (counts.get(first.line) ?? 0) > 1,
    }
  })
}

const unitOf = ({ units }: Found, line: SettingLine): string => units[line.at] ?? ""
