import type { Recording } from "../../run/contract.ts"

/** Columns of one recorded body: everything that `NAME.position` brings with it. */
export interface BodyColumns {
  readonly name: string
  readonly position: number
  readonly momentum: number | null
  /** forces on this body, without a recorded sum */
  readonly forces: readonly { readonly name: string; readonly column: number }[]
}

/** Names under which an author may record the sum itself: it is not one more force. */
const sumNames = new Set(["net", "netForce"])

/** The bodies of a recording, in the order recorded. A body is what has a position. */
export function bodiesOf(recording: Recording): BodyColumns[] {
  const suffix = ".position"
  return recording.series
    .filter(s => s.kind === "vector" && s.name.endsWith(suffix))
    .map(s => {
      const name = s.name.slice(0, -suffix.length)
      const momentum = recording.series.find(m => m.kind === "vector" && m.name === `${name}.momentum`)
      const prefix = `${name}.forces.`
      const forces = recording.series
        .filter(f => f.kind === "vector" && f.name.startsWith(prefix))
        .map(f => ({ name: f.name.slice(prefix.length), column: f.column }))
        .filter(f => !sumNames.has(f.name))
      return { name, position: s.column, momentum: momentum?.column ?? null, forces }
    })
}

/** The recording to show for the cell in view: its own, else the next one further down, else the last above. */
export function recordingFor(
  recordings: readonly Recording[],
  cells: readonly string[],
  cell: string,
): Recording | null {
  const recorded = recordings.filter(r => r.rows > 0)
  const own = recorded.find(r => r.cell === cell)
  if (own) return own
  const here = cells.indexOf(cell)
  const place = (r: Recording) => cells.indexOf(r.cell)
  return recorded.find(r => place(r) > here) ?? recorded.filter(r => place(r) < here).at(-1) ?? null
}

/** The value at a row and column; NaN outside. */
export function valueAt(recording: Recording, row: number, column: number): number {
  if (row < 0 || row >= recording.rows) return Number.NaN
  return recording.data[row * recording.width + column] ?? Number.NaN
}

/** Square of the length of the vector that begins at a column. Called for every row: no array, and no Math.hypot, which is slow. */
export function squareAt({ data, width }: Recording, row: number, column: number): number {
  const at = row * width + column
  const x = data[at] as number
  const y = data[at + 1] as number
  const z = data[at + 2] as number
  return x * x + y * y + z * z
}

/** Whether all three components are zero; not so when one is not a number. */
export function zeroAt({ data, width }: Recording, row: number, column: number): boolean {
  const at = row * width + column
  return data[at] === 0 && data[at + 1] === 0 && data[at + 2] === 0
}

/** A force below this part of the greatest one is rounding, such as what a spring pulls at its rest length. */
const forceNoise = 1e-9

/** Square of the size that a force must have to act at all, N²: beside the greatest force on any body. */
export function leastForceSquare(recording: Recording, bodies: readonly BodyColumns[]): number {
  let greatest = 0
  for (const { forces } of bodies)
    for (const { column } of forces)
      for (let row = 0; row < recording.rows; row++) {
        const square = squareAt(recording, row, column)
        if (square > greatest) greatest = square
      }
  return greatest * forceNoise ** 2
}

/** Length of the vector that begins at a column. */
export function lengthAt(recording: Recording, row: number, column: number): number {
  const at = row * recording.width + column
  const { data } = recording
  return Math.hypot(data[at] ?? Number.NaN, data[at + 1] ?? Number.NaN, data[at + 2] ?? Number.NaN)
}
