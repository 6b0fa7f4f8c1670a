import type { Compiled, Site } from "../../cell/contract.ts"

/** How long a value that a line set stays to be shown beside it. */
export type Lasting =
  /** until it is set anew: it stands outside of every loop and function */
  | { readonly kind: "always" }
  /** through one turn of a loop: of the innermost one that holds both the line and the call of record */
  | { readonly kind: "turn"; readonly loop: number }
  /** through the turn that the call of record is in: the line stands in a function, or in a loop inside that turn */
  | { readonly kind: "since record" }
  /** never: the line belongs to another cell's motion */
  | { readonly kind: "never" }

/** What is told of a program's lines before it runs, from the sites of its trace text alone. */
export interface LinesPlan {
  /** the sites whose values are kept */
  readonly sites: readonly number[]
  /** of every site: its place in `sites`, or -1 */
  readonly places: Int32Array
  /** of every site: 1 for the turn of a loop */
  readonly turns: Uint8Array
  /** the loop whose turn a row belongs to, by the site of the call that recorded it; -1 for none */
  readonly loopOf: (recordSite: number) => number
  readonly lasting: (recordSite: number, place: number) => Lasting
  /** whether a new turn of the loop ends the turn that the call of record was in */
  readonly ends: (loop: number, recordSite: number) => boolean
}

const holds = (outer: Site, inner: Site): boolean => outer.from <= inner.from && inner.to <= outer.to
const size = ({ from, to }: Site): number => to - from

/** @param only sites that are wanted; all that set something if left out */
export function planLines({ sites, program }: Compiled, only?: readonly number[]): LinesPlan {
  const wanted = only && new Set(only)
  const kept: number[] = []
  const places = new Int32Array(sites.length).fill(-1)
  const turns = new Uint8Array(sites.length)
  const loops: number[] = []
  const functions: number[] = []
  sites.forEach(({ what }, n) => {
    if (what === "turn") {
      turns[n] = 1
      loops.push(n)
    } else if (what === "function body") functions.push(n)
    else if ((what === "assignment" || what === "update") && (!wanted || wanted.has(n)))
      places[n] = kept.push(n) - 1
  })
  const at = (n: number): Site => sites[n]!
  const innermost = (among: readonly number[], inside: Site): number =>
    among.reduce(
      (best, n) => (holds(at(n), inside) && (best < 0 || size(at(n)) < size(at(best))) ? n : best),
      -1,
    )
  const cellOf = ({ from }: Site): number => program.cells.findLastIndex(cell => cell.from <= from)

  const known = new Map<number, number>()
  const loopOf = (recordSite: number): number => {
    const before = known.get(recordSite)
    if (before !== undefined) return before
    const loop = loopAround(recordSite)
    known.set(recordSite, loop)
    return loop
  }
  /** Only a loop in the same function as the call counts its turns. */
  const loopAround = (recordSite: number): number => {
    const call = sites[recordSite]
    if (!call) return -1
    const loop = innermost(loops, call)
    const fn = innermost(functions, call)
    return loop >= 0 && fn >= 0 && holds(at(loop), at(fn)) ? -1 : loop
  }

  const lasting = (recordSite: number, place: number): Lasting => {
    const line = at(kept[place]!)
    const call = sites[recordSite]
    const fn = innermost(functions, line)
    if (fn >= 0 && !(call && holds(at(fn), call))) return { kind: "since record" }
    const shared = call ? loops.filter(n => holds(at(n), call)) : []
    const loop = innermost(shared, line)
    if (loop >= 0) return { kind: "turn", loop }
    const other = innermost(loops, line) >= 0
    return other && call && cellOf(line) !== cellOf(call) ? { kind: "never" } : { kind: "always" }
  }

  return {
    sites: kept,
    places,
    turns,
    loopOf,
    lasting,
    ends: (loop, recordSite) => {
      const call = sites[recordSite]
      return call !== undefined && holds(at(loop), call)
    },
  }
}
