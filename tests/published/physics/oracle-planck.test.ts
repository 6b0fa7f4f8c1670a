import { type Body, Box, Circle, Edge, Vec2, World } from "planck"
import { describe, expect, it } from "vitest"
import {
  contactMass,
  explicitEuler,
  frictionForce,
  momentOfInertia,
  momentsOfInertia,
  type Stepper,
  type System,
  semiImplicitEuler,
  vec3,
  weight,
} from "../../../src/physics/index.ts"
import { first, oneBody, run } from "./one-body.ts"

/** Second opinion: the rigid-body engine planck 1.4.2, with the cautions of the list of check values. */
const g = 9.80665

function worldWithFloor(gravity: number, friction: number, restitution: number): World {
  const world = new World({ gravity: new Vec2(0, -gravity), allowSleep: false })
  const floor = world.createBody()
  floor.createFixture({ shape: new Edge(new Vec2(-100, 0), new Vec2(100, 0)), friction, restitution })
  return world
}

describe("a rigid-body engine as a second opinion", () => {
  it("P01: a thrown ball is low by g t h/2 there as here", () => {
    const h = 0.01
    const world = new World({ gravity: new Vec2(0, -g) })
    const ball = world.createBody({ type: "dynamic", linearVelocity: new Vec2(3, 4) })
    ball.createFixture({ shape: new Circle(0.5), density: 1 })
    for (let n = 0; n < 100; n++) world.step(h)
    const fall = ({ bodies: [b] }: System) => [weight(b!.mass, vec3(0, -g, 0))]
    const at = (stepper: Stepper) =>
      first(run(oneBody(1, vec3(0, 0, 0), vec3(3, 4, 0)), fall, stepper, h, 100)).position
    expect(Math.abs(ball.getPosition().y - at(semiImplicitEuler).y)).toBeLessThan(1e-9)
    expect(Math.abs(ball.getPosition().y - at(explicitEuler).y)).toBeGreaterThan(0.09)
  })

  it.each([
    [1 / 60, 1e-3],
    [1 / 1000, 1e-5],
  ])("F01: a block slides as far, at h = %f s", (h, allowed) => {
    const mu = 0.3
    const world = worldWithFloor(g, mu, 0)
    const block = world.createBody({ type: "dynamic", position: new Vec2(0, 0.5), fixedRotation: true })
    block.createFixture({ shape: new Box(1, 0.5), density: 1, friction: mu })
    for (let n = 0; n < 100; n++) world.step(h)
    const from = block.getPosition().x
    block.setLinearVelocity(new Vec2(2, 0))
    for (let n = 0; n < 1 / h; n++) world.step(h)
    const law = ({ bodies: [b] }: System) => [
      frictionForce(b!.momentum, vec3(0, 0, 0), {
        normalForce: vec3(0, g, 0),
        kineticFrictionCoefficient: mu,
        timeStep: h,
      }),
    ]
    const ours = first(
      run(oneBody(1, vec3(0, 0, 0), vec3(2, 0, 0)), law, semiImplicitEuler, h, Math.round(1 / h)),
    )
    expect(Math.abs(block.getPosition().x - from - ours.position.x)).toBeLessThan(allowed)
  })

  it("O01: a disc of 1 m at (8, −4) m/s with μ = 0.2, e = 1 leaves with v_x = 6.4 and ω R = 3.2, as Coulomb's law says", () => {
    const world = worldWithFloor(0, 0.2, 1)
    const disc: Body = world.createBody({
      type: "dynamic",
      position: new Vec2(0, 1.02),
      linearVelocity: new Vec2(8, -4),
    })
    disc.createFixture({ shape: new Circle(1), density: 1 / Math.PI, friction: 0.2, restitution: 1 })
    // steps so short that the disc is not deep in the floor when the engine notices
    for (let n = 0; n < 1000; n++) world.step(1e-5)
    const inertia = momentOfInertia(momentsOfInertia({ kind: "disc", mass: 1, radius: 1 }), vec3(0, 0, 1))
    const impulse = 0.2 * 2 * 4
    expect(8 - impulse).toBeCloseTo(6.4, 12)
    expect(disc.getLinearVelocity().x).toBeCloseTo(8 - impulse, 4)
    expect(Math.abs(disc.getAngularVelocity())).toBeCloseTo(impulse / inertia, 4)
  })

  it.each([0, 30, 45, 60])("R01: the end of a thin rod at %d° on a smooth floor", degrees => {
    const angle = (degrees * Math.PI) / 180
    const world = worldWithFloor(0, 0, 1)
    // a bar of 20 m by 2 cm at 10 m/s: thin for its length, and fast enough for the engine's restitution
    const [length, speed] = [20, 10]
    const rod = world.createBody({
      type: "dynamic",
      position: new Vec2(0, (length / 2) * Math.sin(angle) + 0.2),
      angle,
      linearVelocity: new Vec2(0, -speed),
      bullet: true,
    })
    rod.createFixture({ shape: new Box(length / 2, 0.01), density: 1, friction: 0, restitution: 1 })
    if (degrees === 0) rod.setTransform(new Vec2(0, 0.2), 0.0005)
    const arm = (length / 2) * Math.cos(angle)
    const m = rod.getMass()
    const I = momentOfInertia(momentsOfInertia({ kind: "rod", mass: m, length }), vec3(0, 0, 1))
    for (let n = 0; n < 1000; n++) {
      world.step(1e-4)
      if (rod.getAngularVelocity() !== 0) break
    }
    const J = 2 * contactMass(m, I, arm) * speed
    expect(Math.abs(rod.getLinearVelocity().y - (J / m - speed)) / speed).toBeLessThan(3e-3)
    expect(Math.abs(Math.abs(rod.getAngularVelocity()) / ((J * arm) / I) - 1)).toBeLessThan(3e-3)
  })
})
