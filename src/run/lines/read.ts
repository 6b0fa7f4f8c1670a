import type { LinesWish, LineValues } from "./contract.ts"
import { rowsAtOnce } from "./contract.ts"

/**
 * Reads line values that another process or worker sent, as strictly as an outcome: exact form, and no more than was
 * asked for.
 *
 * @param sites how many sites the program has
 * @returns null where they are none
 */
export function readLineValues(value: unknown, wish: LinesWish, sites: number): LineValues | null {
  if (typeof value !== "object" || value === null) return null
  const { cell, from, rows, sites: kept, kinds, numbers } = value as Record<string, unknown>
  if (cell !== wish.cell || from !== wish.from) return null
  if (!Array.isArray(kept) || kept.length > sites) return null
  if (!kept.every(n => Number.isSafeInteger(n) && n >= 0 && n < sites)) return null
  if (typeof rows !== "number" || !Number.isSafeInteger(rows) || rows < 0) return null
  if (rows > Math.min(wish.to - wish.from, rowsAtOnce(kept.length))) return null
  if (!(kinds instanceof Uint8Array) || kinds.length !== rows * kept.length) return null
  if (!(numbers instanceof Float64Array) || numbers.length !== 3 * rows * kept.length) return null
  if (!kinds.every(kind => kind <= 4)) return null
  return { cell: wish.cell, from: wish.from, rows, sites: kept.map(Number), kinds, numbers }
}
