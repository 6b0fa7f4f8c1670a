/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { highWord, leading, lowWord, withHighWord } from "./bits.ts"

const ln2High = 0.6931471803691238
const ln2Low = 1.9082149292705877e-10
const twoTo54 = 18014398509481984

const L1 = 0.6666666666666735
const L2 = 0.3999999999940942
const L3 = 0.2857142874366239
const L4 = 0.22222198432149784
const L5 = 0.1818357216161805
const L6 = 0.15313837699209373
const L7 = 0.14798198605116586

/** The natural logarithm: x = 2^k (1 + f) with √2/2 < 1 + f < √2, then k ln 2 + log(1 + f). */
export function log(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN
  if (x === Number.POSITIVE_INFINITY) return x
  let k = 0
  let hx = highWord(x)
  let m = x
  if (hx < 0x00100000) {
    k = -54
    m *= twoTo54
    hx = highWord(m)
  }
  k += (hx >> 20) - 1023
  hx &= 0x000fffff
  const shift = (hx + 0x95f64) & 0x100000
  m = withHighWord(m, hx | (shift ^ 0x3ff00000))
  k += shift >> 20
  const f = m - 1
  if ((0x000fffff & (2 + hx)) < 3) {
    if (f === 0) return k === 0 ? 0 : k * ln2High + k * ln2Low
    const R = f * f * (0.5 - 0.3333333333333333 * f)
    return k === 0 ? f - R : k * ln2High - (R - k * ln2Low - f)
  }
  const s = f / (2 + f)
  const z = s * s
  const w = z * z
  const R = z * (L1 + w * (L3 + w * (L5 + w * L7))) + w * (L2 + w * (L4 + w * L6))
  if (((hx - 0x6147a) | (0x6b851 - hx)) > 0) {
    const half = 0.5 * f * f
    return k === 0 ? f - (half - s * (half + R)) : k * ln2High - (half - (s * (half + R) + k * ln2Low) - f)
  }
  return k === 0 ? f - s * (f - R) : k * ln2High - (s * (f - R) - k * ln2Low - f)
}

/** log(1 + x) without the loss of digits near zero. */
export function log1p(x: number): number {
  if (!(x > -1)) return x === -1 ? Number.NEGATIVE_INFINITY : Number.NaN
  if (x === Number.POSITIVE_INFINITY) return x
  const size = Math.abs(x)
  if (size < 1.862645149230957e-9) return size < 5.551115123125783e-17 ? x : x - x * x * 0.5
  let k = 1
  let f = 0
  let hu = 1
  let c = 0
  const hx = highWord(x)
  if (hx < 0x3fda827a && (hx > 0 || hx <= (0xbfd2bec4 | 0))) {
    k = 0
    f = x
  } else {
    let u: number
    if (hx < 0x43400000) {
      u = 1 + x
      hu = highWord(u)
      k = (hu >> 20) - 1023
      c = (k > 0 ? 1 - (u - x) : x - (u - 1)) / u
    } else {
      u = x
      hu = highWord(u)
      k = (hu >> 20) - 1023
    }
    hu &= 0x000fffff
    if (hu < 0x6a09e) {
      u = withHighWord(u, hu | 0x3ff00000)
    } else {
      k += 1
      u = withHighWord(u, hu | 0x3fe00000)
      hu = (0x00100000 - hu) >> 2
    }
    f = u - 1
  }
  const half = 0.5 * f * f
  if (hu === 0) {
    if (f === 0) return k === 0 ? 0 : k * ln2High + (c + k * ln2Low)
    const R = half * (1 - 0.6666666666666666 * f)
    return k === 0 ? f - R : k * ln2High - (R - (k * ln2Low + c) - f)
  }
  const s = f / (2 + f)
  const z = s * s
  const R = z * (L1 + z * (L2 + z * (L3 + z * (L4 + z * (L5 + z * (L6 + z * L7))))))
  if (k === 0) return f - (half - s * (half + R))
  return k * ln2High - (half - (s * (half + R) + (k * ln2Low + c)) - f)
}

/** The parts of a logarithm to base 2 or 10: the exponent k, and log(1 + f) as a leading and a trailing part. */
function parts(x: number): { k: number; high: number; low: number } {
  let k = 0
  let hx = highWord(x)
  let m = x
  if (hx < 0x00100000) {
    k = -54
    m *= twoTo54
    hx = highWord(m)
  }
  k += (hx >> 20) - 1023
  hx &= 0x000fffff
  const shift = (hx + 0x95f64) & 0x100000
  m = withHighWord(m, hx | (shift ^ 0x3ff00000))
  k += shift >> 20
  const f = m - 1
  const half = 0.5 * f * f
  const s = f / (2 + f)
  const z = s * s
  const w = z * z
  const R = z * (L1 + w * (L3 + w * (L5 + w * L7))) + w * (L2 + w * (L4 + w * L6))
  const high = leading(f - half)
  return { k, high, low: f - high - half + s * (half + R) }
}

const inverseLn2High = 1.4426950407214463
const inverseLn2Low = 1.6751713164886512e-10

export function log2(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN
  if (x === Number.POSITIVE_INFINITY) return x
  if (x === 1) return 0
  const { k, high, low } = parts(x)
  const valueHigh = high * inverseLn2High
  const valueLow = (low + high) * inverseLn2Low + low * inverseLn2High
  const w = k + valueHigh
  return valueLow + (k - w + valueHigh) + w
}

const inverseLn10High = 0.4342944818781689
const inverseLn10Low = 2.5082946711645275e-11
const log10of2High = 0.30102999566361177
const log10of2Low = 3.694239077158931e-13

export function log10(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN
  if (x === Number.POSITIVE_INFINITY) return x
  if (highWord(x) === 0x3ff00000 && lowWord(x) === 0) return 0
  const { k, high, low } = parts(x)
  const valueHigh = high * inverseLn10High
  const y = k * log10of2High
  const valueLow = k * log10of2Low + (low + high) * inverseLn10Low + low * inverseLn10High
  const w = y + valueHigh
  return valueLow + (y - w + valueHigh) + w
}
