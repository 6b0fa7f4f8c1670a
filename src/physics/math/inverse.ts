/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { highWord, leading } from "./bits.ts"

const halfPi = 1.5707963267948966
const halfPiLow = 6.123233995736766e-17
const quarterPi = 0.7853981633974483

const p0 = 0.16666666666666666
const p1 = -0.3255658186224009
const p2 = 0.20121253213486293
const p3 = -0.04005553450067941
const p4 = 0.0007915349942898145
const p5 = 0.00003479331075960212
const q1 = -2.403394911734414
const q2 = 2.0209457602335057
const q3 = -0.6882839716054533
const q4 = 0.07703815055590194

/** (asin x − x) / x as a function of t = x² for |x| ≤ 1/2. */
function excess(t: number): number {
  const p = t * (p0 + t * (p1 + t * (p2 + t * (p3 + t * (p4 + t * p5)))))
  return p / (1 + t * (q1 + t * (q2 + t * (q3 + t * q4))))
}

export function asin(x: number): number {
  const size = Math.abs(x)
  if (!(size < 1)) return size === 1 ? x * halfPi + x * halfPiLow : Number.NaN
  if (size < 0.5) return size < 7.450580596923828e-9 ? x : x + x * excess(x * x)
  const t = (1 - size) * 0.5
  const s = Math.sqrt(t)
  const r = excess(t)
  let value: number
  if (size >= 0.975) {
    value = halfPi - (2 * (s + s * r) - halfPiLow)
  } else {
    const w = leading(s)
    const c = (t - w * w) / (s + w)
    value = quarterPi - (2 * s * r - (halfPiLow - 2 * c) - (quarterPi - 2 * w))
  }
  return x > 0 ? value : -value
}

export function acos(x: number): number {
  const size = Math.abs(x)
  if (!(size < 1)) {
    if (size !== 1) return Number.NaN
    return x > 0 ? 0 : Math.PI
  }
  if (size < 0.5) {
    if (size < 6.938893903907228e-18) return halfPi
    return halfPi - (x - (halfPiLow - x * excess(x * x)))
  }
  const z = (1 - size) * 0.5
  const s = Math.sqrt(z)
  const r = excess(z)
  if (x < 0) return Math.PI - 2 * (s + (r * s - halfPiLow))
  const head = leading(s)
  const c = (z - head * head) / (s + head)
  return 2 * (head + (r * s + c))
}

const a0 = 0.3333333333333293
const a1 = -0.19999999999876483
const a2 = 0.14285714272503466
const a3 = -0.11111110405462356
const a4 = 0.09090887133436507
const a5 = -0.0769187620504483
const a6 = 0.06661073137387531
const a7 = -0.058335701337905735
const a8 = 0.049768779946159324
const a9 = -0.036531572744216916
const a10 = 0.016285820115365782

/** x − atan x for the argument brought near zero. */
function deficit(x: number): number {
  const z = x * x
  const w = z * z
  const even = z * (a0 + w * (a2 + w * (a4 + w * (a6 + w * (a8 + w * a10)))))
  const odd = w * (a1 + w * (a3 + w * (a5 + w * (a7 + w * a9))))
  return x * (even + odd)
}

export function atan(x: number): number {
  const size = Math.abs(x)
  if (Number.isNaN(x)) return x
  if (size >= 7.378697629483821e19) return x > 0 ? halfPi : -halfPi
  if (size < 0.4375) return size < 1.862645149230957e-9 ? x : x - deficit(x)
  let t: number
  let high: number
  let low: number
  if (size < 0.6875) {
    t = (2 * size - 1) / (2 + size)
    high = 0.4636476090008061
    low = 2.2698777452961687e-17
  } else if (size < 1.1875) {
    t = (size - 1) / (size + 1)
    high = quarterPi
    low = 3.061616997868383e-17
  } else if (size < 2.4375) {
    t = (size - 1.5) / (1 + 1.5 * size)
    high = 0.982793723247329
    low = 1.3903311031230998e-17
  } else {
    t = -1 / size
    high = halfPi
    low = halfPiLow
  }
  const value = high - (deficit(t) - low - t)
  return x < 0 ? -value : value
}

const piLow = 1.2246467991473532e-16

export function atan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN
  const left = x < 0 || Object.is(x, -0)
  const below = y < 0 || Object.is(y, -0)
  const signed = (angle: number) => (below ? -angle : angle)
  if (y === 0) return left ? signed(Math.PI) : y
  if (x === 0) return signed(halfPi)
  const sizeX = Math.abs(x)
  const sizeY = Math.abs(y)
  if (sizeX === Number.POSITIVE_INFINITY) {
    if (sizeY === Number.POSITIVE_INFINITY) return signed(left ? 3 * quarterPi : quarterPi)
    return signed(left ? Math.PI : 0)
  }
  if (sizeY === Number.POSITIVE_INFINITY) return signed(halfPi)
  const k = ((highWord(sizeY) - highWord(sizeX)) | 0) >> 20
  if (k > 60) return signed(halfPi)
  const angle = left && k < -60 ? 0 : atan(Math.abs(y / x))
  if (!left) return signed(angle)
  return below ? angle - piLow - Math.PI : Math.PI - (angle - piLow)
}
