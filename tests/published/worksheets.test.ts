import { afterAll, describe, expect, it } from "vitest"
import { closeRunner, readSheet, runSheet, textOf } from "../worksheets/sheet-run.ts"

/*
 * The main result of each shipped worksheet, run with its author's answers through the real way of the data, against
 * something outside the project. Where the stepper's own first-order error is known in closed form it is part of the
 * expectation, so that the tolerances can be tight.
 */

afterAll(closeRunner)

const g = 9.81
const last = (values: readonly number[]): number => values[values.length - 1]!
const relative = (found: number, expected: number): number => Math.abs(found / expected - 1)

describe("lamp-key: free fall (uniform acceleration, textbook; error of the stepper worked out from its two lines)", () => {
  it.each([0.001, 0.05, 0.1])("is low by exactly g t dt/2 at dt = %f s", async step => {
    const run = await runSheet("lamp-key", { set: { step } })
    const t = run.column("fall", "t")
    const y = run.column("fall", "key.position.y")
    for (let i = 0; i < t.length; i += 7)
      expect(Math.abs(y[i]! - (8 - (g * t[i]! ** 2) / 2) + (g * t[i]! * step) / 2)).toBeLessThan(1e-11)
  })

  it("reaches the mat after sqrt(2 h / g), to one step", async () => {
    const run = await runSheet("lamp-key")
    expect(Math.abs(last(run.column("fall", "t")) - Math.sqrt((2 * 8) / g))).toBeLessThan(0.001)
  })
})

describe("fender: T. Schwager, T. Pöschel, Granular Matter 9 (2007) 465", () => {
  const clipped = (zeta: number): number =>
    Math.exp((-2 * zeta * Math.acos(zeta)) / Math.sqrt(1 - zeta * zeta))
  const mayPull = (zeta: number): number => Math.exp((-Math.PI * zeta) / Math.sqrt(1 - zeta * zeta))

  it.each([
    { mass: 2000, speed: 0.4 },
    { mass: 1200, speed: 0.5 },
    { mass: 3000, speed: 0.25 },
  ])("restitution of the repaired fender and of the pulling one, %o", async set => {
    const run = await runSheet("fender", { set })
    const omegaStep = Math.sqrt(20000 / set.mass) * 0.002
    const zeta = 3800 / (2 * Math.sqrt(20000 * set.mass))
    const rebound = (cell: string): number =>
      last(run.column(cell, "boat.momentum.x")) / (set.mass * set.speed)
    expect(Math.abs(rebound("repaired") - clipped(zeta))).toBeLessThan(0.3 * omegaStep)
    expect(Math.abs(rebound("damper") - mayPull(zeta))).toBeLessThan(0.3 * omegaStep)
    expect(clipped(zeta) - mayPull(zeta)).toBeGreaterThan(0.05)
  })

  it("largest squeeze v sqrt(m/k) of the spring alone (energy of a spring, textbook)", async () => {
    const run = await runSheet("fender")
    const squeeze = 0.4 - Math.min(...run.column("spring", "boat.position.x"))
    expect(relative(squeeze, 0.4 * Math.sqrt(2000 / 20000))).toBeLessThan(0.004)
  })
})

describe("slipway: Coulomb friction, ISO 80000-4:2019 items 4-23.1 and 4-23.2", () => {
  it.each([
    { speed: 2.5, mu: 0.35 },
    { speed: 1.5, mu: 0.25 },
    { speed: 3, mu: 0.5 },
  ])("stops after v²/(2 μ g) less v dt/2, and dead, %o", async set => {
    const run = await runSheet("slipway", { set })
    const way = last(run.column("level", "crate.position.x"))
    const exact = set.speed ** 2 / (2 * set.mu * g)
    expect(Math.abs(way + (set.speed * 0.001) / 2 - exact)).toBeLessThan((set.mu * g * 1e-6) / 8 + 1e-12)
    expect(last(run.column("level", "crate.momentum.x"))).toBe(0)
  })

  it("holds below the angle of friction and slides above it", async () => {
    const angle = (Math.atan(0.35) * 180) / Math.PI
    const held = await runSheet("slipway", { set: { slope: angle - 0.1 } })
    const x = held.column("inclined", "crate.position.x")
    expect(Math.abs(last(x) - x[1500]!)).toBeLessThan(1e-12)
    const slides = await runSheet("slipway", { set: { slope: angle + 0.1 } })
    const back = slides.column("inclined", "crate.momentum.x")
    const acceleration = (last(back) - back[1500]!) / (40 * (2000 - 1501) * 0.001)
    const a = ((angle + 0.1) * Math.PI) / 180
    expect(relative(-acceleration, g * (Math.sin(a) - 0.35 * Math.cos(a)))).toBeLessThan(1e-9)
  })
})

