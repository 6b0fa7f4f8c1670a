import { describe, expect, it } from "vitest"
import {
  astronomicalUnit,
  gravityForce,
  jupiterMassParameter,
  rungeKutta4,
  type Stepper,
  type System,
  semiImplicitEuler,
  solarMassParameter,
  vec3,
} from "../../../src/physics/index.ts"
import { first, oneBody, relative } from "./one-body.ts"

const day = 86400

/** G02: JPL Solar System Dynamics, Keplerian elements for approximate positions of the major planets (E. M. Standish), table 1. */
describe("G02 Kepler's third law with published planetary elements", () => {
  /** mass of the planet over that of the Sun: Jupiter from the nominal mass parameters, the others from memory (IAU 1976–2009) */
  const planets = [
    { name: "Mercury", a: 0.38709927, rate: 149472.67411175, ratio: 1 / 6023600, days: 87.9693, off: 2e-5 },
    { name: "Venus", a: 0.72333566, rate: 58517.81538729, ratio: 1 / 408523.7, days: 224.7008, off: 2e-5 },
    { name: "EMB", a: 1.00000261, rate: 35999.37244981, ratio: 1 / 328900.5, days: 365.2564, off: 2e-5 },
    { name: "Mars", a: 1.52371034, rate: 19140.30268499, ratio: 1 / 3098708, days: 686.9797, off: 2e-5 },
    {
      name: "Jupiter",
      a: 5.202887,
      rate: 3034.74612775,
      ratio: jupiterMassParameter / solarMassParameter,
      days: 4332.8171,
      off: 4e-5,
    },
    { name: "Saturn", a: 9.53667594, rate: 1222.49362201, ratio: 1 / 3497.898, days: 10755.8843, off: 4e-5 },
    { name: "Uranus", a: 19.18916464, rate: 428.48202785, ratio: 1 / 22902.98, days: undefined, off: 7e-4 },
    { name: "Neptune", a: 30.06992276, rate: 218.45945325, ratio: 1 / 19412.24, days: undefined, off: 7e-4 },
  ] as const
  const fromRate = (rate: number) => (360 / rate) * 36525
  const period = (a: number, ratio: number) =>
    (2 * Math.PI * Math.sqrt((a * astronomicalUnit) ** 3 / (solarMassParameter * (1 + ratio)))) / day

  // what remains is the pull of the other planets, not an error of the law
  it.each(planets)(
    "$name: the period from the semi-major axis is that of the mean motion",
    ({ a, rate, ratio, days, off }) => {
      if (days !== undefined) expect(Math.abs(fromRate(rate) - days)).toBeLessThan(6e-5)
      expect(relative(period(a, ratio), fromRate(rate))).toBeLessThan(off)
    },
  )
  it("shows on Jupiter that the planet's own mass counts", () => {
    const { a, rate } = planets[4]
    expect(relative(period(a, 0), fromRate(rate))).toBeGreaterThan(4e-4)
    expect(relative(period(a, 0), fromRate(rate))).toBeLessThan(5.5e-4)
  })
  it("has the slope 3/2 in logarithms", () => {
    const points = planets.map(p => [Math.log(p.a), Math.log(fromRate(p.rate))] as const)
    const mean = (i: 0 | 1) => points.reduce((s, p) => s + p[i], 0) / points.length
    const [mx, my] = [mean(0), mean(1)]
    const slope =
      points.reduce((s, [x, y]) => s + (x - mx) * (y - my), 0) /
      points.reduce((s, [x]) => s + (x - mx) ** 2, 0)
    expect(Math.abs(slope - 1.5)).toBeLessThan(5e-4)
  })
  it("the synchronous orbit of the Earth has r = 42 164.17 km and v = 3074.66 m/s, and gravityForce holds it there", () => {
    const gm = 398600441800000
    const day = 86164.0905
    const r = Math.cbrt((gm * day * day) / (4 * Math.PI ** 2))
    expect(Math.abs(r / 1000 - 42164.17)).toBeLessThan(0.005)
    expect(Math.abs((2 * Math.PI * r) / day - 3074.66)).toBeLessThan(0.005)
    const pull = gravityForce(vec3(r, 0, 0), vec3(0, 0, 0), { mass: 2, massParameter: gm })
    expect(relative(-pull.x, (2 * ((2 * Math.PI * r) / day) ** 2) / r)).toBeLessThan(1e-14)
  })
  it("a stepped orbit has that period, with an error of second order by semi-implicit Euler and fourth by Runge–Kutta", () => {
    const gm = solarMassParameter
    const r = astronomicalUnit
    const year = 2 * Math.PI * Math.sqrt(r ** 3 / gm)
    const law = ({ bodies: [b] }: System) => [
      gravityForce(b!.position, vec3(0, 0, 0), { mass: b!.mass, massParameter: gm }),
    ]
    /** Mean time between crossings of the x axis over three turns, by the angle turned. */
    const measured = (stepper: Stepper, steps: number) => {
      const dt = year / steps
      let now = oneBody(6e24, vec3(r, 0, 0), vec3(0, 6e24 * Math.sqrt(gm / r), 0))
      let [angle, last] = [0, 0]
      for (let n = 0; n < 3 * steps; n++) {
        now = stepper(now, law, dt)
        const { x, y } = first(now).position
        const turn = Math.atan2(y, x)
        angle += turn - last + (turn < last - Math.PI ? 2 * Math.PI : 0)
        last = turn
      }
      return (3 * year) / (angle / (2 * Math.PI)) / year - 1
    }
    for (const [stepper, order, coarse] of [
      [semiImplicitEuler, 2, 400],
      [rungeKutta4, 4, 400],
    ] as const) {
      const slope = Math.log2(Math.abs(measured(stepper, coarse)) / Math.abs(measured(stepper, 2 * coarse)))
      expect(slope).toBeGreaterThan(order - 0.3)
      expect(slope).toBeLessThan(order + 0.3)
    }
  })
})
