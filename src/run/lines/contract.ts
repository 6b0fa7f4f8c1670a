/** Which values of lines are wanted from a second, slower run: for rows `from` to below `to` of one cell's recording. */
export interface LinesWish {
  readonly cell: string
  readonly from: number
  readonly to: number
  /** sites of Compiled.sites whose values are wanted; all that set something if left out */
  readonly only?: readonly number[]
}

/** What stands at a place of LineValues.kinds. */
export const lineKinds = { none: 0, number: 1, vector: 2, true: 3, false: 4 } as const

/**
 * The values that lines set, row by row: for each row those of the turn in which record made it. Plain data.
 * Row r, site s stands at (r - from) * sites.length + s of `kinds`, and at three times that of `numbers`.
 */
export interface LineValues {
  readonly cell: string
  readonly from: number
  readonly rows: number
  /** numbers of Compiled.sites: each an assignment, a declaration, or += and the like */
  readonly sites: readonly number[]
  readonly kinds: Uint8Array
  /** one number, or x y z of a vector; as the program had them, NaN and infinity too */
  readonly numbers: Float64Array
}

/** Bytes that one look may take; a wish for more rows than that gets the first of them. */
export const mostLineBytes = 24_000_000

/** Rows that one look can hold. */
export const rowsAtOnce = (sites: number): number =>
  Math.max(1, Math.floor(mostLineBytes / (25 * Math.max(1, sites))))
