import type { OpenRows } from "../cell/host.ts"
import type { Excerpt, Recording, Series } from "./contract.ts"
import { excerptOf } from "./excerpt.ts"
import { inSeconds, inThousands } from "./limits.ts"
import { numberView } from "./number-view.ts"
import { type Quantity, seen, shortName, survey } from "./shape.ts"
import { type RunStop, stop } from "./stop.ts"

/** Rows in a full chunk. A chunk is never copied while the run goes on; the first ones are smaller, for short runs. */
const chunkRows = 4096
const firstChunkRows = 256

/**
 * What stands where in a row: the tree of names as the first record gave it. Groups, vectors and numbers have one
 * form, so that reading them stays quick.
 */
interface Member {
  readonly kind: "group" | "vector" | "scalar"
  /** first column of a vector or number */
  readonly column: number
  /** names of a group's members, and the members, in the same order */
  readonly names: string[]
  readonly members: Member[]
}

const member = (kind: Member["kind"], column: number): Member => ({ kind, column, names: [], members: [] })

interface Store {
  readonly cell: string
  readonly root: Member
  readonly series: readonly Series[]
  readonly byName: ReadonlyMap<string, Series>
  readonly width: number
  /** names and kinds in order, as a program asks for its open rows */
  readonly shape: string
  readonly chunks: Float64Array[]
  /** numbers in the chunks before the one being filled */
  filled: number
  /** the chunk being filled, and the view through which numbers are put into it (host.ts says why) */
  chunk: Float64Array
  view: DataView
  /** the same view and the next free place in it, as the program has them: it fills rows by itself while `last` allows */
  readonly rows: Rows
}

type Rows = { -readonly [K in keyof OpenRows]: OpenRows[K] }

/**
 * All of one form, so that the emitted text meets one kind of object only; sealed, so that what is read of it later
 * is a value and never a program's getter.
 */
const rowsOf = (view: DataView, next: number, lastTime: number): Rows =>
  Object.seal({ view, next, last: -1, lastTime })

/** Bytes of a number. */
const bytes = 8

/** Whether the open rows are as the emitted text leaves them. Another program could have written anything there. */
function isIntact({ rows, chunk, view, width }: Store): boolean {
  const { next, lastTime } = rows
  if (rows.view !== view || !Number.isInteger(next) || typeof lastTime !== "number") return false
  return next >= 0 && next <= chunk.length * bytes && next % (width * bytes) === 0
}

const damagedRows = (): RunStop =>
  stop(
    "program-damaged",
    "The program changed its recording by another way than record.",
    "Use only what the worksheet offers: record(t, { … }).",
  )

export interface Recorder {
  /** the n-th cell runs from now on; never an earlier one again */
  enterCell(index: number): void
  /** @throws RunStop in words when the instant cannot be kept */
  record(time: unknown, quantities: unknown): void
  /** the open rows of the cell being run if they are of this shape, else rows that take nothing */
  rows(shape: string): OpenRows
  /** drops what the cell being run has recorded */
  forget(): void
  /** from now on rows are taken by record only, which can refuse them */
  seal(): void
  /** whether the program left its open rows as it should, and what is to be said if not */
  intact(): boolean
  damaged(): RunStop
  /**
   * everything kept so far, or what is wanted of it, by document order; each in an array of its own of exactly
   * rows * width numbers
   */
  recordings(wanted?: Readonly<Record<string, Excerpt>>): Recording[]
}

/**
 * Keeps what cells record, row by row. The objects come from the program: nothing about them is trusted, each
 * value is read once, and a row counts only when all of it was read and found good.
 *
 * @param maxNumbers numbers kept in all, time included
 * @param vectorPrototype what tells a vector from a group
 */
