import { type Dimension, dimensionless, isKnown, per, raised, times } from "./dimension.ts"
import { fail, type UnitFailure } from "./failure.ts"
import { foreignUnit, nearestUnit } from "./nearest.ts"
import { unitOfSymbol } from "./symbols.ts"
import { type Token, unitTokens } from "./tokens.ts"

/** A unit read from text. A number in it stands for `factor` times that number in the coherent SI unit. */
export interface Unit {
  readonly dimension: Dimension
  readonly factor: number
  /** as it was written, blanks trimmed */
  readonly text: string
}

export type UnitResult = { readonly ok: true; readonly unit: Unit } | UnitFailure

/** Longest unit text that is read. */
const longest = 200
/** Deepest nesting of brackets in a unit. */
const deepest = 20

type Read = Omit<Unit, "text"> | UnitFailure

const howToWrite = "Write products with a space, quotients with one /, powers with ^: kg m/s^2."
const partner = "Give each bracket its partner."

function readSymbol(symbol: string, whole: string): Read {
  const known = unitOfSymbol(symbol)
  if (known) return { dimension: known.dimension, factor: known.factor }
  const foreign = foreignUnit(symbol)
  if (foreign)
    return fail(
      "unknown-unit",
      `"${symbol}" is not a unit of the SI.`,
      `Convert the value to SI units first: ${foreign}.`,
    )
  const near = nearestUnit(symbol)
  return fail(
    "unknown-unit",
    `"${symbol}" is not a unit.`,
    near
      ? `Did you mean "${near}"?`
      : "Use symbols of the SI, such as m, kg, s, N, J, or 1 for a pure number.",
    near && whole.replace(symbol, () => near),
  )
}

function ambiguous(text: string, next: Token): UnitFailure {
  const slash = text.indexOf("/")
  return fail(
    "ambiguous-unit",
    `The unit "${text}" can be read in two ways: ${
      next.kind === "slash" ? "it has more than one / in a row" : "more than one factor follows the /"
    }.`,
    "Put what stands below into brackets, as in J/(kg K), or write negative powers, as in m s^-2.",
    `${text.slice(0, slash)}/(${text.slice(slash + 1).replaceAll("/", " ")})`,
  )
}

/** Recursive descent, one function a level of the grammar. */
function read(list: readonly Token[], text: string): Read {
  let at = 0
  let depth = 0

  /** a product, then at most one slash with one factor or one bracket below it */
  function quotient(): Read {
    const above = product()
    if ("ok" in above || list[at]?.kind !== "slash") return above
    at++
    const below = factor()
    if ("ok" in below) return below
    const next = list[at]
    if (next && next.kind !== "close") return ambiguous(text, next)
    return { dimension: per(above.dimension, below.dimension), factor: above.factor / below.factor }
  }

  function product(): Read {
    let result = factor()
    for (;;) {
      const next = list[at]
      if ("ok" in result || !next || next.kind === "close" || next.kind === "slash") return result
      if (next.kind === "times") at++
      const more = factor()
      if ("ok" in more) return more
      result = { dimension: times(result.dimension, more.dimension), factor: result.factor * more.factor }
    }
  }

  function factor(): Read {
    const unit = bare()
    const power = list[at]
    if ("ok" in unit || power?.kind !== "power") return unit
    at++
    const dimension = raised(unit.dimension, power.value)
    if (!isKnown(dimension) || !(Math.abs(power.value) <= 20))
      return fail(
        "unreadable-unit",
        `The unit "${text}" has the power ${power.text.replace("^", "")}, which cannot be used.`,
        "Use a whole power, or a half or third, of ordinary size.",
      )
    return { dimension, factor: unit.factor ** power.value }
  }

  function bare(): Read {
    const token = list[at++]
    if (token?.kind === "symbol") return readSymbol(token.text, text)
    if (token?.kind === "one") return { dimension: dimensionless, factor: 1 }
    if (token?.kind !== "open")
      return fail(
        "unreadable-unit",
        `The unit "${text}" lacks a symbol ${token ? `before "${token.text}"` : "at its end"}.`,
        howToWrite,
      )
    if (++depth > deepest)
      return fail("unreadable-unit", "The unit has too many brackets inside one another.", howToWrite)
    const inner = quotient()
    depth--
    if ("ok" in inner) return inner
    if (list[at++]?.kind !== "close")
      return fail("unreadable-unit", `The unit "${text}" has a "(" without its ")".`, partner)
    return inner
  }

  const whole = quotient()
  if (!("ok" in whole) && at < list.length)
    return fail("unreadable-unit", `The unit "${text}" has a ")" without its "(".`, partner)
  return whole
}

/**
 * Reads a unit in the grammar of the SI Brochure, 9th edition (2019), sections 5.2 and 5.4: symbols with prefixes;
 * products with a space, a half-high dot or `*`; one quotient with `/`; powers as `^2`, `²`, `⁻¹` or `s-1`; brackets;
 * `1` for a pure number. More than one `/`, or more than one factor after it, is refused unless brackets say what is
 * meant (SI Brochure 5.2; ISO 80000-1:2022, 7.2.3 from memory). Never throws.
 */
export function parseUnit(text: string): UnitResult {
  const trimmed = text.trim()
  if (trimmed === "")
    return fail(
      "unreadable-unit",
      "The unit is empty.",
      'Write a unit, such as "m" or "kg m/s", or "1" for a pure number.',
    )
  if (trimmed.length > longest)
    return fail(
      "unreadable-unit",
      `The unit has ${trimmed.length} characters.`,
      "Write a unit, such as kg m/s^2.",
    )
  const list = unitTokens(trimmed)
  if ("ok" in list) return list
  const unit = read(list, trimmed)
  if ("ok" in unit) return unit
  if (!isKnown(unit.dimension))
    return fail(
      "unreadable-unit",
      `The unit "${trimmed}" has powers beyond use.`,
      "Use powers of ordinary size.",
    )
  return { ok: true, unit: { ...unit, text: trimmed } }
}
