import { Vec3 } from "../../physics/vec3.ts"
import type { Compiled } from "../contract.ts"

/** The first value of the second run that was no ordinary number. */
export interface NotFinite {
  readonly site: number
  readonly value: "NaN" | "infinite"
  /** which time its place was passed */
  readonly count: number
  /** whether something had grown beyond all measure before */
  readonly grown: boolean
}

/** What the host of a tracing run notes with: `at` goes to the program, the rest to whoever explains. */
export interface Tracer {
  at<T>(site: number, value?: T): T
  lastSite(): number | undefined
  /** undefined while all numbers were ordinary ones */
  notFinite(): NotFinite | undefined
}

/** Beyond this no quantity of mechanics lies, in any SI unit: the mass of the visible universe is about 1e53 kg. */
const beyondMeasure = 1e60

/** Follows a tracing run: where it is, and where NaN or infinity first came up in it. */
export function createTracer({ sites }: Compiled): Tracer {
  const counts = new Uint32Array(sites.length)
  const silent = sites.map(({ what }) => what === "turn" || what === "update")
  let last: number | undefined
  let found: NotFinite | undefined
  let infinite: NotFinite | undefined
  let grown = false

  const look = (site: number, value: number): void => {
    if (Math.abs(value) < beyondMeasure) return
    if (Number.isNaN(value)) found = { site, value: "NaN", count: counts[site]!, grown }
    else if (Math.abs(value) !== Number.POSITIVE_INFINITY) grown = true
    else if (grown || sites[site]?.what === "assignment")
      infinite ??= { site, value: "infinite", count: counts[site]!, grown }
  }

  return {
    at<T>(site: number, value?: T): T {
      if (silent[site]) return value as T
      last = site
      if (site < counts.length) counts[site]!++
      if (found === undefined) {
        if (typeof value === "number") look(site, value)
        else if (value instanceof Vec3) {
          look(site, value.x)
          if (found === undefined) look(site, value.y)
          if (found === undefined) look(site, value.z)
        }
      }
      return value as T
    },
    lastSite: () => last,
    notFinite: () => (infinite?.grown ? infinite : (found ?? infinite)),
  }
}
