import { parseUnit, unitName, unitTokens } from "../../physics/units/index.ts"
import { spokenPower } from "./set.ts"

/** A unit set in TeX: upright, thin spaces between factors, a slash as it was written. Empty for "1" or no unit. */
export function unitTex(text: string): string {
  const list = readable(text)
  if (!list) return ""
  let tex = ""
  for (const [at, token] of list.entries()) {
    const before = list[at - 1]?.kind
    const joins = before === undefined || before === "slash" || before === "open"
    if (token.kind === "power") tex += `^{${token.value}}`
    else if (token.kind === "slash") tex += "/"
    else if (token.kind === "close") tex += ")"
    else if (token.kind !== "times") {
      if (!joins) tex += "\\,"
      tex += token.kind === "open" ? "(" : token.kind === "one" ? "1" : `\\mathrm{${symbolTex(token.text)}}`
    }
  }
  return tex
}

const symbols = new Map([
  ["°", "{}^\\circ"],
  ["°C", "{}^\\circ C"],
  ["%", "\\%"],
  ["Ω", "\\Omega"],
  ["′", "{}'"],
  ["″", "{}''"],
  ["'", "{}'"],
  ['"', "{}''"],
])

const symbolTex = (symbol: string): string =>
  symbols.get(symbol) ??
  symbol
    .replace(/[µμ]/, "\\mu ")
    .replace(/[Ω\u2126]/, "\\Omega")
    .replace("%", "\\%")

/** Names that have no plural of their own. */
const unchanging = new Set(["hertz", "siemens", "lux"])

const plural = (name: string): string =>
  unchanging.has(name) || name.endsWith("per cent")
    ? name
    : name === "degree Celsius"
      ? "degrees Celsius"
      : name === "henry"
        ? "henries"
        : name.replace(/^(\S+)/, "$1s")

/** A unit as read aloud: "kilogram metres per second"; with `many` the last name above the line in the plural. */
export function unitWords(text: string, many = false): string {
  const list = readable(text)
  if (!list) return ""
  const slash = list.findIndex(token => token.kind === "slash")
  const last = list.findLastIndex((token, at) => token.kind === "symbol" && (slash < 0 || at < slash))
  const words: string[] = []
  for (const [at, token] of list.entries()) {
    const name = token.kind === "symbol" ? (unitName(token.text) ?? token.text) : ""
    if (name) words.push(many && at === last ? plural(name) : name)
    else if (token.kind === "slash") words.push("per")
    else if (token.kind === "power") words.push(spokenPower(token.value))
  }
  return words.join(" ")
}

function readable(text: string) {
  if (text.trim() === "1" || !parseUnit(text).ok) return null
  const list = unitTokens(text.trim())
  return "ok" in list ? null : list
}
