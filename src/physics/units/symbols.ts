import { type Dimension, dimensionOf } from "./dimension.ts"

/** What one unit symbol stands for. `factor` times the coherent SI unit of `dimension`. */
export interface UnitSymbol {
  readonly symbol: string
  readonly name: string
  readonly dimension: Dimension
  readonly factor: number
  /** whether SI prefixes may stand before it */
  readonly prefixes: boolean
}

const unit = (
  symbol: string,
  name: string,
  exponents: Parameters<typeof dimensionOf>[0],
  factor = 1,
  prefixes = true,
): UnitSymbol => ({ symbol, name, dimension: dimensionOf(exponents), factor, prefixes })

/** SI Brochure, 9th edition (2019), Table 2. The gram carries the prefixes of mass. */
const base: readonly UnitSymbol[] = [
  unit("m", "metre", { m: 1 }),
  unit("kg", "kilogram", { kg: 1 }, 1, false),
  unit("g", "gram", { kg: 1 }, 1e-3),
  unit("s", "second", { s: 1 }),
  unit("A", "ampere", { A: 1 }),
  unit("K", "kelvin", { K: 1 }),
  unit("mol", "mole", { mol: 1 }),
  unit("cd", "candela", { cd: 1 }),
]

/** SI Brochure, 9th edition (2019), Table 4: the 22 units with special names. Degrees Celsius are read as intervals. */
export const namedDerivedUnits: readonly UnitSymbol[] = [
  unit("rad", "radian", {}),
  unit("sr", "steradian", {}),
  unit("Hz", "hertz", { s: -1 }),
  unit("N", "newton", { kg: 1, m: 1, s: -2 }),
  unit("Pa", "pascal", { kg: 1, m: -1, s: -2 }),
  unit("J", "joule", { kg: 1, m: 2, s: -2 }),
  unit("W", "watt", { kg: 1, m: 2, s: -3 }),
  unit("C", "coulomb", { A: 1, s: 1 }),
  unit("V", "volt", { kg: 1, m: 2, s: -3, A: -1 }),
  unit("F", "farad", { kg: -1, m: -2, s: 4, A: 2 }),
  unit("Ω", "ohm", { kg: 1, m: 2, s: -3, A: -2 }),
  unit("S", "siemens", { kg: -1, m: -2, s: 3, A: 2 }),
  unit("Wb", "weber", { kg: 1, m: 2, s: -2, A: -1 }),
  unit("T", "tesla", { kg: 1, s: -2, A: -1 }),
  unit("H", "henry", { kg: 1, m: 2, s: -2, A: -2 }),
  unit("°C", "degree Celsius", { K: 1 }),
  unit("lm", "lumen", { cd: 1 }),
  unit("lx", "lux", { cd: 1, m: -2 }),
  unit("Bq", "becquerel", { s: -1 }),
  unit("Gy", "gray", { m: 2, s: -2 }),
  unit("Sv", "sievert", { m: 2, s: -2 }),
  unit("kat", "katal", { mol: 1, s: -1 }),
]

/**
 * SI Brochure, 9th edition (2019), Table 8: non-SI units accepted for use with the SI (logarithmic ones left out:
 * they do not multiply), and per cent (section 5.4.7).
 */
const accepted: readonly UnitSymbol[] = [
  unit("min", "minute", { s: 1 }, 60, false),
  unit("h", "hour", { s: 1 }, 3600, false),
  unit("d", "day", { s: 1 }, 86400, false),
  unit("°", "degree", {}, Math.PI / 180, false),
  unit("′", "minute of arc", {}, Math.PI / 10800, false),
  unit("″", "second of arc", {}, Math.PI / 648000, false),
  unit("ha", "hectare", { m: 2 }, 1e4, false),
  unit("l", "litre", { m: 3 }, 1e-3),
  unit("L", "litre", { m: 3 }, 1e-3),
  unit("t", "tonne", { kg: 1 }, 1000),
  unit("Da", "dalton", { kg: 1 }, 1.6605390666e-27),
  unit("eV", "electronvolt", { kg: 1, m: 2, s: -2 }, 1.602176634e-19),
  unit("au", "astronomical unit", { m: 1 }, 149_597_870_700, false),
  unit("%", "per cent", {}, 0.01, false),
]

/** Other characters for the same symbols: the ohm sign, primes from the keyboard. */
const spellings = new Map([
  ["\u2126", "Ω"],
  ["'", "′"],
  ['"', "″"],
])

/** SI Brochure, 9th edition (2019), Table 7, with the 2022 additions (27th CGPM, Resolution 3). */
export const prefixes: readonly {
  readonly symbol: string
  readonly name: string
  readonly factor: number
}[] = [
  ["Q", "quetta", 1e30],
  ["R", "ronna", 1e27],
  ["Y", "yotta", 1e24],
  ["Z", "zetta", 1e21],
  ["E", "exa", 1e18],
  ["P", "peta", 1e15],
  ["T", "tera", 1e12],
  ["G", "giga", 1e9],
  ["M", "mega", 1e6],
  ["k", "kilo", 1e3],
  ["h", "hecto", 1e2],
  ["da", "deca", 10],
  ["d", "deci", 0.1],
  ["c", "centi", 0.01],
  ["m", "milli", 1e-3],
  ["µ", "micro", 1e-6],
  ["n", "nano", 1e-9],
  ["p", "pico", 1e-12],
  ["f", "femto", 1e-15],
  ["a", "atto", 1e-18],
  ["z", "zepto", 1e-21],
  ["y", "yocto", 1e-24],
  ["r", "ronto", 1e-27],
  ["q", "quecto", 1e-30],
].map(([symbol, name, factor]) => ({
  symbol: symbol as string,
  name: name as string,
  factor: factor as number,
}))

export const unitSymbols: readonly UnitSymbol[] = [...base, ...namedDerivedUnits, ...accepted]
const bySymbol = new Map(unitSymbols.map(one => [one.symbol, one]))
const byPrefix = new Map(prefixes.map(one => [one.symbol, one]))

/** A symbol, with or without prefix; undefined if it is no unit. A whole symbol wins over a prefixed one. */
export function unitOfSymbol(text: string): UnitSymbol | undefined {
  const symbol = spellings.get(text) ?? text.replace("\u03bc", "\u00b5")
  const whole = bySymbol.get(symbol)
  if (whole) return whole
  for (const length of [2, 1]) {
    const prefix = byPrefix.get(symbol.slice(0, length))
    const bare = symbol.slice(length)
    const rest = bySymbol.get(spellings.get(bare) ?? bare)
    if (prefix && rest?.prefixes && prefix.symbol.length === length)
      return {
        symbol,
        name: prefix.name + rest.name,
        dimension: rest.dimension,
        factor: rest.symbol === "g" && prefix.symbol === "m" ? 1e-6 : prefix.factor * rest.factor,
        prefixes: false,
      }
  }
  return undefined
}

/** The name of a symbol, as read aloud: "kilometre"; undefined if it is no unit. */
export const unitName = (symbol: string): string | undefined => unitOfSymbol(symbol)?.name
