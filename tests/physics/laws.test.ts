import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  type Body,
  contactDamping,
  damperForce,
  frictionForce,
  gravityForce,
  kineticFriction,
  linearDrag,
  pairForces,
  planeContactForce,
  quadraticDrag,
  ropeForce,
  rotate,
  type System,
  semiImplicitEuler,
  sphereContactForce,
  springForce,
  type Vec3,
  vec3,
  velocityVerlet,
} from "../../src/physics/index.ts"

const settings = { seed: 20240229, numRuns: 200 }
const coordinate = fc.double({ min: -10, max: 10, noNaN: true })
const anyVector = fc.tuple(coordinate, coordinate, coordinate).map(([x, y, z]) => vec3(x, y, z))
const amount = fc.double({ min: 0.01, max: 10, noNaN: true })
const anyBody: fc.Arbitrary<Body> = fc.record({ mass: amount, position: anyVector, momentum: anyVector })

function apart(a: Body, b: Body): boolean {
  return a.position.subtract(b.position).magnitude() > 0.1
}

/** Every force between two bodies that the library has. */
const pairLaws: Record<string, (a: Body, b: Body) => Vec3> = {
  gravity: (a, b) => gravityForce(a.position, b.position, { mass: a.mass, otherMass: b.mass * 1e11 }),
  spring: (a, b) =>
    springForce(a.position, b.position, {
      stiffness: 7,
      restLength: 2,
      dampingCoefficient: 0.5,
      velocity: a.momentum.over(a.mass),
      anchorVelocity: b.momentum.over(b.mass),
    }),
  damper: (a, b) =>
    damperForce(a.position, b.position, {
      dampingCoefficient: 0.5,
      velocity: a.momentum.over(a.mass),
      anchorVelocity: b.momentum.over(b.mass),
    }),
  rope: (a, b) => ropeForce(a.position, b.position, { length: 3, stiffness: 11 }),
  contact: (a, b) =>
    sphereContactForce(a.position, b.position, {
      stiffness: 90,
      radius: 4,
      otherRadius: 6,
      dampingCoefficient: 0.7,
      velocity: a.momentum.over(a.mass),
      otherVelocity: b.momentum.over(b.mass),
    }),
}

describe("the third law", () => {
  it.each(Object.keys(pairLaws))(
    "%s: exchanging the bodies turns the force round, along the line between them",
    name => {
      // gravity is symmetric only in the product of the masses
      const law =
        name === "gravity"
          ? (a: Body, b: Body) => pairLaws.gravity!({ ...a, mass: 1 }, { ...b, mass: 1 })
          : pairLaws[name]!
      fc.assert(
        fc.property(anyBody, anyBody, (a, b) => {
          fc.pre(apart(a, b))
          const [on, back] = [law(a, b), law(b, a)]
          const size = Math.max(on.magnitude(), 1e-300)
          expect(on.add(back).magnitude() / size).toBeLessThan(1e-12)
          const line = a.position.subtract(b.position)
          expect(on.cross(line).magnitude() / (size * line.magnitude())).toBeLessThan(1e-12)
        }),
        settings,
      )
    },
  )
  it("pairForces: the forces of any number of bodies sum to zero, to rounding", () => {
    fc.assert(
      fc.property(fc.array(anyBody, { minLength: 2, maxLength: 6 }), bodies => {
        const forces = pairForces(bodies, (a, b) => (apart(a, b) ? pairLaws.spring!(a, b) : undefined))
        const total = forces.reduce((s, f) => s.add(f), vec3(0, 0, 0))
        const size = forces.reduce((s, f) => s + f.magnitude(), 1e-300)
        expect(total.magnitude() / size).toBeLessThan(1e-13)
      }),
      settings,
    )
  })
})

describe("Galilean invariance", () => {
  it("a frame that moves steadily sees the same change of momentum, for every pair force", () => {
    fc.assert(
      fc.property(anyBody, anyBody, anyVector, anyVector, (a, b, u, shift) => {
        fc.pre(apart(a, b))
        const seen = (body: Body): Body => ({
          mass: body.mass,
          position: body.position.add(shift),
          momentum: body.momentum.add(u.times(body.mass)),
        })
        for (const law of Object.values(pairLaws)) {
          const [here, there] = [law(a, b), law(seen(a), seen(b))]
          expect(there.subtract(here).magnitude()).toBeLessThan(1e-10 * (1 + here.magnitude()))
        }
      }),
      settings,
    )
  })
})

describe("rotation invariance", () => {
  const angle = fc.double({ min: -7, max: 7, noNaN: true })
  it("turning everything turns the force, for pair forces, drag, contact and friction", () => {
    fc.assert(
      fc.property(anyBody, anyBody, anyVector, angle, (one, other, axis, theta) => {
        // turning a momentum at the edge of what a double can hold, or at the edge of rest, changes what it is
        const settled = (body: Body): Body =>
          body.momentum.magnitude() > 1e-6 ? body : { ...body, momentum: vec3(0, 0, 0) }
        const [a, b] = [settled(one), settled(other)]
        fc.pre(apart(a, b) && axis.magnitude() > 0.01)
        const turn = (v: Vec3) => rotate(v, axis, theta)
        const turned = (body: Body): Body => ({
          mass: body.mass,
          position: turn(body.position),
          momentum: turn(body.momentum),
        })
        const laws: ((a: Body, b: Body, t: (v: Vec3) => Vec3) => Vec3)[] = [
          ...Object.values(pairLaws),
          x => linearDrag(x.momentum, 0.3),
          x => quadraticDrag(x.momentum, { fluidDensity: 1.2, dragCoefficient: 0.5, area: 0.1 }),
          (x, y, t) =>
            planeContactForce(x.position, { point: y.position, normal: t(vec3(1, 2, 3)) }, { stiffness: 40 }),
          (x, _, t) => kineticFriction(x.momentum, t(vec3(1, -2, 0.5)), { kineticFrictionCoefficient: 0.4 }),
          (x, y, t) =>
            frictionForce(x.momentum, y.momentum, {
              normalForce: t(vec3(1, -2, 0.5)),
              kineticFrictionCoefficient: 0.4,
              timeStep: 0.01,
            }),
        ]
        for (const law of laws) {
          const here = turn(law(a, b, v => v))
          const there = law(turned(a), turned(b), turn)
          expect(there.subtract(here).magnitude()).toBeLessThan(1e-9 * (1 + here.magnitude()))
        }
      }),
      settings,
    )
  })
})

