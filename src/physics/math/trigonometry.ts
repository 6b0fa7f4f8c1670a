/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { highWord, leading } from "./bits.ts"
import { remainder } from "./remainder.ts"

const S1 = -0.16666666666666632
const S2 = 0.00833333333332249
const S3 = -0.0001984126982985795
const S4 = 0.0000027557313707070068
const S5 = -2.5050760253406863e-8
const S6 = 1.58969099521155e-10

/** Sine of x + y on [−π/4, π/4], y being the tail of x. */
function sineNearZero(x: number, y: number): number {
  const z = x * x
  const w = z * z
  const r = S2 + z * (S3 + z * S4) + z * w * (S5 + z * S6)
  const v = z * x
  return y === 0 ? x + v * (S1 + z * r) : x - (z * (0.5 * y - v * r) - y - v * S1)
}

const C1 = 0.0416666666666666
const C2 = -0.001388888888887411
const C3 = 0.00002480158728947673
const C4 = -2.7557314351390663e-7
const C5 = 2.087572321298175e-9
const C6 = -1.1359647557788195e-11

function cosineNearZero(x: number, y: number): number {
  const z = x * x
  const w = z * z
  const r = z * (C1 + z * (C2 + z * C3)) + w * w * (C4 + z * (C5 + z * C6))
  const half = 0.5 * z
  const one = 1 - half
  return one + (1 - one - half + (z * r - x * y))
}

const quarter = 0.7853981633974483

export function sin(x: number): number {
  if (!Number.isFinite(x)) return Number.NaN
  if (Math.abs(x) <= quarter) return Math.abs(x) < 1.4901161193847656e-8 ? x : sineNearZero(x, 0)
  const { turns, high, low } = remainder(x)
  const value = (turns & 1) === 0 ? sineNearZero(high, low) : cosineNearZero(high, low)
  return (turns & 2) === 0 ? value : -value
}

export function cos(x: number): number {
  if (!Number.isFinite(x)) return Number.NaN
  if (Math.abs(x) <= quarter) return Math.abs(x) < 7.450580596923828e-9 ? 1 : cosineNearZero(x, 0)
  const { turns, high, low } = remainder(x)
  const value = (turns & 1) === 0 ? cosineNearZero(high, low) : sineNearZero(high, low)
  return ((turns + 1) & 2) === 0 ? value : -value
}

export function tan(x: number): number {
  if (!Number.isFinite(x)) return Number.NaN
  if (Math.abs(x) <= quarter) return Math.abs(x) < 7.450580596923828e-9 ? x : tangentNearZero(x, 0, false)
  const { turns, high, low } = remainder(x)
  return tangentNearZero(high, low, (turns & 1) === 1)
}

const quarterLow = 3.061616997868383e-17
const T0 = 0.3333333333333341
const T1 = 0.13333333333320124
const T2 = 0.05396825397622605
const T3 = 0.021869488294859542
const T4 = 0.0088632398235993
const T5 = 0.0035920791075913124
const T6 = 0.0014562094543252903
const T7 = 0.0005880412408202641
const T8 = 0.0002464631348184699
const T9 = 0.00007817944429395571
const T10 = 0.00007140724913826082
const T11 = -0.000018558637485527546
const T12 = 0.00002590730518636337

/** Tangent of x + y on [−π/4, π/4], or −1 over it. */
function tangentNearZero(angle: number, tail: number, inverse: boolean): number {
  const hx = highWord(angle)
  const large = (hx & 0x7fffffff) >= 0x3fe59428
  let x = angle
  let y = tail
  if (large) {
    if (hx < 0) {
      x = -x
      y = -y
    }
    x = quarter - x + (quarterLow - y)
    y = 0
  }
  const z = x * x
  const w = z * z
  const odd = T1 + w * (T3 + w * (T5 + w * (T7 + w * (T9 + w * T11))))
  const even = z * (T2 + w * (T4 + w * (T6 + w * (T8 + w * (T10 + w * T12)))))
  const s = z * x
  const r = y + z * (s * (odd + even) + y) + T0 * s
  const sum = x + r
  if (large) {
    const v = inverse ? -1 : 1
    return (hx < 0 ? -1 : 1) * (v - 2 * (x - ((sum * sum) / (sum + v) - r)))
  }
  if (!inverse) return sum
  const head = leading(sum)
  const v = r - (head - x)
  const a = -1 / sum
  const t = leading(a)
  return t + a * (1 + t * head + t * v)
}
