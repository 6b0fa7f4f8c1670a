import type { StudentSheet } from "../worksheet/contract.ts"

/** Different draws of one worksheet. A student gets some of them; a whole class needs no more references than these. */
export const drawPool = 16

/** The sheet's own parameters: what every student works with. */
export function ownParameters(sheet: StudentSheet): Record<string, number> {
  return Object.fromEntries(sheet.parameters.map(p => [p.name, p.value]))
}

/**
 * Parameters of a hidden draw: each that varies anywhere in its range, in round steps of about a fiftieth of it;
 * the others as they are. The same sheet and seed give the same numbers, on every machine.
 */
export function drawParameters(sheet: StudentSheet, seed: number): Record<string, number> {
  return Object.fromEntries(
    sheet.parameters.map(p => {
      if (!p.vary) return [p.name, p.value]
      const [low, high] = p.range
      const step = roundStep((high - low) / 50)
      const first = Math.ceil(low / step - 1e-9)
      const last = Math.floor(high / step + 1e-9)
      const count = last - first + 1
      const start = hash(`${sheet.id} ${p.name} ${seed}`) % count
      const chosen = first + start
      // A draw at the sheet's own value would tell nothing: take the opposite part of the range.
      const near = Math.abs(chosen * step - p.value) < (high - low) / 20
      const shifted = near ? first + ((start + Math.floor(count / 2)) % count) : chosen
      return [p.name, Number((shifted * step).toPrecision(12))]
    }),
  )
}

/**
 * Seeds of the draws that one student's answer is tried with: `count` different ones of the pool, chosen by the
 * student's own seed.
 */
export function drawSeeds(sheet: StudentSheet, studentSeed: number, count: number): number[] {
  const order = Array.from({ length: drawPool }, (_, i) => i)
    .map(i => ({ i, key: hash(`${sheet.digest} ${studentSeed} ${i}`) }))
    .sort((a, b) => a.key - b.key || a.i - b.i)
  return order.slice(0, Math.min(count, drawPool)).map(({ i }) => i)
}

/** 1, 2 or 5 times a power of ten, not above `size`. */
function roundStep(size: number): number {
  const power = 10 ** Math.floor(Math.log10(size) + 1e-9)
  const lead = size / power
  return power * (lead >= 5 - 1e-9 ? 5 : lead >= 2 - 1e-9 ? 2 : 1)
}

/** FNV-1a of 32 bits with a final stir (G. Fowler, L. C. Noll, K.-P. Vo; multiplier and offset from memory). */
export function hash(text: string): number {
  let h = 0x811c9dc5
  for (let i = 0; i < text.length; i++) {
    h ^= text.charCodeAt(i)
    h = Math.imul(h, 0x01000193)
  }
  h ^= h >>> 16
  h = Math.imul(h, 0x7feb352d)
  h ^= h >>> 15
  h = Math.imul(h, 0x846ca68b)
  return (h ^ (h >>> 16)) >>> 0
}
