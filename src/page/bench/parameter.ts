import type { Parameter } from "../../worksheet/contract.ts"
import { niceStep, significant, trueMinus, withUnit } from "./number.ts"

export type Typed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string }

/** A typed value, read as people write numbers: comma or point, true minus, powers of ten. */
export function readTyped(text: string, parameter: Parameter): Typed {
  const plain = text.trim().replaceAll(trueMinus, "-").replace(",", ".").replace(/\s+/g, "")
  const [low, high] = parameter.range
  const range = `${rangeWords(parameter)}`
  if (plain === "") return { ok: false, why: `Nothing is typed; ${range}.` }
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain))
    return { ok: false, why: `${text.trim()} is not a number; ${range}.` }
  const value = Number(plain)
  if (value < low || value > high) return { ok: false, why: `${text.trim()} is outside; ${range}.` }
  return { ok: true, value }
}

/** "from 1 m to 4 m" */
export function rangeWords(parameter: Parameter): string {
  const [low, high] = parameter.range
  return `${parameter.label} goes from ${withUnit(plainNumber(low), parameter.unit)} to ${withUnit(plainNumber(high), parameter.unit)}`
}

/** The slider's step: round, about 200 over the range; where no round step reaches both ends, a two-hundredth. */
export function sliderStep(parameter: Parameter): number {
  const [low, high] = parameter.range
  const step = niceStep(high - low, 200)
  const count = (high - low) / step
  return Math.abs(count - Math.round(count)) < 1e-6 ? step : (high - low) / 200
}

/** The slider's value nearest to a wanted one: on a step from the low end, within the range. */
export function onStep(parameter: Parameter, wanted: number): number {
  const [low, high] = parameter.range
  if (wanted <= low) return low
  if (wanted >= high) return high
  const step = sliderStep(parameter)
  return Number((low + Math.round((wanted - low) / step) * step).toPrecision(9))
}

/** A value as one would type it: shortest digits that mean the same to nine places. */
export function plainNumber(value: number): string {
  return String(Number(value.toPrecision(9))).replace("-", trueMinus)
}

/** Slider text for a screen reader: value and unit. */
export function valueWords(parameter: Parameter, value: number): string {
  return withUnit(significant(value, 4), parameter.unit)
}
