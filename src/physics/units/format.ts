import { baseUnits, type Dimension, dimensionOf, exponentsOf, isKnown } from "./dimension.ts"

/** Whether a quantity has a direction: the same dimension then has another name and another customary unit. */
export type Shape = "scalar" | "vector"

/** Customary texts for the dimensions of mechanics (SI Brochure, 9th edition, Tables 4 to 6). */
const customary = new Map<Dimension, string | readonly [scalar: string, vector: string]>([
  [dimensionOf({ kg: 1, m: 1, s: -1 }), "kg m/s"],
  [dimensionOf({ kg: 1, m: 1, s: -2 }), "N"],
  [dimensionOf({ kg: 1, m: 2, s: -2 }), ["J", "N m"]],
  [dimensionOf({ kg: 1, m: 2, s: -3 }), "W"],
  [dimensionOf({ kg: 1, m: -1, s: -2 }), "Pa"],
  [dimensionOf({ kg: 1, s: -2 }), "N/m"],
  [dimensionOf({ kg: 1, s: -1 }), "kg/s"],
  [dimensionOf({ kg: 1, m: -1, s: -1 }), "Pa s"],
  [dimensionOf({ s: -1 }), "1/s"],
  [dimensionOf({ kg: -1, m: 3, s: -2 }), "m³/(kg s²)"],
  [dimensionOf({ A: 1, s: 1 }), "C"],
  [dimensionOf({ kg: 1, m: 2, s: -3, A: -1 }), "V"],
  [dimensionOf({ kg: 1, m: 1, s: -3, A: -1 }), "V/m"],
  [dimensionOf({ kg: 1, s: -2, A: -1 }), "T"],
])

const superscripts: Readonly<Record<string, string>> = {
  "-": "⁻",
  "0": "⁰",
  "1": "¹",
  "2": "²",
  "3": "³",
  "4": "⁴",
  "5": "⁵",
  "6": "⁶",
  "7": "⁷",
  "8": "⁸",
  "9": "⁹",
}

function power(symbol: string, exponent: number): string {
  if (exponent === 1) return symbol
  if (Number.isInteger(exponent))
    return symbol + [...String(exponent)].map(digit => superscripts[digit]).join("")
  for (const below of [2, 3, 6])
    if (Number.isInteger(exponent * below)) return `${symbol}^(${exponent * below}/${below})`
  return `${symbol}^${exponent}`
}

/**
 * A unit text for a dimension, coherent SI: "kg m/s", "N", "m/s²", "1" for a pure number, "?" for an unknown one.
 * `parseUnit` reads it back. With `shape` "vector", kg m²/s² is a torque, "N m"; else an energy, "J".
 */
export function formatUnit(dimension: Dimension, shape: Shape = "scalar"): string {
  if (!isKnown(dimension)) return "?"
  if (dimension === 0) return "1"
  const known = customary.get(dimension)
  if (known !== undefined) return typeof known === "string" ? known : known[shape === "vector" ? 1 : 0]
  const exponents = exponentsOf(dimension)
  const order = ["kg", ...baseUnits.filter(base => base !== "kg")] as const
  const above = order.filter(base => exponents[base] > 0).map(base => power(base, exponents[base]))
  const below = order.filter(base => exponents[base] < 0).map(base => power(base, -exponents[base]))
  if (below.length === 0) return above.join(" ")
  const under = below.length === 1 ? below[0]! : `(${below.join(" ")})`
  return `${above.join(" ") || "1"}/${under}`
}