describe("heaving-line: P. Timmerman, J. P. van der Weele, Am. J. Phys. 67 (1999) 538", () => {
  it("a bead with linear drag follows v = v∞ (1 − (1 − h/τ)ⁿ), and ends at Stokes' speed 2 Δρ g R²/(9 η)", async () => {
    const run = await runSheet("heaving-line")
    const v = run.column("bead", "sinking")
    const end = (2 * (2500 - 960) * g * 0.003 ** 2) / (9 * 0.98)
    const tau = (2500 * (4 / 3) * Math.PI * 0.003 ** 3) / (6 * Math.PI * 0.98 * 0.003)
    for (let n = 1; n <= 1000; n += 37)
      expect(relative(v[n - 1]!, end * (1 - (1 - 1e-4 / tau) ** n))).toBeLessThan(1e-10)
    expect(relative(last(v), end)).toBeLessThan(1e-8)
  })

  it("a bag thrown straight up rises by v∞²/(2 g) ln(1 + v²/v∞²), with an error of first order", async () => {
    const vEnd = Math.sqrt((2 * 0.25 * g) / (1.225 * 0.47 * ((Math.PI * 0.12 ** 2) / 4)))
    const exact = (vEnd ** 2 / (2 * g)) * Math.log(1 + (16 / vEnd) ** 2)
    const errors = []
    for (const stepFactor of [1, 0.5]) {
      const run = await runSheet("heaving-line", { set: { angle: 90 }, stepFactor })
      errors.push(Math.max(...run.column("flight", "bag.position.y")) - exact)
    }
    expect(Math.abs(errors[0]!)).toBeLessThan(0.012)
    expect(errors[0]! / errors[1]!).toBeGreaterThan(1.8)
    expect(errors[0]! / errors[1]!).toBeLessThan(2.2)
  })
})

describe("buoy: E. Hairer, C. Lubich, G. Wanner, Geometric Numerical Integration, 2006 (symplectic Euler)", () => {
  const k = (1025 * g * Math.PI * 0.09) / 4

  it("from rest at −A it is at −A cos((n + 1/2) θ)/cos(θ/2), cos θ = 1 − (ω h)²/2, period 2π sqrt(m/k) nearly", async () => {
    const run = await runSheet("buoy")
    const y = run.column("bob", "buoy.position.y")
    const theta = Math.acos(1 - (k / 100) * 0.01 ** 2 * 0.5)
    for (let n = 1; n <= y.length; n += 13)
      expect(Math.abs(y[n - 1]! + (0.4 * Math.cos((n + 0.5) * theta)) / Math.cos(theta / 2))).toBeLessThan(
        1e-11,
      )
    expect(relative((2 * Math.PI * 0.01) / theta, 2 * Math.PI * Math.sqrt(100 / k))).toBeLessThan(1e-4)
  })

  it("its energy stays within 1/(1 ± ω h/2) when mended, and grows by 1 + (ω h)² a step as given", async () => {
    const omegaStep = Math.sqrt(k / 100) * 0.1
    const mended = (await runSheet("buoy")).column("order", "energyRatio")
    expect(Math.max(...mended)).toBeLessThan(1 / (1 - omegaStep / 2) + 1e-9)
    expect(Math.min(...mended)).toBeGreaterThan(1 / (1 + omegaStep / 2) - 1e-9)
    const { answers } = readSheet("buoy")
    const given = await runSheet("buoy", { answers: { ...answers, renew: "" } })
    const ratio = given.column("order", "energyRatio")
    expect(relative(last(ratio), (1 + omegaStep ** 2) ** ratio.length)).toBeLessThan(1e-9)
  })

  it("is bounded just below ω h = 2 and not just above", async () => {
    const largest = async (stride: number): Promise<number> =>
      Math.max(
        ...(await runSheet("buoy", { set: { stride } })).column("order", "buoy.position.y").map(Math.abs),
      )
    expect(2 / Math.sqrt(k / 100)).toBeCloseTo(0.7502, 3)
    expect(await largest(0.74)).toBeLessThan(5)
    expect(await largest(0.78)).toBeGreaterThan(1e3)
  })
})

