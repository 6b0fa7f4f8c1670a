import { all, create } from "mathjs"
import { describe, expect, it } from "vitest"
import * as physics from "../../../src/physics/index.ts"
import { cross, dot, magnitude, vec3, weight } from "../../../src/physics/index.ts"
import { relative } from "./one-body.ts"

const mathjs = create(all!)

/** C01: CODATA recommended values 2018 and 2022 (NIST): G = 6.674 30(15)e-11 m³ kg⁻¹ s⁻². */
describe("C01 Newtonian constant of gravitation", () => {
  it("is the CODATA value, to the digit", () => expect(physics.gravitationalConstant).toBe(6.6743e-11))
  it("is the value that mathjs holds", () =>
    expect(physics.gravitationalConstant).toBe(
      mathjs.evaluate("gravitationConstant").toNumber("m^3 kg^-1 s^-2"),
    ))
})

/** C02: 3rd CGPM (1901), resolution 2: 980.665 cm/s². */
describe("C02 standard acceleration of free fall", () => {
  it("is 9.806 65 m/s²", () => expect(physics.standardGravity).toBe(9.80665))
  it("gives 1 kg the weight of one kilogram-force, and a pound the weight of one pound-force", () => {
    const field = vec3(0, -physics.standardGravity, 0)
    expect(weight(1, field).y).toBe(-9.80665)
    expect(-weight(0.45359237, field).y).toBe(4.4482216152605)
    expect(mathjs.unit("1 kgf").toNumber("N")).toBe(9.80665)
  })
})

/** C03: IAU 2012 resolution B2; IAU 2015 resolution B3, Prša et al., Astron. J. 152 (2016); JPL DE440 for GM of the Sun. */
describe("C03 astronomical unit and nominal mass parameters", () => {
  it("are the defined values", () => {
    expect(physics.astronomicalUnit).toBe(149597870700)
    expect(physics.solarMassParameter).toBe(132712440000000000000)
    expect(physics.earthMassParameter).toBe(398600400000000)
    expect(physics.jupiterMassParameter).toBe(126686530000000000)
    expect(physics.earthRadius).toBe(6378100)
  })
  it("imply the masses of Earth and Sun", () => {
    const { gravitationalConstant, earthMassParameter, solarMassParameter } = physics
    expect(relative(earthMassParameter / gravitationalConstant, 5.972167868e24)).toBeLessThan(1e-9)
    expect(relative(solarMassParameter / gravitationalConstant, 1.988409871e30)).toBeLessThan(1e-9)
  })
  it("agree with the Gaussian constant k² = 0.017 202 098 95² to 5e-12", () => {
    const gm = (132712440041279420000 * 86400 ** 2) / physics.astronomicalUnit ** 3
    expect(relative(gm, 0.0002959122082841195)).toBeLessThan(1e-15)
    expect(relative(gm, 0.01720209895 ** 2)).toBeLessThan(5.1e-12)
    expect(relative(gm, 0.01720209895 ** 2)).toBeGreaterThan(4.9e-12)
  })
})

/** U02: Lagrange, triple product and Jacobi identities (elementary); cross-checked with mathjs. */
describe("U02 vector algebra identities", () => {
  const a = vec3(1, 2, 3)
  const b = vec3(4, 5, 6)
  it("hold exactly for small whole numbers", () => {
    expect(cross(a, b).equals(vec3(-3, 6, -3))).toBe(true)
    expect(dot(a, b)).toBe(32)
    expect(magnitude(vec3(2, 3, 6))).toBe(7)
    expect(dot(cross(a, b), cross(a, b))).toBe(54)
    expect(dot(a, a) * dot(b, b) - dot(a, b) ** 2).toBe(54)
  })

  // a seeded generator over 24 orders of magnitude
  let seed = 12345
  const random = () => {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff
    return seed / 0x80000000
  }
  const anyVector = () => {
    const scale = 10 ** (24 * random() - 12)
    return vec3((random() - 0.5) * scale, (random() - 0.5) * scale, (random() - 0.5) * scale)
  }
  const ulps = (value: number, expected: number, scale: number) =>
    Math.abs(value - expected) / (Math.abs(scale) * Number.EPSILON)

  it("hold to 4 units of the last place of the terms for random vectors, and mathjs agrees", () => {
    for (let i = 0; i < 2000; i++) {
      const [u, v, w] = [anyVector(), anyVector(), anyVector()]
      const array = (x: typeof u) => [x.x, x.y, x.z]
      const [lu, lv, lw] = [u.magnitude(), v.magnitude(), w.magnitude()]
      expect(ulps(lu, Math.hypot(u.x, u.y, u.z), lu)).toBeLessThanOrEqual(4)
      expect(ulps(u.dot(v), mathjs.dot(array(u), array(v)), lu * lv)).toBeLessThanOrEqual(4)
      expect([u.cross(v).x, u.cross(v).y, u.cross(v).z]).toEqual(mathjs.cross(array(u), array(v)))
      expect(u.cross(v).equals(v.cross(u).negated())).toBe(true)
      expect(ulps(u.dot(u.cross(v)), 0, lu * lu * lv)).toBeLessThanOrEqual(4)
      const triple = u.cross(v.cross(w)).subtract(v.times(u.dot(w)).subtract(w.times(u.dot(v))))
      expect(ulps(triple.magnitude(), 0, lu * lv * lw)).toBeLessThanOrEqual(4)
      const jacobi = u
        .cross(v.cross(w))
        .add(v.cross(w.cross(u)))
        .add(w.cross(u.cross(v)))
      expect(ulps(jacobi.magnitude(), 0, lu * lv * lw)).toBeLessThanOrEqual(4)
    }
  })

  it("magnitudes neither overflow nor vanish", () => {
    expect(relative(magnitude(vec3(3e200, 4e200, 0)), 5e200)).toBeLessThan(4 * Number.EPSILON)
    expect(relative(magnitude(vec3(3e-200, 4e-200, 0)), 5e-200)).toBeLessThan(4 * Number.EPSILON)
    expect(magnitude(vec3(5e-324, 0, 0))).toBe(5e-324)
  })
})
