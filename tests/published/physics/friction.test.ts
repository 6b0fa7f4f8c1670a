import { describe, expect, it } from "vitest"
import {
  bookStep,
  explicitEuler,
  frictionForce,
  openBooks,
  type Stepper,
  type System,
  semiImplicitEuler,
  sum,
  type Vec3,
  vec3,
  weight,
} from "../../../src/physics/index.ts"
import { first, oneBody, relative, run } from "./one-body.ts"

const field = vec3(0, -9.80665, 0)

/** F01: work–energy theorem with Coulomb friction F = μ N, ISO 80000-4:2019, item 4-23.2. */
describe("F01 sliding to rest", () => {
  const mass = 0.8
  const mu = 0.3
  const exact = 0.6798108086519522
  const law =
    (h: number) =>
    ({ bodies: [b] }: System): Vec3[] => {
      const gravity = weight(mass, field)
      const normalForce = gravity.negated()
      const others = gravity.add(normalForce)
      const friction = frictionForce(b!.momentum, others, {
        normalForce,
        kineticFrictionCoefficient: mu,
        timeStep: h,
      })
      return [others.add(friction)]
    }
  const slide = (stepper: Stepper, h: number) =>
    first(run(oneBody(mass, vec3(0, 0, 0), vec3(2 * mass, 0, 0)), law(h), stepper, h, Math.round(1 / h)))

  it.each([0.01, 0.003, 0.001, 0.0003])(
    "stops after v²/(2 μ g), short by v h/2 with the last partial step at most μ g h²/8, at h = %f s",
    h => {
      const d = slide(semiImplicitEuler, h).position.x
      expect(Math.abs(d + h - exact)).toBeLessThanOrEqual((mu * 9.80665 * h * h) / 8)
      const late = slide(explicitEuler, h).position.x
      expect(Math.abs(late - h - exact)).toBeLessThanOrEqual((mu * 9.80665 * h * h) / 8)
    },
  )
  it.each([0.01, 0.003, 0.001, 0.0003])("ends at rest, exactly, at h = %f s", h =>
    expect(slide(semiImplicitEuler, h).momentum.magnitude()).toBe(0),
  )
  it("takes v/(μ g)", () => {
    let moving = 0
    run(oneBody(mass, vec3(0, 0, 0), vec3(2 * mass, 0, 0)), law(1e-3), semiImplicitEuler, 1e-3, 1000, s => {
      if (first(s).momentum.magnitude() > 1e-12) moving++
    })
    expect(Math.abs((moving + 1) * 1e-3 - exact)).toBeLessThanOrEqual(1e-3)
  })
  it("loses all its energy to friction, by the books: −μ m g d with d at the mean speed of each step", () => {
    const h = 1e-3
    let now = oneBody(mass, vec3(0, 0, 0), vec3(2 * mass, 0, 0))
    let books = openBooks(now.bodies, { lossyForces: ["friction"] })
    for (let n = 0; n < 1000; n++) {
      const friction = law(h)(now)
      const next = semiImplicitEuler(now, () => friction, h)
      books = bookStep(books, now.bodies, next.bodies, { friction }, { timeStep: h })
      now = next
    }
    expect(relative(books.mechanicalEnergy.lost, 0.5 * mass * 4)).toBeLessThan(1e-13)
    expect(relative(books.mechanicalEnergy.lost, mu * mass * 9.80665 * exact)).toBeLessThan(1e-5)
    expect(Math.abs(books.mechanicalEnergy.imbalance)).toBeLessThan(1e-13)
  })
})

/** F02: Coulomb friction, ISO 80000-4:2019, items 4-23.1 and 4-23.2; angle of repose (textbook, from memory). */
describe("F02 incline: hold or slide", () => {
  const mass = 1.7
  const repose = 21.80140948635181
  function slope(degrees: number, h: number) {
    const angle = (degrees * Math.PI) / 180
    const normal = vec3(Math.sin(angle), Math.cos(angle), 0)
    const gravity = weight(mass, field)
    const normalForce = normal.times(-gravity.dot(normal))
    return ({ bodies: [b] }: System): Vec3[] => {
      const others = gravity.add(normalForce)
      const friction = frictionForce(b!.momentum, others, {
        normalForce,
        staticFrictionCoefficient: 0.4,
        kineticFrictionCoefficient: 0.25,
        timeStep: h,
      })
      return [sum(gravity, normalForce, friction)]
    }
  }
  const rest = (x: number) => oneBody(mass, vec3(x, 2 * x, 0), vec3(0, 0, 0))

  it("the angle of repose is arctan μ_s", () =>
    expect(relative((Math.atan(0.4) * 180) / Math.PI, repose)).toBeLessThan(1e-15))
  it.each([5, 15, 20, 21.5, repose - 0.01])(
    "a block at rest on %f° does not move in 10 s, not by a bit",
    degrees => {
      for (const x of [0, 0.3]) {
        const start = rest(x)
        const end = first(run(start, slope(degrees, 1e-3), semiImplicitEuler, 1e-3, 10_000))
        expect(end.position.equals(first(start).position)).toBe(true)
        expect(end.momentum.magnitude()).toBe(0)
      }
    },
  )
  it("0.01° above the angle of repose it starts", () =>
    expect(
      first(run(rest(0), slope(repose + 0.01, 1e-3), semiImplicitEuler, 1e-3, 100)).momentum.magnitude(),
    ).toBeGreaterThan(0.1))
  it("on 30° it slides with g (sin − μ_k cos), to 1e-12", () => {
    const steps = 1000
    const end = first(run(rest(0), slope(30, 1e-3), semiImplicitEuler, 1e-3, steps))
    expect(relative(end.momentum.magnitude() / mass / (steps * 1e-3), 2.780122993494333)).toBeLessThan(1e-12)
  })
  it("thrown up the slope it stops there and stays, to the bit", () => {
    const up = vec3(-Math.cos((15 * Math.PI) / 180), Math.sin((15 * Math.PI) / 180), 0)
    const places: Vec3[] = []
    run(oneBody(mass, vec3(0, 0, 0), up.times(mass)), slope(15, 1e-3), semiImplicitEuler, 1e-3, 3000, s =>
      places.push(first(s).position),
    )
    expect(places.at(-1)!.equals(places[1000]!)).toBe(true)
    const distance =
      1 / (2 * 9.80665 * (Math.sin((15 * Math.PI) / 180) + 0.25 * Math.cos((15 * Math.PI) / 180)))
    expect(Math.abs(places.at(-1)!.magnitude() + 0.5e-3 - distance)).toBeLessThan(1e-5)
  })
})
