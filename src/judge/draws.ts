import { sha256 } from "@noble/hashes/sha2.js"
import { utf8ToBytes } from "@noble/hashes/utils.js"
import type { AnswerFile, Parameter, StudentSheet, Worksheet } from "../worksheet/contract.ts"

/** Different draws of one worksheet. A student gets some of them; a whole class needs no more references than these. */
export const drawPool = 16

/** The sheet's own parameters: what every student works with. */
export function ownParameters(sheet: StudentSheet): Record<string, number> {
  return Object.fromEntries(sheet.parameters.map(p => [p.name, p.value]))
}

/**
 * What hidden draws are drawn by: the author's answers and keys, which no student has. By anything that is on the sheet, or
 * in the file that a student hands in, a student could draw them too, and answer for them alone.
 */
const secretOf = ({ sheet, answers, keys }: Worksheet): string =>
  JSON.stringify([sheet.digest, Object.entries(answers).sort(), keys])

/** A whole number of 32 bits by SHA-256, as good as random for whoever lacks the secret; the same on every machine. */
function draw(secret: string, what: string): number {
  const digest = sha256(utf8ToBytes(`${secret}\n${what}`))
  return new DataView(digest.buffer, digest.byteOffset).getUint32(0)
}

interface Pool {
  readonly secret: string
  /** parameters by place */
  readonly parameters: readonly Readonly<Record<string, number>>[]
  /** the same as parts of each range that varies */
  readonly positions: readonly (readonly number[])[]
}

/** A worksheet never changes, and its draws are asked for with every answer. */
const pools = new WeakMap<Worksheet, Pool>()

/**
 * Hidden draws: each parameter that varies somewhere in its range, in round steps of about a fiftieth of it; the others as
 * they are. The pool is a Latin hypercube: of each parameter every sixteenth of its range is drawn from once, so that a case
 * that fills a part of the range is among them. The same worksheet gives the same numbers, on every machine.
 *
 * @source M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239
 */
function poolOf(worksheet: Worksheet): Pool {
  const known = pools.get(worksheet)
  if (known !== undefined) return known
  const secret = secretOf(worksheet)
  const own = worksheet.sheet.parameters
  const values = own.map(parameter => valuesOf(parameter, secret))
  const places = [...Array(drawPool).keys()]
  const pool = {
    secret,
    parameters: places.map(place => Object.fromEntries(own.map(({ name }, k) => [name, values[k]![place]!]))),
    positions: places.map(place =>
      own.flatMap(({ vary, range: [low, high] }, k) =>
        vary ? [(values[k]![place]! - low) / (high - low)] : [],
      ),
    ),
  }
  pools.set(worksheet, pool)
  return pool
}

/** What one parameter is at each place of the pool. */
function valuesOf({ name, vary, value, range: [low, high] }: Parameter, secret: string): number[] {
  if (!vary) return Array.from({ length: drawPool }, () => value)
  const step = roundStep((high - low) / 50)
  const first = Math.ceil(low / step - 1e-9)
  const count = Math.floor(high / step + 1e-9) - first + 1
  return shuffled(draw(secret, `strata of ${name}`), drawPool).map((stratum, place) => {
    const within = draw(secret, `${name} ${place}`) / 2 ** 32
    const start = Math.floor(((stratum + within) / drawPool) * count)
    // A draw at the sheet's own value would tell nothing: take the opposite part of the range.
    const near = Math.abs((first + start) * step - value) < (high - low) / 20
    const shift = near ? (start + Math.floor(count / 2)) % count : start
    return Number(((first + shift) * step).toPrecision(12))
  })
}

/** The parameters of the hidden draw at a place of the pool. */
export const drawParameters = (worksheet: Worksheet, place: number): Readonly<Record<string, number>> =>
  poolOf(worksheet).parameters[place]!

/** Choices among which a student's is the one that leaves out least. */
const choicesTried = 32

/**
 * Places in the pool that one student's answer is tried at: `count` different ones, for each student others. No
 * student's happen to be all of one kind: of some choices it is the one that leaves out the smallest parts of the ranges.
 */
export function drawPlaces(worksheet: Worksheet, student: AnswerFile["student"], count: number): number[] {
  const who = student.id.trim() || student.name.trim()
  const most = Math.min(count, drawPool)
  const { secret, positions } = poolOf(worksheet)
  let best: number[] = []
  let least = Number.POSITIVE_INFINITY
  let state = draw(secret, `student ${who}`)
  for (let tried = 0; tried < choicesTried; tried++) {
    state = stirred(state)
    const choice = shuffled(state, drawPool).slice(0, most)
    const gap = widestGap(choice.map(place => positions[place]!))
    if (gap < least) [best, least] = [choice, gap]
  }
  return best
}

/** The largest part of any range without a draw. */
function widestGap(choice: readonly (readonly number[])[]): number {
  let widest = 0
  for (const k of choice[0]?.keys() ?? []) {
    const along = [0, ...choice.map(position => position[k]!).sort((a, b) => a - b), 1]
    for (let i = 1; i < along.length; i++) widest = Math.max(widest, along[i]! - along[i - 1]!)
  }
  return widest
}

/** 0 to n - 1 in another order (Knuth, The Art of Computer Programming 2, 3.4.2, algorithm P; from memory). */
function shuffled(seed: number, n: number): number[] {
  const order = Array.from({ length: n }, (_, i) => i)
  let state = seed
  for (let i = 0; i < n - 1; i++) {
    state = stirred(state)
    const other = i + (state % (n - i))
    ;[order[i], order[other]] = [order[other]!, order[i]!]
  }
  return order
}

/** One step of a generator of 32 bits (G. Marsaglia, Xorshift RNGs, J. Stat. Softw. 8 (2003) 14: 13, 17, 5; from memory). */
function stirred(state: number): number {
  let x = state === 0 ? 1 : state
  x ^= x << 13
  x ^= x >>> 17
  x ^= x << 5
  return x >>> 0
}

/** 1, 2 or 5 times a power of ten, not above `size`. */
function roundStep(size: number): number {
  const power = 10 ** Math.floor(Math.log10(size) + 1e-9)
  const lead = size / power
  return power * (lead >= 5 - 1e-9 ? 5 : lead >= 2 - 1e-9 ? 2 : 1)
}
