import { exp, expm1 } from "./math/exponential.ts"
import { acosh, asinh, atanh, cosh, sinh, tanh } from "./math/hyperbolic.ts"
import { hypot } from "./math/hypotenuse.ts"
import { acos, asin, atan, atan2 } from "./math/inverse.ts"
import { log, log1p, log2, log10 } from "./math/logarithm.ts"
import { pow } from "./math/power.ts"
import { cbrt } from "./math/root.ts"
import { cos, sin, tan } from "./math/trigonometry.ts"

/**
 * The mathematics that cells get under the name Math. Engines differ in the last bit of sine, exponential, power
 * and the like, and the standard allows it; these are computed here from + − × ÷ and square root, which it does
 * not allow to differ, so that a run gives the same bits everywhere. There is no `random`: see random() of a cell.
 */
export const math = {
  E: Math.E,
  LN10: Math.LN10,
  LN2: Math.LN2,
  LOG10E: Math.LOG10E,
  LOG2E: Math.LOG2E,
  PI: Math.PI,
  SQRT1_2: Math.SQRT1_2,
  SQRT2: Math.SQRT2,
  abs: Math.abs,
  acos,
  acosh,
  asin,
  asinh,
  atan,
  atan2,
  atanh,
  cbrt,
  ceil: Math.ceil,
  clz32: Math.clz32,
  cos,
  cosh,
  exp,
  expm1,
  floor: Math.floor,
  fround: Math.fround,
  hypot,
  imul: Math.imul,
  log,
  log10,
  log1p,
  log2,
  max: Math.max,
  min: Math.min,
  pow,
  round: Math.round,
  sign: Math.sign,
  sin,
  sinh,
  sqrt: Math.sqrt,
  tan,
  tanh,
  trunc: Math.trunc,
} as const satisfies Omit<Math, "random" | typeof Symbol.toStringTag>
