import type { Recording } from "../../run/contract.ts"
import { type Track, trackOf } from "../track.ts"
import { sizeAt } from "./size-at.ts"

/** A recorded force and the body that it acts on. */
export interface ActingForce {
  readonly body: string
  /** three numbers an instant, N */
  readonly values: Float64Array
}

/** Bodies that are booked together: momenta, positions where asked for, and the forces that count. */
export interface System {
  readonly times: Float64Array
  readonly momenta: readonly Track[]
  /** in the order of the bodies; empty where they were not asked for */
  readonly positions: readonly Track[]
  readonly forces: readonly ActingForce[]
  /** all forces that are recorded on the bodies: what acts among them tells how large a gap is */
  readonly all: readonly ActingForce[]
}

/** What keeps a system from being booked, as a whole sentence. */
export interface NoSystem {
  readonly missing: string
}

/**
 * Reads bodies out of a recording.
 *
 * @param named forces that count (`body.forces.name`); null for all that are recorded on the bodies
 */
export function readSystem(
  recording: Recording | undefined,
  bodies: readonly string[],
  named: readonly string[] | null,
  { positions }: { readonly positions: boolean },
): System | NoSystem {
  const read = (name: string): Track | string => trackOf(recording, name) ?? name
  const momenta = bodies.map(body => read(`${body}.momentum`))
  const places = positions ? bodies.map(body => read(`${body}.position`)) : []
  const recorded = (recording?.series ?? [])
    .filter(s => s.kind === "vector" && bodies.some(body => s.name.startsWith(`${body}.forces.`)))
    .map(s => s.name)
  const force = (name: string) => ({ body: name.slice(0, name.indexOf(".forces.")), track: read(name) })
  const acting = (named ?? recorded).map(force)
  const lost = [...momenta, ...places, ...acting.map(force => force.track)].find(
    one => typeof one === "string",
  )
  if (typeof lost === "string") return { missing: lost }
  return {
    times: (momenta[0] as Track).times,
    momenta: momenta as Track[],
    positions: places as Track[],
    forces: acting.map(valuesOf),
    all: recorded.map(force).map(valuesOf),
  }
}

/** Sum over the bodies, three numbers an instant. */
export function totalOf(tracks: readonly Track[]): Float64Array {
  const sum = new Float64Array(tracks[0]!.values.length)
  for (const { values } of tracks) for (let i = 0; i < sum.length; i++) sum[i]! += values[i]!
  return sum
}

/** Largest size of any of the vectors at any instant. */
export function largestOf(tracks: readonly Pick<Track, "values">[]): number {
  let largest = 0
  for (const { values } of tracks)
    for (let i = 0; i < values.length / 3; i++) largest = Math.max(largest, sizeAt(values, i))
  return largest
}

/** Value of column `k` at a share of step `i`: 0 at its start, 1 at its end. */
export const within = (values: Float64Array, i: number, k: number, share: number): number =>
  share * values[(i + 1) * 3 + k]! + (1 - share) * values[i * 3 + k]!

const valuesOf = ({ body, track }: { body: string; track: Track | string }): ActingForce => ({
  body,
  values: (track as Track).values,
})
