import { describe, expect, it } from "vitest"
import {
  airDensity,
  explicitEuler,
  linearDrag,
  rungeKutta4,
  type Stepper,
  type System,
  semiImplicitEuler,
  vec3,
  velocityVerlet,
  weight,
} from "../../../src/physics/index.ts"
import { first, oneBody, relative, run } from "./one-body.ts"

const field = vec3(0, -9.80665, 0)

/** P01: standard kinematics; the exact step errors follow from the update rules. */
describe("P01 projectile in uniform gravity", () => {
  const start = oneBody(1, vec3(0, 0, 0), vec3(3, 4, 0))
  const fall = ({ bodies: [b] }: System) => [weight(b!.mass, field)]
  const heightError = (stepper: Stepper, h: number) =>
    first(run(start, fall, stepper, h, Math.round(1 / h))).position.y - -0.903325

  it.each([0.01, 0.005])(
    "semi-implicit Euler is low and explicit Euler high by exactly g t h/2 at h = %f s",
    h => {
      expect(relative(heightError(semiImplicitEuler, h), (-9.80665 * h) / 2)).toBeLessThan(1e-9)
      expect(relative(heightError(explicitEuler, h), (9.80665 * h) / 2)).toBeLessThan(1e-9)
    },
  )
  it.each([0.01, 0.005])("Verlet and Runge–Kutta are exact at h = %f s", h => {
    expect(Math.abs(heightError(velocityVerlet, h))).toBeLessThan(1e-14)
    expect(Math.abs(heightError(rungeKutta4, h))).toBeLessThan(1e-14)
    expect(first(run(start, fall, rungeKutta4, h, 1 / h)).position.x).toBeCloseTo(3, 13)
  })
})

/** P02: P. Timmerman and J. P. van der Weele, Am. J. Phys. 67, 538 (1999): v = v_t (1 − e^(−t/τ)). */
describe("P02 linear drag: approach to terminal speed", () => {
  const tau = 0.5
  const terminal = 9.80665 * tau
  const start = oneBody(2, vec3(0, 0, 0), vec3(0, 0, 0))
  const law = ({ bodies: [b] }: System) => [
    weight(b!.mass, field).add(linearDrag(b!.momentum.over(b!.mass), b!.mass / tau)),
  ]
  const speedAt2 = (stepper: Stepper, h: number) =>
    -first(run(start, law, stepper, h, Math.round(2 / h))).momentum.y / 2
  const fallenAt2 = (stepper: Stepper, h: number) =>
    -first(run(start, law, stepper, h, Math.round(2 / h))).position.y

  it.each([explicitEuler, semiImplicitEuler])(
    "both Euler rules follow v_t (1 − (1 − h/τ)^n) to 1e-13",
    stepper => {
      for (const h of [0.1, 0.02]) {
        const discrete = terminal * (1 - (1 - h / tau) ** Math.round(2 / h))
        expect(relative(speedAt2(stepper, h), discrete)).toBeLessThan(1e-13)
        expect(Math.abs(speedAt2(stepper, h) - 4.813517469945897)).toBeLessThanOrEqual(0.36 * h)
      }
    },
  )
  it("Runge–Kutta meets the closed form to 1e-8 at h = 0.02 s", () => {
    expect(Math.abs(speedAt2(rungeKutta4, 0.02) - 4.813517469945897)).toBeLessThan(1e-8)
    expect(Math.abs(fallenAt2(rungeKutta4, 0.02) - 7.399891265027051)).toBeLessThan(1e-8)
  })
  it.each([
    [semiImplicitEuler, 1],
    [velocityVerlet, 2],
    [rungeKutta4, 4],
  ] as const)("%o has order %d with drag", (stepper, order) => {
    const error = (h: number) => Math.abs(fallenAt2(stepper, h) - 7.399891265027051)
    const slope = Math.log2(error(0.02) / error(0.01))
    expect(slope).toBeGreaterThan(order - 0.1)
    expect(slope).toBeLessThan(order + 0.1)
  })
  it("with h/τ > 2 explicit drag is unstable, with h/τ < 1 the approach is monotone", () => {
    const speeds: number[] = []
    run(start, law, semiImplicitEuler, 0.45, 20, s => speeds.push(-first(s).momentum.y))
    expect(speeds.every((v, i) => i === 0 || v >= speeds[i - 1]!)).toBe(true)
    expect(Math.abs(first(run(start, law, semiImplicitEuler, 1.05, 200)).momentum.y)).toBeGreaterThan(1e6)
  })
})

/** P04: U.S. Standard Atmosphere 1976, as reprinted in Mechanical Engineers' Handbook vol. 4, table 6. */
describe("P04 air density with altitude", () => {
  it.each([
    [0, 1.225],
    [1000, 1.1117],
    [2000, 1.0066],
    [3000, 0.9093],
    [5000, 0.7364],
    [8000, 0.5258],
    [10000, 0.4135],
    [11000, 0.3648],
    [12000, 0.3119],
  ])("at %d m is %f kg/m³ to the last printed digit", (z, rho) =>
    expect(Math.abs(airDensity(z) - rho)).toBeLessThan(6e-5),
  )
  it("is the computed value to seven digits, so that heights are turned into geopotential ones", () => {
    expect(relative(airDensity(5000), 0.7364284)).toBeLessThan(1e-7)
    expect(relative(airDensity(12000), 0.3119381)).toBeLessThan(2e-7)
  })
  it("has no jump where layers meet", () => {
    for (const base of [11000, 20000, 32000, 47000, 51000, 71000]) {
      const z = (6356766 * base) / (6356766 - base)
      expect(relative(airDensity(z - 0.001), airDensity(z + 0.001))).toBeLessThan(1e-6)
    }
  })
})
