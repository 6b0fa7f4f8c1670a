import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  dimensionOf,
  formatUnit,
  namedDerivedUnits,
  parseUnit,
  prefixes,
  sameDimension,
  unitSymbols,
} from "../../src/physics/units/index.ts"

const unit = (text: string) => {
  const read = parseUnit(text)
  if (!read.ok) throw new Error(`${text}: ${read.text}`)
  return read.unit
}
const failure = (text: string) => {
  const read = parseUnit(text)
  if (read.ok) throw new Error(`${text} was read`)
  return read
}

describe("the grammar of unit texts (SI Brochure, sections 5.2 and 5.4)", () => {
  const momentum = dimensionOf({ kg: 1, m: 1, s: -1 })
  it.each([
    "kg m/s",
    "kg·m/s",
    "kg ⋅ m / s",
    "kg*m/s",
    "kg m s^-1",
    "kg m s⁻¹",
    "kg m s-1",
    "kg m s−1",
    "kg\u00a0m\u202fs^(-1)",
    "N s",
    "N·s",
    "(kg m)/s",
    "m/(s/kg)",
    "  kg m/s ",
  ])("reads %s as momentum", text => {
    expect(unit(text)).toEqual({ dimension: momentum, factor: 1, text: text.trim() })
  })

  it.each([
    ["1", {}, 1],
    ["1/s", { s: -1 }, 1],
    ["m²", { m: 2 }, 1],
    ["m2", { m: 2 }, 1],
    ["cm^3", { m: 3 }, 1e-6],
    ["km/h", { m: 1, s: -1 }, 1000 / 3600],
    ["g", { kg: 1 }, 1e-3],
    ["mg", { kg: 1 }, 1e-6],
    ["t", { kg: 1 }, 1000],
    ["min", { s: 1 }, 60],
    ["d", { s: 1 }, 86400],
    ["L", { m: 3 }, 1e-3],
    ["ml", { m: 3 }, 1e-6],
    ["°", {}, Math.PI / 180],
    ["°/s", { s: -1 }, Math.PI / 180],
    ["rad/s", { s: -1 }, 1],
    ["%", {}, 0.01],
    ["µm", { m: 1 }, 1e-6],
    ["μm", { m: 1 }, 1e-6],
    ["dam", { m: 1 }, 10],
    ["cd", { cd: 1 }, 1],
    ["m^(1/2)", { m: 0.5 }, 1],
    ["J/(kg K)", { m: 2, s: -2, K: -1 }, 1],
    ["W/(m² K⁴)", { kg: 1, s: -3, K: -4 }, 1],
  ] as const)("reads %s", (text, exponents, factor) => {
    expect(unit(text).dimension).toBe(dimensionOf(exponents))
    expect(unit(text).factor).toBeCloseTo(factor, 12)
  })

  it.each(["m/s/s", "J/kg K", "J/kg·K", "kg/m/s^2"])("refuses %s, which has two readings", text => {
    expect(failure(text).code).toBe("ambiguous-unit")
    expect(parseUnit(failure(text).near!).ok).toBe(true)
  })

  it.each([
    "",
    "  ",
    "m/",
    "/s",
    "m^",
    "(m",
    "m)",
    "2 m",
    "m^2.3",
    "m^99",
    "kg,m",
    "m**2",
    "()",
    "1.5",
    "m\u0000",
    "\ud800",
  ])("refuses %j as unreadable", text => expect(failure(text).code).toBe("unreadable-unit"))

  it.each([
    ["Kg", "kg"],
    ["sec", "s"],
    ["newton", "N"],
    ["Newtons", "N"],
    ["metres", "m"],
    ["kilometres", "km"],
    ["Nm", "N m"],
    ["kgm/s", "kg m/s"],
    ["deg", "°"],
    ["um", "µm"],
    ["pa", "Pa"],
    ["secs", "s"],
    ["kkg", "kg"],
    ["quux", null],
  ])("does not know %s; the nearest is %s", (text, near) => {
    expect(failure(text)).toMatchObject({ code: "unknown-unit", near })
  })

  it("tells how units outside the SI convert", () => {
    expect(failure("lbf").todo).toContain("4.4482216152605 N")
  })

  it("never mistakes a prefix for a unit, nor stacks prefixes", () => {
    for (const text of ["k", "M", "µ", "mkg", "kkm", "mµs", "kmin", "k%"])
      expect(parseUnit(text).ok).toBe(false)
  })

  it("reads every symbol with every prefix that it may have, as symbol times prefix", () => {
    for (const one of unitSymbols) {
      expect(unit(one.symbol)).toMatchObject({ dimension: one.dimension, factor: one.factor })
      for (const prefix of prefixes) {
        const text = prefix.symbol + one.symbol
        if (!one.prefixes || unitSymbols.some(other => other.symbol === text)) continue
        expect(unit(text).dimension, text).toBe(one.dimension)
        expect(unit(text).factor / (prefix.factor * one.factor), text).toBeCloseTo(1, 12)
      }
    }
    expect(namedDerivedUnits).toHaveLength(22)
  })

  it("answers any text with a unit or words, and never throws", () => {
    const alphabet = [..."mkgsNJ/()^*·²⁻1 -°%µ23"].map(c => fc.constant(c))
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(fc.oneof(...alphabet)).map(a => a.join("")),
        ),
        text => {
          const read = parseUnit(text)
          if (!read.ok) expect(read.text.length * read.todo.length).toBeGreaterThan(0)
        },
      ),
      { numRuns: 500, seed: 4 },
    )
    expect(failure("(".repeat(150)).code).toBe("unreadable-unit")
    expect(failure("m ".repeat(5000)).code).toBe("unreadable-unit")
    expect(failure(`${"m^20 ".repeat(30)}`).code).toBe("unreadable-unit")
  })

  it("writes units that it reads back", () => {
    const whole = fc.integer({ min: -4, max: 4 })
    fc.assert(
      fc.property(
        fc.record({ m: whole, kg: whole, s: whole, A: whole, K: whole, mol: whole, cd: whole }),
        exponents => {
          const dimension = dimensionOf(exponents)
          for (const shape of ["scalar", "vector"] as const)
            expect(sameDimension(unit(formatUnit(dimension, shape)).dimension, dimension)).toBe(true)
        },
      ),
      { numRuns: 300, seed: 4 },
    )
    expect(formatUnit(dimensionOf({ m: 0.5 }))).toBe("m^(1/2)")
    expect(formatUnit(unit("N m").dimension, "vector")).toBe("N m")
    expect(formatUnit(unit("N m").dimension)).toBe("J")
  })
})