export function createRecorder(
  cells: readonly string[],
  maxNumbers: number,
  vectorPrototype: object,
): Recorder {
  const stores: (Store | undefined)[] = cells.map(() => undefined)
  let cell = 0
  /** numbers kept by the cells before */
  let before = 0
  let busy = false
  let sealed = false

  const keptBy = (store: Store | undefined): number =>
    store === undefined ? 0 : store.filled + store.rows.next / bytes
  const full = (store: Store): boolean => before + keptBy(store) + store.width > maxNumbers
  /** While record itself is at work, and after a stop, nobody else may write. */
  const shut = (store: Store | undefined): void => {
    if (store !== undefined) store.rows.last = -1
  }
  const open = (store: Store): void => {
    const { rows, chunk, width, filled } = store
    if (!sealed) rows.last = (Math.min(chunk.length, maxNumbers - before - filled) - width) * bytes
  }

  const record = (time: unknown, quantities: unknown): void => {
    if (busy)
      throw stop(
        "record-shape",
        "record was called again while it read the quantities of another record.",
        "Give record plain numbers and vectors.",
      )
    const known = stores[cell]
    if (known !== undefined && !isIntact(known)) throw damagedRows()
    checkTime(time, known)
    busy = true
    shut(known)
    try {
      if (known === undefined) {
        stores[cell] = begin(
          cells[cell] ?? "",
          time as number,
          survey(quantities, time as number, vectorPrototype),
        )
      } else {
        if (full(known)) throw tooMuch(maxNumbers, known, time as number)
        if (known.rows.next === known.chunk.length * bytes) addChunk(known)
        const { rows, view } = known
        const { next } = rows
        if (!readGroup(known.root, quantities, view, next, vectorPrototype))
          writeSurveyed(known, next, survey(quantities, time as number, vectorPrototype), time as number)
        // Nothing below can fail: the row counts from here.
        view.setFloat64(next, time as number, true)
        rows.next = next + known.width * bytes
        rows.lastTime = time as number
      }
      open(stores[cell]!)
    } finally {
      busy = false
    }
  }

  return {
    enterCell(index) {
      if (!Number.isInteger(index) || index < cell || index >= cells.length)
        throw stop(
          "program-damaged",
          "The program left the order of its cells.",
          "Use only what the worksheet offers; a cell cannot call another cell.",
        )
      if (index === cell) return
      const left = stores[cell]
      if (left !== undefined && !isIntact(left)) throw damagedRows()
      shut(left)
      before += keptBy(left)
      cell = index
    },
    record,
    rows(shape) {
      const store = stores[cell]
      return store !== undefined && store.shape === shape ? store.rows : rowsOf(noRows, 0, 0)
    },
    forget() {
      stores[cell] = undefined
    },
    seal() {
      sealed = true
      shut(stores[cell])
    },
    damaged: damagedRows,
    intact: () => stores.every(store => store === undefined || isIntact(store)),
    recordings: wanted =>
      stores
        .filter(store => store !== undefined)
        .flatMap(store => {
          if (wanted === undefined) return [finish(store)]
          const wish = Object.hasOwn(wanted, store.cell) ? wanted[store.cell] : undefined
          return wish === undefined ? [] : [excerptOf({ ...store, chunks: chunksOf(store) }, wish)]
        }),
  }
}

/** Shared by all runs, so nothing may be hung on it. */
const noRows = Object.freeze(new DataView(new ArrayBuffer(0)))

function checkTime(time: unknown, store: Store | undefined): void {
  if (typeof time !== "number")
    throw stop(
      "record-time",
      `record was given ${seen(time)} as its time.`,
      "Give the time in seconds first, then the quantities: record(t, { … }).",
    )
  if (!Number.isFinite(time))
    throw stop(
      "record-time",
      `record was given ${time} as its time${store === undefined ? "" : `, after t = ${inSeconds(store.rows.lastTime)}`}.`,
      "Check the line that moves the time on.",
    )
  if (store !== undefined && time < store.rows.lastTime)
    throw stop(
      "record-time",
      `The time ran backwards: t = ${inSeconds(time)} was recorded after t = ${inSeconds(store.rows.lastTime)}.`,
      "Let the time only grow within one cell; for a second motion use a second cell.",
    )
}

/** The first record of a cell fixes what its rows hold. */
function begin(cell: string, time: number, quantities: readonly Quantity[]): Store {
  const series: Series[] = []
  const root = member("group", 0)
  let width = 1
  for (const { name, kind } of quantities) {
    series.push({ name, kind, column: width })
    place(root, name.split("."), member(kind, width))
    width += kind === "vector" ? 3 : 1
  }
  const chunk = new Float64Array(firstChunkRows * width)
  chunk.set([time, ...quantities.flatMap(({ values }) => values)])
  const view = numberView(chunk.buffer)
  return {
    cell,
    root,
    series,
    byName: new Map(series.map(s => [s.name, s])),
    width,
    shape: series.map(s => `${s.name}:${s.kind === "vector" ? "v" : "s"}`).join(" "),
    chunks: [chunk],
    filled: 0,
    chunk,
    view,
    rows: rowsOf(view, width * bytes, time),
  }
}

function place(group: Member, path: readonly string[], leaf: Member): void {
  const [head, ...rest] = path
  let inner = group.members[group.names.indexOf(head!)]
  if (inner === undefined) {
    inner = rest.length === 0 ? leaf : member("group", 0)
    group.names.push(head!)
    group.members.push(inner)
  }
  if (rest.length > 0) place(inner, rest, leaf)
}

