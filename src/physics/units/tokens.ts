import { fail, type UnitFailure } from "./failure.ts"

/** A piece of a unit text: `kg`, `^-1`, `/`, a bracket. */
export interface Token {
  readonly kind: "symbol" | "power" | "times" | "slash" | "open" | "close" | "one"
  readonly text: string
  readonly value: number
}

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"
const plain = (text: string): string =>
  text
    .replace("⁻", "-")
    .replace("⁺", "")
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, digit => String(superscripts.indexOf(digit)))

/** One rule after the other, at the place reached; the first that fits makes the next token. */
const rules: readonly (readonly [RegExp, Token["kind"] | "space"])[] = [
  [/[\s\u00a0\u2009\u202f]+/y, "space"],
  [/[·⋅∙*×](?!\*)/y, "times"],
  [/[/∕⁄÷]/y, "slash"],
  [/\(/y, "open"],
  [/\)/y, "close"],
  [/\^\s*\(\s*([+\-−]?\d+(?:\.\d+)?(?:\s*\/\s*\d+)?)\s*\)/y, "power"],
  [/\^\s*([+\-−]?\d+(?:\.\d+)?)/y, "power"],
  [/[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/y, "power"],
  [/1(?![\d.])/y, "one"],
  [/\p{L}{0,2}°C|[°′″'"%]/uy, "symbol"],
  [/\p{L}+/uy, "symbol"],
]

/** A whole number right after a symbol, as in `m s-1` or `m2`: a power too. */
const bare = /[+\-−]?\d+/y

function exponent(text: string): number {
  const [above, below] = plain(text).replace("−", "-").split("/")
  return Number(above) / (below === undefined ? 1 : Number(below))
}

/** Cuts a unit text into tokens, or says what does not belong in a unit. */
export function unitTokens(text: string): readonly Token[] | UnitFailure {
  const found: Token[] = []
  let at = 0
  let glued = false
  next: while (at < text.length) {
    if (glued) {
      bare.lastIndex = at
      const number = bare.exec(text)
      if (number) {
        found.push({ kind: "power", text: number[0], value: exponent(number[0]) })
        at = bare.lastIndex
        glued = false
        continue
      }
    }
    for (const [rule, kind] of rules) {
      rule.lastIndex = at
      const match = rule.exec(text)
      if (!match) continue
      at = rule.lastIndex
      glued = kind === "symbol"
      if (kind !== "space")
        found.push({
          kind,
          text: match[0],
          value: kind === "power" ? exponent(match[1] ?? match[0]) : 0,
        })
      continue next
    }
    const odd = String.fromCodePoint(text.codePointAt(at)!)
    if (text.startsWith("**", at))
      return fail(
        "unreadable-unit",
        `The unit "${text}" has "**" in it.`,
        "Write a power as ^, as in m^2.",
        text.replaceAll("**", "^"),
      )
    if (/\d/.test(odd))
      return fail(
        "unreadable-unit",
        `The unit "${text}" has a number in it that is not a power.`,
        "Keep numbers out of units: write kg m^2 or m s^-1, and put the number into the value.",
      )
    return fail(
      "unreadable-unit",
      `The unit "${text}" has "${odd}" in it, which no unit has.`,
      "Write products with a space, quotients with one /, powers with ^: kg m/s^2.",
    )
  }
  return found
}
