import { describe, expect, it } from "vitest"
import {
  type Body,
  type Books,
  bookStep,
  damperForce,
  kineticFriction,
  openBooks,
  pairForces,
  planeContactEnergy,
  planeContactForce,
  springEnergy,
  springForce,
  sum,
  type Vec3,
  vec3,
  weight,
  weightEnergy,
} from "../../src/physics/index.ts"

const field = vec3(0, -9.81, 0)
const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }
const spring = { stiffness: 400, restLength: 0.4 }
const contact = { stiffness: 5000 }
const friction = { kineticFrictionCoefficient: 0.3 }

/** Two masses on a spring, dropped with spin on a rough springy floor: invented data. */
function drop(
  dt: number,
  seconds: number,
  damping: number,
): { flight: Books; whole: Books; touched: boolean } {
  let bodies: readonly Body[] = [
    { mass: 0.3, position: vec3(0, 0.5, 0), momentum: vec3(0.3, 0.25, 0.02) },
    { mass: 0.5, position: vec3(0.38, 0.6, 0.05), momentum: vec3(0.1, -0.4, -0.05) },
  ]
  const potential = (list: readonly Body[]) =>
    list.reduce(
      (u, b) => u + weightEnergy(b.mass, field, b.position) + planeContactEnergy(b.position, floor, contact),
      0,
    ) + springEnergy(list[0]!.position, list[1]!.position, spring)
  let whole = openBooks(bodies, {
    potentialEnergy: potential(bodies),
    potentialForces: ["weight", "floor", "spring"],
    lossyForces: ["friction", "damper"],
  })
  let flight = whole
  let touched = false
  for (let n = 0; n < Math.round(seconds / dt); n++) {
    const floors = bodies.map(b => planeContactForce(b.position, floor, contact))
    const forces: Record<string, Vec3[]> = {
      weight: bodies.map(b => weight(b.mass, field)),
      floor: floors,
      friction: bodies.map((b, i) =>
        kineticFriction(b.momentum.over(b.mass), floors[i]!, {
          ...friction,
          timeStep: dt,
          effectiveMass: b.mass,
        }),
      ),
      spring: pairForces(bodies, (a, b) => springForce(a.position, b.position, spring)),
      damper: pairForces(bodies, (a, b) =>
        damperForce(a.position, b.position, {
          dampingCoefficient: damping,
          velocity: a.momentum.over(a.mass),
          anchorVelocity: b.momentum.over(b.mass),
        }),
      ),
    }
    const after = bodies.map((b, i) => {
      const momentum = b.momentum.add(sum(...Object.values(forces).map(list => list[i]!)).times(dt))
      return { ...b, momentum, position: b.position.add(momentum.over(b.mass).times(dt)) }
    })
    whole = bookStep(whole, bodies, after, forces, { timeStep: dt, potentialEnergy: potential(after) })
    bodies = after
    if (floors.some(f => f.magnitude() > 0)) touched = true
    if (!touched) flight = whole
  }
  return { flight, whole, touched }
}

describe("the books of two masses on a spring, dropped with spin on a rough floor", () => {
  it("close to 1e-9 relative in momentum and angular momentum over the flight, and over the landing too", () => {
    const { flight, whole, touched } = drop(1e-4, 1, 0)
    expect(touched).toBe(true)
    for (const books of [flight, whole]) {
      const { momentum, angularMomentum } = books
      expect(momentum.imbalance.magnitude() / momentum.now.magnitude()).toBeLessThan(1e-9)
      expect(angularMomentum.imbalance.magnitude() / angularMomentum.now.magnitude()).toBeLessThan(1e-9)
      expect(Math.abs(books.kineticEnergy.imbalance / books.kineticEnergy.now)).toBeLessThan(1e-9)
    }
    expect(flight.momentum.given.spring!.magnitude()).toBeLessThan(1e-12)
  })
  it.each([0, 2])(
    "close in mechanical energy to the method's first order, friction and damping (c = %f) accounted",
    c => {
      const [coarse, fine] = [drop(2e-4, 1, c), drop(1e-4, 1, c)]
      const ratio = coarse.whole.mechanicalEnergy.imbalance / fine.whole.mechanicalEnergy.imbalance
      expect(ratio).toBeGreaterThan(1.6)
      expect(ratio).toBeLessThan(2.5)
      expect(fine.whole.mechanicalEnergy.lost).toBeGreaterThan(0.01)
      expect(
        Math.abs(fine.whole.mechanicalEnergy.imbalance / fine.whole.mechanicalEnergy.start),
      ).toBeLessThan(2e-3)
    },
  )
  it("show a loss that was not entered as an imbalance", () => {
    const before = { mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }
    const after = { mass: 2, position: vec3(1, 0, 0), momentum: vec3(3, 0, 0) }
    const books = bookStep(openBooks([before]), [before], [after], {}, { timeStep: 0.5 })
    expect(books.momentum.imbalance.x).toBe(-1)
    expect(books.kineticEnergy.imbalance).toBe(-1.75)
  })
  it("refuse a name of a lossy force that no force has", () => {
    const body = { mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }
    const books = openBooks([body], { lossyForces: ["frction"] })
    const push = { friction: [vec3(0, 0, 0)] }
    expect(() => bookStep(books, [body], [body], push, { timeStep: 1 })).toThrow('Did you mean "friction"?')
  })
})