describe("buoy: density of sea water, EOS-80 at one atmosphere (Fofonoff and Millard, Unesco Tech. Pap. Mar. Sci. 44, 1983)", () => {
  const density = (S: number, T: number): number => {
    const series = (...c: readonly number[]): number => c.reduceRight((sum, one) => sum * T + one, 0)
    const water = series(999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9)
    const a = series(0.824493, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9)
    const b = series(-5.72466e-3, 1.0227e-4, -1.6546e-6)
    return water + a * S + b * S ** 1.5 + 4.8314e-4 * S ** 2
  }

  it("gives the check value of the paper, 1027.67547 kg/m³ at S = 35 and 5 °C", () => {
    expect(density(35, 5)).toBeCloseTo(1027.67547, 4)
  })

  it("passes 1025 kg/m³, the value of the sheet, between 15 °C and 20 °C", () => {
    expect(textOf("buoy")).toContain("const rho: Scalar<'kg/m^3'> = 1025")
    expect(density(35, 15)).toBeGreaterThan(1025)
    expect(density(35, 20)).toBeLessThan(1025)
  })
})

describe("two-floats: third law and reduced mass (textbook)", () => {
  it("keeps the total momentum to rounding and moves the centre of mass on a straight line", async () => {
    const run = await runSheet("two-floats")
    const t = run.column("pair", "t")
    const x = run.column("pair", "centre.position.x")
    const y = run.column("pair", "centre.position.y")
    const start = 8 / 12
    for (let i = 0; i < t.length; i += 101) {
      expect(Math.abs(x[i]! - start - 0.24 * t[i]!)).toBeLessThan(1e-12)
      expect(Math.abs(y[i]! - 0.32 * t[i]!)).toBeLessThan(1e-12)
    }
    for (const total of run.column("pair", "pxTotal")) expect(Math.abs(total - 2.88)).toBeLessThan(1e-12)
  })

  // The tether starts at its rest length, so the first half step of impulse, the method's first-order error, is zero here.
  it("moves relatively like one body of the reduced mass on the same spring (classical fourth-order Runge–Kutta)", async () => {
    const at = async (stepFactor: number): Promise<number[]> => {
      const run = await runSheet("two-floats", { stepFactor })
      return ["x", "y"].map(
        k => last(run.column("pair", `B.position.${k}`)) - last(run.column("pair", `A.position.${k}`)),
      )
    }
    const [coarse, fine] = [await at(1), await at(0.5)]
    const exact = reducedBody(4, 20_000)
    const miss = (d: number[]): number => Math.hypot(d[0]! - exact[0]!, d[1]! - exact[1]!)
    expect(miss(coarse)).toBeLessThan(1e-3)
    expect(miss(coarse) / miss(fine)).toBeGreaterThan(3.6)
    expect(miss(coarse) / miss(fine)).toBeLessThan(4.4)
  })

  /** Separation of the floats after `time` seconds: 4 kg and 8 kg, 60 N/m, rest length 1 m, knocked to 1.2 m/s. */
  function reducedBody(time: number, steps: number): readonly [number, number] {
    const mass = 32 / 12
    const rate = ([x, y, u, v]: readonly number[]): number[] => {
      const d = Math.hypot(x!, y!)
      const f = (-60 * (d - 1)) / d / mass
      return [u!, v!, f * x!, f * y!]
    }
    const add = (s: readonly number[], k: readonly number[], h: number): number[] =>
      s.map((a, i) => a + h * k[i]!)
    const h = time / steps
    let s: number[] = [1, 0, -0.72, -0.96]
    for (let n = 0; n < steps; n++) {
      const a = rate(s)
      const b = rate(add(s, a, h / 2))
      const c = rate(add(s, b, h / 2))
      const d = rate(add(s, c, h))
      s = s.map((value, i) => value + (h / 6) * (a[i]! + 2 * b[i]! + 2 * c[i]! + d[i]!))
    }
    return [s[0]!, s[1]!]
  }
})
