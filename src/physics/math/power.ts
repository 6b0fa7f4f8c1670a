/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { highWord, leading, withHighWord } from "./bits.ts"
import { scaleByPowerOfTwo } from "./exponential.ts"

const L1 = 0.5999999999999946
const L2 = 0.4285714285785502
const L3 = 0.33333332981837743
const L4 = 0.272728123808534
const L5 = 0.23066074577556175
const L6 = 0.20697501780033842
const P1 = 0.16666666666666602
const P2 = -0.0027777777777015593
const P3 = 0.00006613756321437934
const P4 = -0.0000016533902205465252
const P5 = 4.1381367970572385e-8
const ln2High = 0.6931471824645996
const ln2Low = -1.904654299957768e-9
/** −(1024 − log2(the largest number + half a unit)). */
const overflowMargin = 8.008566259537294e-17
/** 2 / (3 ln 2), whole and as two parts. */
const cp = 0.9617966939259756
const cpHigh = 0.9617967009544373
const cpLow = -7.028461650952758e-9
const inverseLn2High = 1.4426950216293335
const inverseLn2Low = 1.9259629911266175e-8
const log2of1point5High = 0.5849624872207642
const log2of1point5Low = 1.350039202129749e-8

/** x^y as 2^(y log2 |x|), with log2 |x| carried in two parts. */
export function pow(x: number, y: number): number {
  if (y === 0) return 1
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN
  const special = exactPower(x, y)
  if (special !== undefined) return special
  const wholeness = x < 0 ? parity(y) : 0
  if (x < 0 && wholeness === 0) return Number.NaN
  const sign = x < 0 && wholeness === 1 ? -1 : 1
  return sign * positivePower(Math.abs(x), y)
}

/** 1 for an odd whole number, 2 for an even one, 0 for the rest. */
function parity(y: number): number {
  if (Math.floor(y) !== y) return 0
  return Math.abs(y) < 9007199254740992 && y % 2 !== 0 ? 1 : 2
}

function exactPower(x: number, y: number): number | undefined {
  const size = Math.abs(x)
  if (Math.abs(y) === Number.POSITIVE_INFINITY) {
    if (size === 1) return Number.NaN
    return size > 1 === y > 0 ? Number.POSITIVE_INFINITY : 0
  }
  if (size === 0 || size === Number.POSITIVE_INFINITY) {
    const result = (size === 0) === y > 0 ? 0 : Number.POSITIVE_INFINITY
    return (x < 0 || Object.is(x, -0)) && parity(y) === 1 ? -result : result
  }
  if (x === 1) return 1
  if (y === 1) return x
  if (y === -1) return 1 / x
  if (y === 2) return x * x
  if (y === 0.5) return x < 0 ? Number.NaN : Math.sqrt(x)
  return undefined
}

function positivePower(base: number, y: number): number {
  const size = Math.abs(y)
  const hx = highWord(base)
  if (base === 1) return 1
  if (size > 18446744073709552000) return base > 1 === y > 0 ? Number.POSITIVE_INFINITY : 0
  if (size > 2147483648) {
    if (hx < 0x3fefffff) return y < 0 ? Number.POSITIVE_INFINITY : 0
    if (hx > 0x3ff00000) return y > 0 ? Number.POSITIVE_INFINITY : 0
    const t = base - 1
    const w = t * t * (0.5 - t * (0.3333333333333333 - t * 0.25))
    const u = inverseLn2High * t
    const v = t * inverseLn2Low - w * Math.LOG2E
    const t1 = leading(u + v)
    return twoToThe(y, t1, v - (t1 - u))
  }
  let a = base
  let n = 0
  let ix = hx
  if (ix < 0x00100000) {
    a *= 9007199254740992
    n = -53
    ix = highWord(a)
  }
  n += (ix >> 20) - 0x3ff
  const j = ix & 0x000fffff
  ix = j | 0x3ff00000
  let k = 0
  if (j > 0x3988e) {
    if (j < 0xbb67a) {
      k = 1
    } else {
      n += 1
      ix -= 0x00100000
    }
  }
  a = withHighWord(a, ix)
  const centre = k === 0 ? 1 : 1.5
  let u = a - centre
  let v = 1 / (a + centre)
  const ss = u * v
  const sHigh = leading(ss)
  let tHigh = withHighWord(0, ((ix >> 1) | 0x20000000) + 0x00080000 + (k << 18))
  let tLow = a - (tHigh - centre)
  const sLow = v * (u - sHigh * tHigh - sHigh * tLow)
  let s2 = ss * ss
  let r = s2 * s2 * (L1 + s2 * (L2 + s2 * (L3 + s2 * (L4 + s2 * (L5 + s2 * L6)))))
  r += sLow * (sHigh + ss)
  s2 = sHigh * sHigh
  tHigh = leading(3 + s2 + r)
  tLow = r - (tHigh - 3 - s2)
  u = sHigh * tHigh
  v = sLow * tHigh + tLow * ss
  const pHigh = leading(u + v)
  const pLow = v - (pHigh - u)
  const zHigh = cpHigh * pHigh
  const zLow = cpLow * pHigh + pLow * cp + (k === 0 ? 0 : log2of1point5Low)
  const dHigh = k === 0 ? 0 : log2of1point5High
  const t1 = leading(zHigh + zLow + dHigh + n)
  return twoToThe(y, t1, zLow - (t1 - n - dHigh - zHigh))
}

/** 2^(y (t1 + t2)), where t1 has its trailing half clear. */
function twoToThe(y: number, t1: number, t2: number): number {
  const y1 = leading(y)
  const pLow = (y - y1) * t1 + y * t2
  let pHigh = y1 * t1
  let z = pLow + pHigh
  if (z > 1024 || (z === 1024 && pLow + overflowMargin > z - pHigh)) return Number.POSITIVE_INFINITY
  if (z < -1075 || (z === -1075 && pLow <= z - pHigh)) return 0
  const j = highWord(z)
  const i = j & 0x7fffffff
  let n = 0
  if (i > 0x3fe00000) {
    let k = (i >> 20) - 0x3ff
    n = j + (0x00100000 >> (k + 1))
    k = ((n & 0x7fffffff) >> 20) - 0x3ff
    const whole = withHighWord(0, n & ~(0x000fffff >> k))
    n = ((n & 0x000fffff) | 0x00100000) >> (20 - k)
    if (j < 0) n = -n
    pHigh -= whole
  }
  const t = leading(pLow + pHigh)
  const u = t * ln2High
  const v = (pLow - (t - pHigh)) * Math.LN2 + t * ln2Low
  z = u + v
  const w = v - (z - u)
  const square = z * z
  const c = z - square * (P1 + square * (P2 + square * (P3 + square * (P4 + square * P5))))
  const r = (z * c) / (c - 2) - (w + z * w)
  return scaleByPowerOfTwo(1 - (r - z), n)
}