function addChunk(store: Store): void {
  const { rows, width, chunk: full } = store
  const chunk = new Float64Array(Math.min(chunkRows, (full.length / width) * 4) * width)
  store.chunks.push(chunk)
  store.filled += full.length
  store.chunk = chunk
  store.view = numberView(chunk.buffer)
  rows.view = store.view
  rows.next = 0
}

/**
 * The quick way: the same names in the same order, plain groups, finite numbers. Writes as it reads; answers
 * false as soon as anything is otherwise, and then the row is read anew the slow way.
 */
function readGroup(
  group: Member,
  value: unknown,
  view: DataView,
  start: number,
  vectorPrototype: object,
): boolean {
  if (typeof value !== "object" || value === null) return false
  const prototype = Object.getPrototypeOf(value)
  if (prototype !== Object.prototype && prototype !== null) return false
  const { names, members } = group
  const object = value as Record<string, unknown>
  let i = 0
  for (const key in object) {
    if (key !== names[i]) return false
    const inner = members[i++]!
    const item = object[key]
    if (inner.kind === "vector") {
      if (typeof item !== "object" || item === null || Object.getPrototypeOf(item) !== vectorPrototype)
        return false
      const { x, y, z } = item as { x: unknown; y: unknown; z: unknown }
      if (typeof x !== "number" || typeof y !== "number" || typeof z !== "number") return false
      // The difference of a number and itself is zero, unless it is not finite.
      if (x - x !== 0 || y - y !== 0 || z - z !== 0) return false
      const at = start + inner.column * bytes
      view.setFloat64(at, x, true)
      view.setFloat64(at + bytes, y, true)
      view.setFloat64(at + 2 * bytes, z, true)
    } else if (inner.kind === "scalar") {
      if (typeof item !== "number" || item - item !== 0) return false
      view.setFloat64(start + inner.column * bytes, item, true)
    } else if (!readGroup(inner, item, view, start, vectorPrototype)) return false
  }
  return i === names.length
}

function writeSurveyed(store: Store, next: number, quantities: readonly Quantity[], time: number): void {
  const missing = new Set(store.byName.keys())
  for (const { name, kind, values } of quantities) {
    const series = store.byName.get(name)
    if (series === undefined)
      throw stop(
        "record-shape",
        `At t = ${inSeconds(time)}, record was given "${shortName(name)}", which the first record of this cell did not have.`,
        "Give each record of a cell the same names; a force that does not act yet is a zero vector.",
      )
    if (series.kind !== kind)
      throw stop(
        "record-shape",
        `At t = ${inSeconds(time)}, "${shortName(name)}" is a ${word(kind)}; in the first record of this cell it was a ${word(series.kind)}.`,
        "Give each name the same kind of quantity throughout.",
      )
    missing.delete(name)
    values.forEach((value, i) => {
      store.view.setFloat64(next + (series.column + i) * bytes, value, true)
    })
  }
  const [first] = missing
  if (first !== undefined)
    throw stop(
      "record-shape",
      `At t = ${inSeconds(time)}, record was not given "${shortName(first)}", which the first record of this cell had.`,
      "Give each record of a cell the same names; a force that does not act is a zero vector.",
    )
}

const word = (kind: Series["kind"]): string => (kind === "vector" ? "vector" : "number")

function tooMuch(maxNumbers: number, store: Store, time: number) {
  const rows = Math.floor(maxNumbers / store.width)
  return stop(
    "recorded-too-much",
    `The recording is full at t = ${inSeconds(time)}: ${inThousands(maxNumbers)} numbers are kept at most, here about ${inThousands(rows)} instants.`,
    "Record every tenth step, take a longer time step, or end the motion earlier.",
  )
}

/** The chunks as far as they are filled. */
function chunksOf(store: Store): Float64Array[] {
  const next = isIntact(store) ? store.rows.next / bytes : 0
  return store.chunks.map(chunk => (chunk === store.chunk ? chunk.subarray(0, next) : chunk))
}

function finish(store: Store): Recording {
  const chunks = chunksOf(store)
  const length = chunks.reduce((sum, chunk) => sum + chunk.length, 0)
  const data = new Float64Array(length)
  let at = 0
  for (const chunk of chunks) {
    data.set(chunk, at)
    at += chunk.length
  }
  return { cell: store.cell, series: store.series, rows: length / store.width, width: store.width, data }
}
