import { describe, expect, it } from "vitest"
import {
  type Books,
  bookStep,
  explicitEuler,
  openBooks,
  pairForces,
  type Stepper,
  type System,
  semiImplicitEuler,
  springForce,
  totalAngularMomentum,
  totalMomentum,
  type Vec3,
  vec3,
} from "../../../src/physics/index.ts"
import { first, oneBody } from "./one-body.ts"

/** L01: derived from the update rule p' = p + F h, r' = r + p' h/m. */
describe("L01 exact ledgers of the momentum stepper", () => {
  const [h, m] = [0.01, 1.3]
  /** A force that depends on place, momentum and time in all three directions. */
  const force = ({ time: t, bodies: [b] }: System): Vec3[] => {
    const { x, y, z } = b!.position
    const p = b!.momentum
    const pull = vec3(
      Math.sin(3 * t) - 2 * x + 0.3 * p.y * z,
      Math.cos(y) - 0.4 * p.x + t / 5,
      Math.sin(x * y) - p.z,
    )
    return [pull.times(0.5)]
  }
  const start = oneBody(m, vec3(0.3, -0.2, 0.7), vec3(1, 0.4, -0.9))
  function ledger(stepper: Stepper): { books: Books; naive: number; stepTerm: number } {
    let now = start
    let books = openBooks(now.bodies)
    let [naive, stepTerm] = [0, 0]
    for (let n = 0; n < 1000; n++) {
      const [F] = force(now)
      const next = stepper(now, force, h)
      books = bookStep(books, now.bodies, next.bodies, { net: [F!] }, { timeStep: h })
      naive += F!.dot(first(next).position.subtract(first(now).position))
      stepTerm += (h * h * F!.dot(F!)) / (2 * m)
      now = next
    }
    return { books, naive, stepTerm }
  }
  it("momentum, angular momentum and kinetic energy close to 1e-12 over 1000 steps", () => {
    const { books } = ledger(semiImplicitEuler)
    expect(books.momentum.imbalance.magnitude()).toBeLessThan(1e-12)
    expect(books.angularMomentum.imbalance.magnitude()).toBeLessThan(1e-12)
    expect(Math.abs(books.kineticEnergy.imbalance)).toBeLessThan(1e-12)
    expect(books.angularMomentum.now.subtract(books.angularMomentum.start).magnitude()).toBeGreaterThan(0.1)
  })
  it("work booked as F · Δr is too much by exactly h² F²/2m a step", () => {
    const { books, naive, stepTerm } = ledger(semiImplicitEuler)
    const gained = books.kineticEnergy.now - books.kineticEnergy.start
    expect(stepTerm).toBeGreaterThan(0.01)
    expect(Math.abs(naive - gained - stepTerm)).toBeLessThan(1e-12)
  })
  it("explicit Euler's angular momentum does not close", () =>
    expect(ledger(explicitEuler).books.angularMomentum.imbalance.magnitude()).toBeGreaterThan(1e-3))
  it("central pair forces keep total momentum and angular momentum to 1e-12", () => {
    let now: System = {
      time: 0,
      bodies: [0, 1, 2, 3].map(i => ({
        mass: 1 + i / 3,
        position: vec3(Math.cos(2 * i), Math.sin(3 * i), i / 2),
        momentum: vec3(Math.sin(i), 0.3 * i, Math.cos(i) - 0.5),
      })),
    }
    const [P, L] = [totalMomentum(now.bodies), totalAngularMomentum(now.bodies)]
    const law = (s: System) =>
      pairForces(s.bodies, (a, b) => springForce(a.position, b.position, { stiffness: 30, restLength: 0.8 }))
    for (let n = 0; n < 1000; n++) now = semiImplicitEuler(now, law, h)
    expect(totalMomentum(now.bodies).subtract(P).magnitude()).toBeLessThan(1e-12)
    expect(totalAngularMomentum(now.bodies).subtract(L).magnitude()).toBeLessThan(1e-12)
  })
})
