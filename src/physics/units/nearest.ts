import { distance } from "fastest-levenshtein"
import { prefixes, unitOfSymbol, unitSymbols } from "./symbols.ts"

/** What people write for a unit, and the symbol that the SI gives it. Names are added from the table of symbols. */
const written = new Map<string, string>(
  Object.entries({
    meter: "m",
    sec: "s",
    kilo: "kg",
    kgs: "kg",
    gr: "g",
    gramme: "g",
    kilogramme: "kg",
    kilometer: "km",
    centimeter: "cm",
    millimeter: "mm",
    amp: "A",
    newton: "N",
    mins: "min",
    hr: "h",
    hrs: "h",
    hour: "h",
    deg: "°",
    degree: "°",
    liter: "L",
    ton: "t",
    percent: "%",
    celsius: "°C",
    um: "µm",
    us: "µs",
    ohm: "Ω",
    kph: "km/h",
    kmh: "km/h",
    mps: "m/s",
    rpm: "1/min",
    cc: "cm^3",
    sqm: "m^2",
    none: "1",
  }),
)
for (const unit of unitSymbols)
  if (!written.has(unit.name.toLowerCase())) written.set(unit.name.toLowerCase(), unit.symbol)

/** Products run together that would otherwise be taken for a symbol in the wrong case. */
const joined = new Map([
  ["Nm", "N m"],
  ["Ns", "N s"],
  ["kNm", "kN m"],
  ["Js", "J s"],
])

/** Units outside the SI that a practitioner may know, with what to do about them (exact factors: NIST SP 811, B.8). */
const foreign: Readonly<Record<string, string>> = {
  kgf: "1 kgf is 9.80665 N",
  kp: "1 kp is 9.80665 N",
  lb: "1 lb is 0.45359237 kg",
  lbs: "1 lb is 0.45359237 kg",
  lbf: "1 lbf is 4.4482216152605 N",
  oz: "1 oz is 0.028349523125 kg",
  in: "1 in is 0.0254 m",
  inch: "1 in is 0.0254 m",
  ft: "1 ft is 0.3048 m",
  foot: "1 ft is 0.3048 m",
  feet: "1 ft is 0.3048 m",
  yd: "1 yd is 0.9144 m",
  mi: "1 mi is 1609.344 m",
  mile: "1 mi is 1609.344 m",
  miles: "1 mi is 1609.344 m",
  mph: "1 mi/h is 0.44704 m/s",
  kn: "1 knot is 1852/3600 m/s",
  kt: "1 knot is 1852/3600 m/s",
  knot: "1 knot is 1852/3600 m/s",
  knots: "1 knot is 1852/3600 m/s",
  bar: "1 bar is 1e5 Pa",
  atm: "1 atm is 101325 Pa",
  dyn: "1 dyn is 1e-5 N",
  erg: "1 erg is 1e-7 J",
  cal: "1 cal is 4.184 J (thermochemical)",
  hp: "give the power in W",
  dB: "give the ratio itself",
  Np: "give the ratio itself",
}

/** What a unit outside the SI is in SI units; undefined if it is not one we know of. */
export const foreignUnit = (symbol: string): string | undefined =>
  Object.hasOwn(foreign, symbol) ? foreign[symbol] : undefined

/** Two or three known symbols written without a space: `Nm`, `kgm`, `Ns`. */
function split(text: string): string | null {
  for (let at = 1; at < text.length; at++) {
    const left = text.slice(0, at)
    const right = text.slice(at)
    if (unitOfSymbol(left) && unitOfSymbol(right)) return `${left} ${right}`
  }
  return null
}

/** The known unit that an unknown one was most likely meant to be; null if there is none near. */
export function nearestUnit(text: string): string | null {
  if (text.length > 40) return null
  const lower = text.toLowerCase()
  const word = joined.get(text) ?? written.get(lower) ?? written.get(lower.replace(/s$/, ""))
  if (word) return word
  for (const prefix of prefixes) {
    const rest = lower.startsWith(prefix.name) ? lower.slice(prefix.name.length) : ""
    const symbol = written.get(rest) ?? written.get(rest.replace(/s$/, ""))
    if (symbol && unitOfSymbol(prefix.symbol + symbol)) return prefix.symbol + symbol
  }
  for (const symbol of [lower, text[0]!.toUpperCase() + lower.slice(1), text.toUpperCase()])
    if (unitOfSymbol(symbol)) return symbol
  const pieces = split(text)
  if (pieces) return pieces
  const mixed = unitSymbols.find(one => one.symbol.toLowerCase() === lower)
  if (mixed) return mixed.symbol
  if (text.length < 2) return null
  let best: string | null = null
  let least = text.length > 4 ? 3 : 2
  for (const [name, symbol] of written) {
    const far = distance(lower, name)
    if (far < least && name.length > 2) {
      least = far
      best = symbol
    }
  }
  for (const { symbol } of unitSymbols) {
    const far = distance(text, symbol)
    if (far < least && symbol.length > 1) {
      least = far
      best = symbol
    }
  }
  return best
}
