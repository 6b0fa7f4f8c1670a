/**
 * Seeded random numbers for cells: xoshiro128** 1.1, period 2^128 - 1 [1], its state filled by splitmix32, that is
 * a Weyl sequence through the finaliser of MurmurHash3 [2], so that near seeds start far apart. Whole-number arithmetic only: the
 * same bits in every engine. Good enough for scatter in data; of no use for secrets.
 *
 * [1] D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47, 36 (2021).
 * [2] G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014, 453.
 */
export type State = readonly [number, number, number, number]

const rotate = (x: number, k: number): number => (x << k) | (x >>> (32 - k))

/** Four words from a seed. A seed is any number: its low and its high 32 bits as a whole number both count. */
export function seedState(seed: number): State {
  const whole = Number.isFinite(seed) ? Math.trunc(seed) : 0
  let weyl = ((whole | 0) ^ Math.imul(Math.trunc(whole / 4294967296) | 0, 0x85ebca6b)) | 0
  const word = (): number => {
    weyl = (weyl + 0x9e3779b9) | 0
    let z = weyl
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b)
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35)
    return (z ^ (z >>> 16)) >>> 0
  }
  const state: State = [word(), word(), word(), word()]
  return state.every(w => w === 0) ? [1, 0, 0, 0] : state
}

/** The generator itself: 32 bits a call. */
export function xoshiro128(state: State): () => number {
  let [s0, s1, s2, s3] = state
  return () => {
    const result = Math.imul(rotate(Math.imul(s1, 5), 7), 9) >>> 0
    const t = s1 << 9
    s2 ^= s0
    s3 ^= s1
    s1 ^= s2
    s0 ^= s3
    s2 ^= t
    s3 = rotate(s3, 11)
    return result
  }
}

/** `random()` as cells have it: a number in [0, 1) with 53 random bits, two words a number. */
export function seededRandom(seed: number): () => number {
  const next = xoshiro128(seedState(seed))
  return () => {
    const high = next() >>> 5
    const low = next() >>> 6
    return (high * 67108864 + low) / 9007199254740992
  }
}