describe("time reversal of velocity Verlet", () => {
  const law = (s: System) =>
    pairForces(s.bodies, (a, b) => springForce(a.position, b.position, { stiffness: 3 }))
  const turnedRound = (s: System): System => ({
    ...s,
    bodies: s.bodies.map(b => ({ ...b, momentum: b.momentum.negated() })),
  })
  const there = (stepper: typeof velocityVerlet, start: System, n: number) => {
    let now = start
    for (let i = 0; i < n; i++) now = stepper(now, law, 0.01)
    return now
  }
  it("turning the momenta round brings the bodies back, to rounding; semi-implicit Euler does not", () => {
    fc.assert(
      fc.property(anyBody, anyBody, (a, b) => {
        const start: System = { time: 0, bodies: [a, b] }
        const back = turnedRound(there(velocityVerlet, turnedRound(there(velocityVerlet, start, 50)), 50))
        back.bodies.forEach((body, i) => {
          expect(body.position.subtract(start.bodies[i]!.position).magnitude()).toBeLessThan(1e-9)
          expect(body.momentum.subtract(start.bodies[i]!.momentum).magnitude()).toBeLessThan(1e-9)
        })
      }),
      { ...settings, numRuns: 50 },
    )
    const start: System = {
      time: 0,
      bodies: [
        { mass: 1, position: vec3(0, 0, 0), momentum: vec3(1, 0, 0) },
        { mass: 2, position: vec3(1, 2, 0), momentum: vec3(0, 1, 0) },
      ],
    }
    const back = turnedRound(there(semiImplicitEuler, turnedRound(there(semiImplicitEuler, start, 50)), 50))
    expect(back.bodies[0]!.position.subtract(start.bodies[0]!.position).magnitude()).toBeGreaterThan(1e-4)
  })
})

describe("a one-sided damped contact", () => {
  const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }
  const restitution = fc.double({ min: 0.01, max: 1, noNaN: true })
  it("never pulls, whatever the depth, the speed and the damping", () => {
    fc.assert(
      fc.property(
        anyVector,
        anyVector,
        amount,
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (r, v, stiffness, c) => {
          const push = planeContactForce(r, floor, { stiffness, dampingCoefficient: c, velocity: v })
          expect(push.y).toBeGreaterThanOrEqual(0)
          if (r.y >= 0) expect(push.magnitude()).toBe(0)
        },
      ),
      settings,
    )
  })
  it("gives no energy: what comes back is slower, up to the step's own share, and as asked for", () => {
    fc.assert(
      fc.property(
        restitution,
        amount,
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (e, mass, speed, phase) => {
          const stiffness = 1000
          const dampingCoefficient = contactDamping({ restitution: e, stiffness, mass })
          const h = 0.02 / Math.max(Math.sqrt(stiffness / mass), dampingCoefficient / mass)
          let p = -mass * speed
          let y = phase * speed * h
          for (let n = 0; n < 100_000 && (y > 0 ? p < 0 : true); n++) {
            const velocity = vec3(0, p / mass, 0)
            p += planeContactForce(vec3(0, y, 0), floor, { stiffness, dampingCoefficient, velocity }).y * h
            y += (p / mass) * h
          }
          const back = p / mass / speed
          expect(back).toBeGreaterThan(0)
          // at e = 1 the mid-step arrival alone may give or take 0.15 ω h
          expect(back).toBeLessThan(1 + 0.15 * 0.02)
          expect(Math.abs(back - e)).toBeLessThan(0.03)
        },
      ),
      { ...settings, numRuns: 100 },
    )
  })
})

describe("dry friction", () => {
  it("never exceeds μ N, lies in the surface, and never does positive work on the slip", () => {
    fc.assert(
      fc.property(
        anyVector,
        anyVector,
        anyVector,
        amount,
        fc.double({ min: 0, max: 2, noNaN: true }),
        (p, F, N, m, mu) => {
          fc.pre(N.magnitude() > 0.01)
          const f = frictionForce(p, F, { normalForce: N, kineticFrictionCoefficient: mu, timeStep: 0.01 })
          const k = kineticFriction(p.over(m), N, {
            kineticFrictionCoefficient: mu,
            timeStep: 0.01,
            effectiveMass: m,
          })
          for (const force of [f, k]) {
            expect(force.magnitude()).toBeLessThanOrEqual(mu * N.magnitude() * (1 + 1e-12) + 1e-300)
            expect(Math.abs(force.dot(N))).toBeLessThan(
              1e-9 * (1 + N.magnitude() * (F.magnitude() + p.magnitude()) * 100),
            )
          }
          expect(k.dot(p)).toBeLessThanOrEqual(1e-12)
        },
      ),
      settings,
    )
  })
})
