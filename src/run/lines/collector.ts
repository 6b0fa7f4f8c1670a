import type { Compiled } from "../../cell/contract.ts"
import { Vec3 } from "../../physics/vec3.ts"
import { type LinesWish, type LineValues, lineKinds, rowsAtOnce } from "./contract.ts"
import { type Lasting, planLines } from "./plan.ts"

/** Follows the second run of a program and keeps what its lines set. */
export interface Collector {
  /** in the place of the host's `at` */
  at<T>(site: number, value?: T): T
  /** a row of a cell was kept */
  row(cell: string): void
  /** a cell is over; the rows of its last turn are complete */
  leave(): void
  values(): LineValues
}

/** Bytes of one place: three numbers. */
const wide = 24
const { none, number, vector } = lineKinds

/**
 * A row shows one turn: that of the innermost loop around the call of record that made it, from the turn's first line to
 * its last, so also lines below the call. What was not set in that turn is not shown, what was set before the loop is.
 */
export function createCollector(compiled: Compiled, wish: LinesWish): Collector {
  const plan = planLines(compiled, wish.only)
  const count = plan.sites.length
  const most = Math.max(0, Math.min(wish.to - wish.from, rowsAtOnce(count)))
  let room = 256
  let kinds = new Uint8Array(room * count)
  let store = new DataView(new ArrayBuffer(room * count * wide))
  /** what each line set last, and at which tick; through views, for the locked realm makes array stores slow */
  const held = new DataView(new ArrayBuffer(count * wide))
  const heldKind = new DataView(new ArrayBuffer(Math.max(1, count)))
  const ticks = new DataView(new ArrayBuffer(Math.max(1, count) * 8))
  const begun = new DataView(new ArrayBuffer(Math.max(1, plan.turns.length) * 8))
  const lastings = new Map<number, readonly Lasting[]>()
  let tick = 1
  let lastRecord = 0
  let call = -1
  /** rows of the wished cell so far, and those of them that wait for the end of their turn */
  let made = 0
  let pending = 0
  let pendingCall = -1
  /** rows written into the store */
  let written = 0

  const lastingFor = (recordSite: number): readonly Lasting[] => {
    const known = lastings.get(recordSite)
    if (known) return known
    const fresh = plan.sites.map((_, place) => plan.lasting(recordSite, place))
    lastings.set(recordSite, fresh)
    return fresh
  }

  const grow = (): void => {
    room = Math.min(most, room * 4)
    const more = new Uint8Array(room * count)
    more.set(kinds)
    kinds = more
    const wider = new Uint8Array(room * count * wide)
    wider.set(new Uint8Array(store.buffer))
    store = new DataView(wider.buffer)
  }

  const isFresh = (lasting: Lasting, at: number, since: number): boolean => {
    switch (lasting.kind) {
      case "always":
        return at > 0
      case "turn":
        return at >= begun.getFloat64(lasting.loop * 8)
      case "since record":
        return at >= since
      case "never":
        return false
    }
  }

  /** Writes the values as they stand into the rows that wait for them. */
  const settle = (): void => {
    if (pending === 0) return
    const lasting = lastingFor(pendingCall)
    const loop = plan.loopOf(pendingCall)
    const since = loop < 0 ? lastRecord : begun.getFloat64(loop * 8)
    for (; pending > 0; pending--) {
      const row = made - pending
      if (row < wish.from || row >= wish.from + most) continue
      if (written >= room) grow()
      for (let place = 0; place < count; place++) {
        const kind = heldKind.getUint8(place)
        if (kind === none || !isFresh(lasting[place]!, ticks.getFloat64(place * 8), since)) continue
        kinds[written * count + place] = kind
        const to = (written * count + place) * wide
        for (let k = 0; k < wide; k += 8)
          store.setFloat64(to + k, held.getFloat64(place * wide + k, true), true)
      }
      written++
    }
  }

  const keep = (place: number, value: unknown): void => {
    let kind: number = none
    if (typeof value === "number") {
      kind = number
      held.setFloat64(place * wide, value, true)
    } else if (value instanceof Vec3) {
      kind = vector
      held.setFloat64(place * wide, value.x, true)
      held.setFloat64(place * wide + 8, value.y, true)
      held.setFloat64(place * wide + 16, value.z, true)
    } else if (typeof value === "boolean") kind = value ? lineKinds.true : lineKinds.false
    heldKind.setUint8(place, kind)
    ticks.setFloat64(place * 8, tick)
  }

  return {
    at<T>(site: number, value?: T): T {
      const place = plan.places[site]
      if (place === undefined) return value as T
      if (place >= 0) keep(place, value)
      else if (plan.turns[site] === 1) {
        if (pending > 0 && plan.ends(site, pendingCall)) settle()
        begun.setFloat64(site * 8, ++tick)
      } else call = site
      return value as T
    },
    row(cell) {
      if (cell === wish.cell) {
        const loop = plan.loopOf(call)
        if (pending > 0 && plan.loopOf(pendingCall) !== loop) settle()
        made++
        pending++
        pendingCall = call
        if (loop < 0) settle()
      }
      lastRecord = ++tick
    },
    leave: settle,
    values() {
      settle()
      return {
        cell: wish.cell,
        from: wish.from,
        rows: written,
        sites: plan.sites,
        kinds: kinds.slice(0, written * count),
        numbers: new Float64Array(store.buffer.slice(0, written * count * wide)),
      }
    },
  }
}
