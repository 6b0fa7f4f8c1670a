/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { fromWords, highWord, lowWord } from "./bits.ts"

const P0 = 1.87595182427177
const P1 = -1.8849797954337717
const P2 = 1.6214297201053545
const P3 = -0.758397934778766
const P4 = 0.14599619288661245

/** The cube root: a quotient of the exponent, a polynomial to 23 bits, one Newton step. */
export function cbrt(x: number): number {
  const size = Math.abs(x)
  if (!(size > 0 && size < Number.POSITIVE_INFINITY)) return x
  const high = highWord(size)
  let t =
    high < 0x00100000
      ? fromWords(Math.floor(highWord(size * 18014398509481984) / 3) + 696219795, 0)
      : fromWords(Math.floor(high / 3) + 715094163, 0)
  let r = t * t * (t / size)
  t = t * (P0 + r * (P1 + r * P2) + r * r * r * (P3 + r * P4))
  t = roundedTo23Bits(t)
  r = size / (t * t)
  t = t + t * ((r - t) / (t + t + r))
  return x < 0 ? -t : t
}

function roundedTo23Bits(t: number): number {
  const low = lowWord(t) + 0x80000000
  return low >= 0x100000000
    ? fromWords(highWord(t) + 1, (low - 0x100000000) & 0xc0000000)
    : fromWords(highWord(t), low & 0xc0000000)
}
