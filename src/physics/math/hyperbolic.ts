/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { exp, expm1 } from "./exponential.ts"
import { log, log1p } from "./logarithm.ts"

const ln2 = 0.6931471805599453
/** exp of half of it is still finite where exp of all of it is not. */
const largestForExp = 709.782712893384

export function sinh(x: number): number {
  if (x - x !== 0) return x
  const size = Math.abs(x)
  const half = x < 0 ? -0.5 : 0.5
  if (size < 22) {
    if (size < 3.725290298461914e-9) return x
    const t = expm1(size)
    return size < 1 ? half * (2 * t - (t * t) / (t + 1)) : half * (t + t / (t + 1))
  }
  if (size < largestForExp) return half * exp(size)
  const w = exp(0.5 * size)
  return half * w * w
}

export function cosh(x: number): number {
  if (x !== x) return x
  const size = Math.abs(x)
  if (size < 0.34657359027997264) {
    const t = expm1(size)
    const w = 1 + t
    return size < 2.7755575615628914e-17 ? w : 1 + (t * t) / (w + w)
  }
  if (size < 22) {
    const t = exp(size)
    return 0.5 * t + 0.5 / t
  }
  if (size < largestForExp) return 0.5 * exp(size)
  const w = exp(0.5 * size)
  return 0.5 * w * w
}

export function tanh(x: number): number {
  if (x !== x) return x
  const size = Math.abs(x)
  if (size >= 22) return x > 0 ? 1 : -1
  if (size < 3.725290298461914e-9) return x
  let value: number
  if (size >= 1) {
    value = 1 - 2 / (expm1(2 * size) + 2)
  } else {
    const t = expm1(-2 * size)
    value = -t / (t + 2)
  }
  return x < 0 ? -value : value
}

export function asinh(x: number): number {
  const size = Math.abs(x)
  if (!(size >= 3.725290298461914e-9 && size < Number.POSITIVE_INFINITY)) return x
  let value: number
  if (size > 268435456) value = log(size) + ln2
  else if (size > 2) value = log(2 * size + 1 / (Math.sqrt(x * x + 1) + size))
  else value = log1p(size + (x * x) / (1 + Math.sqrt(1 + x * x)))
  return x > 0 ? value : -value
}

export function acosh(x: number): number {
  if (!(x >= 1)) return Number.NaN
  if (x > 268435456) return log(x) + ln2
  if (x > 2) return log(2 * x - 1 / (x + Math.sqrt(x * x - 1)))
  const t = x - 1
  return log1p(t + Math.sqrt(2 * t + t * t))
}

export function atanh(x: number): number {
  const size = Math.abs(x)
  if (!(size < 1)) return size === 1 ? x * Number.POSITIVE_INFINITY : Number.NaN
  if (size < 3.725290298461914e-9) return x
  const t = size + size
  const value = 0.5 * (size < 0.5 ? log1p(t + (t * size) / (1 - size)) : log1p(t / (1 - size)))
  return x < 0 ? -value : value
}
