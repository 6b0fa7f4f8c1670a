/*
 * After fdlibm by way of the FreeBSD mathematical library:
 * Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { highWord, lowWord } from "./bits.ts"

/** x − turns π/2 as the sum high + low, |high| ≤ π/4 to rounding; `turns` is right in its last two bits. */
export interface Remainder {
  readonly turns: number
  readonly high: number
  readonly low: number
}

const inverse = 0.6366197723675814
/** π/2 in three parts of 33 bits, each with what is left after it. */
const first = 1.5707963267341256
const firstTail = 6.077100506506192e-11
const second = 6.077100506303966e-11
const secondTail = 2.0222662487959506e-21
const third = 2.0222662487111665e-21
const thirdTail = 8.4784276603689e-32
/** Adding and taking away this number rounds to the nearest whole number. */
const rounder = 6755399441055744

export function remainder(x: number): Remainder {
  if (Math.abs(x) >= 1647099.3291652855) return largeRemainder(x)
  const fn = x * inverse + rounder - rounder
  let r = x - fn * first
  let w = fn * firstTail
  let high = r - w
  const exponent = (highWord(x) >> 20) & 0x7ff
  if (exponent - ((highWord(high) >> 20) & 0x7ff) > 16) {
    let t = r
    w = fn * second
    r = t - w
    w = fn * secondTail - (t - r - w)
    high = r - w
    if (exponent - ((highWord(high) >> 20) & 0x7ff) > 49) {
      t = r
      w = fn * third
      r = t - w
      w = fn * thirdTail - (t - r - w)
      high = r - w
    }
  }
  return { turns: fn | 0, high, low: r - high - w }
}

/** 2/π to 1584 bits after the point, and π/2 to 128. */
const twoOverPi =
  0xa2f9836e4e441529fc2757d1f534ddc0db6295993c439041fe5163abdebbc561b7246e3a424dd2e006492eea09d1921cfe1deb1cb129a73ee88235f52ebb4484e99c7026b45f7e413991d639835339f49c845f8bbdf9283b1ff897ffde05980fef2f118b5a0a6d1f6d367ecf27cb09b74f463f669e5fea2d7527bac7ebe5f17b3d0739f78a5292ea6bfb5fb11f8d5d0856033046fc7b6babf0cfbc209af4361da9e391615ee61b086599855f14a068408dffd8804d73273106061556ca73a8c960e27bc08c6bn
const twoOverPiBits = 1584n
const halfPi = 0x1921fb54442d18469898cc51701b839a2n
const fractionBits = 192n

/** For |x| above a million: exact in whole numbers, so that no digit of the angle is lost. */
function largeRemainder(x: number): Remainder {
  const high = highWord(x)
  const exponent = BigInt(((high >> 20) & 0x7ff) - 1075)
  const mantissa = (BigInt((high & 0xfffff) | 0x100000) << 32n) | BigInt(lowWord(x))
  // quarter turns, in units of 2^-fractionBits, modulo four turns of a quarter
  const shift = twoOverPiBits - exponent - fractionBits
  const scaled = (mantissa * twoOverPi) >> shift
  const one = 1n << fractionBits
  let turns = Number((scaled >> fractionBits) & 3n)
  let fraction = scaled & (one - 1n)
  if (fraction >= one / 2n) {
    fraction -= one
    turns += 1
  }
  // radians in units of 2^-(fractionBits + 128)
  const radians = fraction * halfPi
  const head = Number(radians)
  const tail = Number(radians - BigInt(head))
  const unit = 4.6816763546921983e-97
  const sign = x < 0 ? -1 : 1
  return { turns: sign * turns, high: sign * head * unit, low: sign * tail * unit }
}
