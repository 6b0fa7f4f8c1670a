import Qty from "js-quantities"
import { unit as mathjsUnit } from "mathjs"
import { describe, expect, it } from "vitest"
import {
  type Exponents,
  exponentsOf,
  nameOfDimension,
  parseUnit,
  per,
  times,
} from "../../src/physics/units/index.ts"

// SI Brochure, table of coherent derived units with special names (8th edition, Table 3; 9th edition, 2019, Table 4,
// number from memory); ISO 80000-4:2019, items 4-8, 4-9.1, 4-11, 4-12.1, 4-27.1, 4-28.1 to 4-28.3; NIST SP 811, section 4.
// Oracles: mathjs and js-quantities, two independent implementations.

const read = (text: string) => {
  const result = parseUnit(text)
  if (!result.ok) throw new Error(result.text)
  return result.unit
}

const table: readonly (readonly [string, Partial<Exponents>, string])[] = [
  ["rad", {}, "m/m"],
  ["sr", {}, "m^2/m^2"],
  ["Hz", { s: -1 }, "s^-1"],
  ["N", { kg: 1, m: 1, s: -2 }, "kg m s^-2"],
  ["Pa", { kg: 1, m: -1, s: -2 }, "kg m^-1 s^-2"],
  ["J", { kg: 1, m: 2, s: -2 }, "kg m^2 s^-2"],
  ["W", { kg: 1, m: 2, s: -3 }, "kg m^2 s^-3"],
  ["C", { A: 1, s: 1 }, "A s"],
  ["V", { kg: 1, m: 2, s: -3, A: -1 }, "kg m^2 s^-3 A^-1"],
  ["F", { kg: -1, m: -2, s: 4, A: 2 }, "kg^-1 m^-2 s^4 A^2"],
  ["Ω", { kg: 1, m: 2, s: -3, A: -2 }, "kg m^2 s^-3 A^-2"],
  ["S", { kg: -1, m: -2, s: 3, A: 2 }, "kg^-1 m^-2 s^3 A^2"],
  ["Wb", { kg: 1, m: 2, s: -2, A: -1 }, "kg m^2 s^-2 A^-1"],
  ["T", { kg: 1, s: -2, A: -1 }, "kg s^-2 A^-1"],
  ["H", { kg: 1, m: 2, s: -2, A: -2 }, "kg m^2 s^-2 A^-2"],
  ["°C", { K: 1 }, "K"],
  ["lm", { cd: 1 }, "cd sr"],
  ["lx", { cd: 1, m: -2 }, "cd sr m^-2"],
  ["Bq", { s: -1 }, "s^-1"],
  ["Gy", { m: 2, s: -2 }, "m^2 s^-2"],
  ["Sv", { m: 2, s: -2 }, "m^2 s^-2"],
  ["kat", { mol: 1, s: -1 }, "mol s^-1"],
  ["N s", { kg: 1, m: 1, s: -1 }, "kg m s^-1"],
  ["N m", { kg: 1, m: 2, s: -2 }, "kg m^2 s^-2"],
  ["N/m", { kg: 1, s: -2 }, "kg s^-2"],
  ["N s/m", { kg: 1, s: -1 }, "kg s^-1"],
]

describe("U01 SI derived units and quantities of ISO 80000-4", () => {
  it.each(table)("%s has the exponents of the SI Brochure", (symbol, exponents, inBase) => {
    const zero = { m: 0, kg: 0, s: 0, A: 0, K: 0, mol: 0, cd: 0 }
    expect(exponentsOf(read(symbol).dimension)).toEqual({ ...zero, ...exponents })
    expect(read(inBase)).toMatchObject({ dimension: read(symbol).dimension, factor: read(symbol).factor })
  })

  it("names quantities as ISO 80000-4 does", () => {
    expect(nameOfDimension(read("N s").dimension)).toBe("momentum")
    expect(nameOfDimension(read("kg m^2 s^-1").dimension)).toBe("angular momentum")
    expect(nameOfDimension(read("kg m^2").dimension)).toBe("moment of inertia")
    expect(nameOfDimension(read("N m").dimension, "vector")).toBe("torque")
    expect(read("N m").text).toBe("N m")
    // G = F r² / (m₁ m₂)
    const G = per(times(read("N").dimension, read("m^2").dimension), read("kg^2").dimension)
    expect(read("m^3 kg^-1 s^-2").dimension).toBe(G)
  })

  // Text that each oracle can read; rad is left out, since both keep the radian as a dimension of its own.
  const everyday = [
    "N", "J", "W", "Pa", "Hz", "V", "C", "T", "Wb", "H", "F", "km/h", "mN", "kJ", "MPa", "cm^3", "g/cm^3", "t/m^3",
    "min", "h", "L/min", "mm/s^2", "eV", "mg", "hPa", "m^2/s",
  ] // biome-ignore format: one table
  const baseOf = { m: "m", kg: "kg", s: "s", A: "A", K: "K", mol: "mol", cd: "cd" } as const
  const asPowers = (exponents: Exponents): string =>
    (Object.keys(baseOf) as (keyof Exponents)[])
      .filter(key => exponents[key] !== 0)
      .map(key => `${key}^${exponents[key]}`)
      .join(" ")

  // eV is left out: mathjs has the value from before 2019, the SI now fixes 1.602 176 634e-19 J exactly.
  it.each(everyday.filter(text => text !== "eV"))("%s: mathjs finds the same factor and exponents", text => {
    const { dimension, factor } = read(text)
    const theirs = mathjsUnit(1, text.replace("min", "minute").replace(/\bh\b/, "hour"))
    expect(theirs.toNumber(asPowers(exponentsOf(dimension))) / factor).toBeCloseTo(1, 9)
  })

  it.each(everyday.filter(text => text !== "eV"))(
    "%s: js-quantities finds the same factor and exponents",
    text => {
      const { dimension, factor } = read(text)
      const theirs = Qty(`1 ${text}`)
      expect(theirs.to(asPowers(exponentsOf(dimension)).replaceAll("^", "")).scalar / factor).toBeCloseTo(
        1,
        9,
      )
    },
  )

  it("N and m differ, as both oracles say", () => {
    expect(read("N").dimension).not.toBe(read("m").dimension)
    expect(() => mathjsUnit("1 N").toNumber("m")).toThrow()
    expect(() => Qty("1 N").to("m")).toThrow()
  })
})
