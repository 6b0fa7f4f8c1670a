import { powerOfTwo } from "./bits.ts"
import { add, type Double, divide, twoProduct, twoSum } from "./double.ts"
import { exp } from "./exponential.ts"
import { log, log1p } from "./logarithm.ts"

/**
 * The hyperbolic functions and their inverses. The usual formulas round several times and miss by up to two units
 * of the last place; here e^x − 1 is carried in double length, and an inverse is put right by one Newton step.
 */

const ln2High = 0.6931471803691238
const ln2Middle = 1.9082149292705877e-10
const one: Double = { high: 1, low: 0 }

/** e^x − 1 in double length, for |x| below 40: x = k ln 2 + r, then r + r²/2 in double length and the rest of the series. */
function expm1Double(x: number): Double {
  const k = Math.round(x * Math.LOG2E)
  const lowPart = twoProduct(k, ln2Middle)
  const reduced = add(twoSum(x - k * ln2High, -lowPart.high), { high: -lowPart.low - k * ln2Tail, low: 0 })
  const r = reduced.high
  const square = twoProduct(r, r)
  const quadratic = add(reduced, { high: 0.5 * square.high, low: 0.5 * square.low + r * reduced.low })
  const series = add(quadratic, { high: r * square.high * restOfSeries(r), low: 0 })
  if (k === 0) return series
  const scale = powerOfTwo(k)
  return add({ high: series.high * scale, low: series.low * scale }, twoSum(scale, -1))
}

/** What ln2High + ln2Middle leave of ln 2. */
const ln2Tail = 1.1612227229362532e-26

/** (e^r − 1 − r − r²/2) / r³ for |r| ≤ ln 2 / 2. */
function restOfSeries(r: number): number {
  let value = 0
  for (let n = 18; n >= 3; n--) value = inverseFactorial[n]! + r * value
  return value
}

const inverseFactorial: readonly number[] = factorialsUpTo(18).map(f => 1 / f)

function factorialsUpTo(n: number): number[] {
  const list = [1]
  for (let i = 1; i <= n; i++) list.push(list[i - 1]! * i)
  return list
}

function half(a: Double): Double {
  return { high: 0.5 * a.high, low: 0.5 * a.low }
}

/** sinh x = (E + E / (1 + E)) / 2 with E = e^x − 1. */
function sinhDouble(size: number): Double {
  const e = expm1Double(size)
  return half(add(e, divide(e, add(one, e))))
}

export function sinh(x: number): number {
  if (!Number.isFinite(x)) return x
  const size = Math.abs(x)
  if (size < 3.725290298461914e-9) return x
  const value = size < 22 ? sinhDouble(size).high : halfOfExp(size)
  return x < 0 ? -value : value
}

export function cosh(x: number): number {
  if (Number.isNaN(x)) return x
  const size = Math.abs(x)
  if (size >= 22) return halfOfExp(size)
  const growth = add(one, expm1Double(size))
  return half(add(growth, divide(one, growth))).high
}

function halfOfExp(size: number): number {
  if (size < 709.782712893384) return 0.5 * exp(size)
  const w = exp(0.5 * size)
  return 0.5 * w * w
}

export function tanh(x: number): number {
  if (Number.isNaN(x)) return x
  const size = Math.abs(x)
  if (size >= 20) return x > 0 ? 1 : -1
  if (size < 3.725290298461914e-9) return x
  const e = expm1Double(-2 * size)
  const value = -divide(e, add(e, { high: 2, low: 0 })).high
  return x < 0 ? -value : value
}

export function asinh(x: number): number {
  const size = Math.abs(x)
  if (!(size >= 3.725290298461914e-9 && size < Number.POSITIVE_INFINITY)) return x
  const value = size > 268435456 ? logOfTwice(size) : asinhDouble({ high: size, low: 0 })
  return x > 0 ? value : -value
}

/** asinh of a number of double length: one Newton step of sinh y = x from the usual formula. */
function asinhDouble(x: Double): number {
  const size = x.high
  const y =
    size > 2
      ? log(2 * size + 1 / (Math.sqrt(size * size + 1) + size))
      : log1p(size + (size * size) / (1 + Math.sqrt(1 + size * size)))
  const s = sinhDouble(y)
  return y - (s.high - size + (s.low - x.low)) / Math.sqrt(1 + size * size)
}

export function acosh(x: number): number {
  if (!(x >= 1)) return Number.NaN
  if (x > 268435456) return x === Number.POSITIVE_INFINITY ? x : logOfTwice(x)
  const t = half(twoSum(x, -1))
  const root = Math.sqrt(t.high)
  if (root === 0) return 0
  const square = twoProduct(root, root)
  const low = (t.high - square.high - square.low + t.low) / (2 * root)
  return 2 * asinhDouble({ high: root, low })
}

/** log(2x) for large x: the Newton step is taken where nothing overflows. */
function logOfTwice(x: number): number {
  const k = Math.min(1000, Math.round(log(x) * Math.LOG2E))
  const y = log(x * powerOfTwo(-k))
  const e = expm1Double(y)
  const m = x * powerOfTwo(-k)
  const correction = -(e.high - (m - 1) + e.low) / m
  const turns = twoProduct(k + 1, ln2Middle)
  const sum = add(twoSum((k + 1) * ln2High, y), { high: turns.high, low: turns.low + correction })
  return sum.high + sum.low
}

/** atanh x = log(1 + 2x / (1 − x)) / 2, the quotient in double length. */
export function atanh(x: number): number {
  const size = Math.abs(x)
  if (!(size < 1)) return size === 1 ? x * Number.POSITIVE_INFINITY : Number.NaN
  if (size < 3.725290298461914e-9) return x
  const u = divide({ high: 2 * size, low: 0 }, twoSum(1, -size))
  const y = log1p(u.high)
  const e = expm1Double(y)
  const value = 0.5 * (y - (e.high - u.high + (e.low - u.low)) / (1 + u.high))
  return x < 0 ? -value : value
}
