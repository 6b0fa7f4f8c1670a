/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { fromWords, highWord, powerOfTwo, withHighWord } from "./bits.ts"

const ln2High = 0.6931471803691238
const ln2Low = 1.9082149292705877e-10
/** exp overflows above this and vanishes below the other. */
const largest = 709.782712893384
const smallest = -745.1332191019411
const twoToMinus1000 = 9.332636185032189e-302

const P1 = 0.16666666666666602
const P2 = -0.0027777777777015593
const P3 = 0.00006613756321437934
const P4 = -0.0000016533902205465252
const P5 = 4.1381367970572385e-8

/** e^x: x = k ln 2 + r with |r| ≤ ln 2 / 2, a rational approximation of e^r, then times 2^k. */
export function exp(x: number): number {
  if (Number.isNaN(x)) return x
  if (x > largest) return Number.POSITIVE_INFINITY
  if (x < smallest) return 0
  if (x === 1) return Math.E
  const size = Math.abs(x)
  let k = 0
  let high = 0
  let low = 0
  let r = x
  if (size > 0.34657359027997264) {
    if (size < 1.0397207708399179) {
      k = x > 0 ? 1 : -1
      high = x - k * ln2High
      low = k * ln2Low
    } else {
      k = (Math.LOG2E * x + (x > 0 ? 0.5 : -0.5)) | 0
      high = x - k * ln2High
      low = k * ln2Low
    }
    r = high - low
  } else if (size < 3.725290298461914e-9) {
    return 1 + x
  }
  const t = r * r
  const c = r - t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5))))
  if (k === 0) return 1 - ((r * c) / (c - 2) - r)
  const y = 1 - (low - (r * c) / (2 - c) - high)
  if (k === 1024) return y * 2 * powerOfTwo(1023)
  if (k >= -1021) return y * powerOfTwo(k)
  return y * powerOfTwo(k + 1000) * twoToMinus1000
}

const Q1 = -0.03333333333333313
const Q2 = 0.0015873015872548146
const Q3 = -0.0000793650757867488
const Q4 = 0.000004008217827329362
const Q5 = -2.0109921818362437e-7

/** e^x − 1 without the loss of digits near zero. */
export function expm1(x: number): number {
  if (Number.isNaN(x)) return x
  if (x > largest) return Number.POSITIVE_INFINITY
  if (x < -38.81624211135694) return -1
  const size = Math.abs(x)
  let k = 0
  let c = 0
  let r = x
  if (size > 0.34657359027997264) {
    let high: number
    let low: number
    if (size < 1.0397207708399179) {
      k = x > 0 ? 1 : -1
      high = x - k * ln2High
      low = k * ln2Low
    } else {
      k = (Math.LOG2E * x + (x > 0 ? 0.5 : -0.5)) | 0
      high = x - k * ln2High
      low = k * ln2Low
    }
    r = high - low
    c = high - r - low
  } else if (size < 5.551115123125783e-17) {
    return x
  }
  const halfR = 0.5 * r
  const halfSquare = r * halfR
  const r1 =
    1 + halfSquare * (Q1 + halfSquare * (Q2 + halfSquare * (Q3 + halfSquare * (Q4 + halfSquare * Q5))))
  let t = 3 - r1 * halfR
  let e = halfSquare * ((r1 - t) / (6 - r * t))
  if (k === 0) return r - (r * e - halfSquare)
  e = r * (e - c) - c
  e -= halfSquare
  if (k === -1) return 0.5 * (r - e) - 0.5
  if (k === 1) return r < -0.25 ? -2 * (e - (r + 0.5)) : 1 + 2 * (r - e)
  if (k <= -2 || k > 56) {
    const y = 1 - (e - r)
    return (k === 1024 ? y * 2 * powerOfTwo(1023) : y * powerOfTwo(k)) - 1
  }
  if (k < 20) {
    t = fromWords(0x3ff00000 - (0x200000 >> k), 0)
    return (t - (e - r)) * powerOfTwo(k)
  }
  t = powerOfTwo(-k)
  return (r - (e + t) + 1) * powerOfTwo(k)
}

/** x 2^n, rounded once, for results that may be subnormal. */
export function scaleByPowerOfTwo(x: number, n: number): number {
  const exponent = ((highWord(x) >> 20) & 0x7ff) + n
  if (exponent > 0 && exponent < 0x7ff) return withHighWord(x, highWord(x) + (n << 20))
  if (exponent >= 0x7ff) return x > 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY
  if (exponent <= -54) return x > 0 ? 0 : -0
  return withHighWord(x, highWord(x) + ((n + 54) << 20)) * powerOfTwo(-54)
}
