import { describe, expect, it } from "vitest"
import {
  angularMomentum,
  angularVelocityOf,
  contactDamping,
  contactMass,
  kineticFriction,
  momentOfInertia,
  momentsOfInertia,
  orientation,
  planeContactForce,
  pointInSpace,
  type RigidBody,
  rotationalEnergy,
  type System,
  semiImplicitEuler,
  springEnergy,
  springForce,
  stepRigidBody,
  sum,
  torque,
  totalKineticEnergy,
  totalMomentum,
  type Vec3,
  vec3,
  velocityOfPoint,
} from "../../../src/physics/index.ts"
import { relative } from "./one-body.ts"

const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }

interface Ball {
  readonly position: Vec3
  readonly momentum: Vec3
  readonly spin: Vec3
}

/** A solid sphere meets a rough springy floor without gravity; gives its motion after and the impulses along and across. */
function obliqueBounce(options: {
  readonly mu: number
  readonly vx: number
  readonly vy: number
  readonly omega: number
  readonly e: number
  readonly h: number
  readonly clamp?: boolean
}) {
  const { mu, h } = options
  const [m, R, k] = [0.1, 0.03, 1e5]
  const inertia = momentOfInertia(
    momentsOfInertia({ kind: "solidSphere", mass: m, radius: R }),
    vec3(0, 0, 1),
  )
  const dampingCoefficient = contactDamping({ restitution: options.e, stiffness: k, mass: m })
  let ball: Ball = {
    position: vec3(0, R, 0),
    momentum: vec3(m * options.vx, -m * options.vy, 0),
    spin: vec3(0, 0, inertia * options.omega),
  }
  let [along, across] = [0, 0]
  const limit = options.clamp ? { timeStep: h, effectiveMass: contactMass(m, inertia, R) } : {}
  do {
    const velocity = ball.momentum.over(m)
    const N = planeContactForce(ball.position, floor, {
      stiffness: k,
      dampingCoefficient,
      velocity,
      radius: R,
    })
    const arm = vec3(0, -R, 0)
    const slip = velocityOfPoint(velocity, ball.spin.over(inertia), arm)
    const friction = kineticFriction(slip, N, { kineticFrictionCoefficient: mu, ...limit })
    along += friction.x * h
    across += N.y * h
    const momentum = ball.momentum.add(N.add(friction).times(h))
    ball = {
      momentum,
      position: ball.position.add(momentum.times(h / m)),
      spin: ball.spin.add(torque(arm, friction).times(h)),
    }
  } while (ball.position.y < R)
  const velocity = ball.momentum.over(m)
  return { vx: velocity.x, vy: velocity.y, omega: ball.spin.z / inertia, along, across, m, R, inertia }
}

/** O01: R. Cross, Am. J. Phys. 70, 1093 (2002); H. Brody, Phys. Teach. 22, 494 (1984) (from memory). Here ω > 0 is counter-clockwise. */
describe("O01 oblique bounce, sliding throughout", () => {
  const cases = [
    { mu: 0.2, vx: 4, vy: 2, omega: 0, e: 1, after: [3.2, 2, 66.6667] },
    { mu: 0.2, vx: 4, vy: 2, omega: 0, e: 0.744079398, after: [3.302368, 1.488159, 58.136] },
    { mu: 0.2, vx: 0, vy: 3, omega: -200, e: 1, after: [1.2, 3, -100] },
  ] as const
  it.each(cases)("μ = $mu, v = ($vx, −$vy), ω = $omega, e = $e", ({ after, ...start }) => {
    for (const h of [1e-4, 1e-5]) {
      const got = obliqueBounce({ ...start, h })
      // impulses: |J_t / J_n| = μ at any step while the slip keeps its sign
      expect(Math.abs(Math.abs(got.along / got.across) - start.mu)).toBeLessThan(1e-12)
      const [vx, vy, omega] = after
      // first order through e: as K02, 0.15 ωh of the impulse (1 + e) v_y
      const allowed = 0.15 * 1000 * h * start.vy
      expect(Math.abs(got.vy - vy)).toBeLessThan(allowed)
      expect(Math.abs(got.vx - vx)).toBeLessThan(start.mu * allowed + 1e-6)
      const spins = start.omega === 0 ? -omega : omega
      expect(Math.abs(got.omega - spins)).toBeLessThan(
        (start.mu * allowed * got.m * got.R) / got.inertia + 1e-3,
      )
    }
  })
})

/** O02: Brody 1984 (from memory); elementary models end rolling, Cross 2002. */
describe("O02 oblique bounce, grip branch", () => {
  it("ends rolling with 5/7 of the tangential speed, to 1e-6, when the friction of a step may at most stop the slip", () => {
    const got = obliqueBounce({ mu: 0.5, vx: 2, vy: 3, omega: 0, e: 1, h: 1e-5, clamp: true })
    expect(Math.abs(got.vx - 1.4285714285714286)).toBeLessThan(1e-6)
    expect(Math.abs(-got.omega - 47.61904761904762)).toBeLessThan(1e-6 * 47.6)
    const before = 0.5 * 0.1 * (4 + 9)
    const after = 0.5 * 0.1 * (got.vx ** 2 + got.vy ** 2) + 0.5 * got.inertia * got.omega ** 2
    expect(after).toBeLessThan(before)
  })
  it("without that limit it chatters by about μ N h/m", () => {
    const got = obliqueBounce({ mu: 0.5, vx: 2, vy: 3, omega: 0, e: 1, h: 1e-4 })
    expect(Math.abs(got.vx + 0.03 * got.omega)).toBeGreaterThan(1e-6)
  })
  it("the boundary between sliding and grip is at tan(incidence) = 3.5 μ (1 + e)", () => {
    const critical = (54.46232220802562 * Math.PI) / 180
    for (const [angle, rolls] of [
      [critical - 0.02, true],
      [critical + 0.02, false],
    ] as const) {
      const got = obliqueBounce({
        mu: 0.2,
        vx: 5 * Math.sin(angle),
        vy: 5 * Math.cos(angle),
        omega: 0,
        e: 1,
        h: 1e-6,
        clamp: true,
      })
      expect(Math.abs(got.vx + 0.03 * got.omega) < 1e-3).toBe(rolls)
    }
    expect(relative(Math.atan(3.5 * 0.2 * 2), critical)).toBeLessThan(1e-15)
  })
})

/** R01: W. J. Stronge, Impact Mechanics (2000), planar impact (from memory); derived. m = 1 kg, L = 1 m, v = 1 m/s, e = 1. */
describe("R01 end impact of a tilted rod or dumbbell on a smooth floor", () => {
  const cases = [
    { degrees: 0, rod: [0.5, -0.5, 3], dumbbell: [1, 0, 2] },
    { degrees: 30, rod: [0.615385, -0.384615, 3.197632], dumbbell: [1.142857, 0.142857, 1.979487] },
    { degrees: 45, rod: [0.8, -0.2, 3.394113], dumbbell: [1.333333, 0.333333, 1.885618] },
    { degrees: 60, rod: [1.142857, 0.142857, 3.428571], dumbbell: [1.6, 0.6, 1.6] },
    { degrees: 90, rod: [2, 1, 0], dumbbell: [2, 1, 0] },
  ] as const
  const shapes = {
    rod: { kind: "rod", mass: 1, length: 1 },
    dumbbell: { kind: "pointPair", mass: 0.5, otherMass: 0.5, length: 1 },
  } as const

  it.each(cases)("by the effective mass at $degrees°", ({ degrees, ...after }) => {
    for (const name of ["rod", "dumbbell"] as const) {
      const I = momentOfInertia(momentsOfInertia(shapes[name]), vec3(0, 0, 1))
      const arm = 0.5 * Math.cos((degrees * Math.PI) / 180)
      const J = 2 * contactMass(1, I, arm)
      expect(J).toBeCloseTo(after[name][0], 6)
      expect(J - 1).toBeCloseTo(after[name][1], 6)
      expect((J * arm) / I).toBeCloseTo(after[name][2], 5)
    }
  })

  it.each(cases)(
    "by two particles on a strut of 1e8 N/m and a floor of 1e5 N/m at $degrees°",
    ({ degrees, dumbbell }) => {
      const angle = (degrees * Math.PI) / 180
      const [kStrut, kFloor, h] = [1e8, 1e5, 2e-6]
      const span = vec3(Math.cos(angle), Math.sin(angle), 0)
      let now: System = {
        time: 0,
        bodies: [
          { mass: 0.5, position: vec3(0, 1e-9, 0), momentum: vec3(0, -0.5, 0) },
          { mass: 0.5, position: span.add(vec3(0, 1e-9, 0)), momentum: vec3(0, -0.5, 0) },
        ],
      }
      const law = ({ bodies: [a, b] }: System): Vec3[] => {
        const strut = springForce(a!.position, b!.position, { stiffness: kStrut, restLength: 1 })
        return [strut.add(planeContactForce(a!.position, floor, { stiffness: kFloor })), strut.negated()]
      }
      let touched = false
      for (let n = 0; n < 20_000; n++) {
        now = semiImplicitEuler(now, law, h)
        const y = now.bodies[0]!.position.y
        if (y < 0) touched = true
        if (touched && y > 0 && n > 100) break
      }
      const vcm = totalMomentum(now.bodies).y
      const [a, b] = now.bodies
      const centre = a!.position.add(b!.position).over(2)
      const spin =
        angularMomentum(a!.position, a!.momentum, centre).z +
        angularMomentum(b!.position, b!.momentum, centre).z
      expect(Math.abs(vcm - dumbbell[1])).toBeLessThan(3e-3)
      // 3e-3 m/s of v, and 2e-3 of the angular velocity
      expect(Math.abs(Math.abs(spin / 0.25) - dumbbell[2])).toBeLessThan(2e-3 * Math.max(dumbbell[2], 1))
      const stored = springEnergy(a!.position, b!.position, { stiffness: kStrut, restLength: 1 })
      expect(relative(totalKineticEnergy(now.bodies) + stored, 0.5)).toBeLessThan(1e-3)
    },
  )

  it.each(cases)("by a rigid rod in space on a floor of 1e6 N/m at $degrees°", ({ degrees, rod }) => {
    const shape = shapes.rod
    const h = 1e-6
    const angle = (degrees * Math.PI) / 180
    let body: RigidBody = {
      mass: 1,
      momentsOfInertia: momentsOfInertia(shape),
      position: vec3(0.5 * Math.cos(angle), 0.5 * Math.sin(angle), 0),
      momentum: vec3(0, -1, 0),
      orientation: orientation(vec3(0, 0, 1), angle),
      angularMomentum: vec3(0, 0, 0),
    }
    for (let n = 0; n < 20_000; n++) {
      const tip = pointInSpace(body, vec3(-0.5, 0, 0))
      const push = planeContactForce(tip, floor, { stiffness: 1e6 })
      if (n > 100 && tip.y > 0) break
      body = stepRigidBody(body, push, torque(tip, push, body.position), h)
    }
    const omega = angularVelocityOf(body.angularMomentum, body.momentsOfInertia, body.orientation)
    expect(Math.abs(body.momentum.y - rod[1])).toBeLessThan(3e-3)
    expect(Math.abs(Math.abs(omega.z) - rod[2])).toBeLessThan(6e-3)
    const energy =
      0.5 * body.momentum.dot(body.momentum) +
      rotationalEnergy(body.angularMomentum, body.momentsOfInertia, body.orientation)
    expect(relative(energy, 0.5)).toBeLessThan(2e-3)
  })
})

/** R03: P. Painlevé, C. R. Acad. Sci. Paris 121, 112 (1895); Champneys and Várkonyi, arXiv:1601.03545; thresholds derived. */
describe("R03 threshold of the Painlevé paradox", () => {
  /** Upward acceleration of the sliding end for a unit normal force with friction μ against its motion to the left. */
  function lift(I: number, theta: number, mu: number): number {
    const arm = vec3(-0.5 * Math.cos(theta), -0.5 * Math.sin(theta), 0)
    const friction = kineticFriction(vec3(-1, 0, 0), vec3(0, 1, 0), { kineticFrictionCoefficient: mu })
    const force = sum(vec3(0, 1, 0), friction)
    return velocityOfPoint(force, torque(arm, force).over(I), arm).y
  }
  /** The least μ without a consistent contact force, by bisection in μ and a search in tan θ. */
  function threshold(I: number): { mu: number; tangent: number } {
    const muAt = (theta: number) => {
      let [low, high] = [0, 100]
      for (let n = 0; n < 100; n++) {
        const middle = (low + high) / 2
        if (lift(I, theta, middle) > 0) low = middle
        else high = middle
      }
      return low
    }
    let [low, high] = [0.3, 1.4]
    for (let n = 0; n < 100; n++) {
      const third = (high - low) / 3
      if (muAt(low + third) < muAt(high - third)) high -= third
      else low += third
    }
    return { mu: muAt(low), tangent: Math.tan(low) }
  }
  it("is μ = 4/3 at tan θ = 2 for a rod", () => {
    const { mu, tangent } = threshold(momentsOfInertia({ kind: "rod", mass: 1, length: 1 }).z)
    expect(Math.abs(mu - 4 / 3)).toBeLessThan(1e-9)
    expect(Math.abs(tangent - 2)).toBeLessThan(1e-6)
  })
  it("is μ = 2√2 at tan θ = √2 for a dumbbell", () => {
    const shape = { kind: "pointPair", mass: 0.5, otherMass: 0.5, length: 1 } as const
    const { mu, tangent } = threshold(momentsOfInertia(shape).z)
    expect(Math.abs(mu - 2.8284271247)).toBeLessThan(1e-9)
    expect(Math.abs(tangent - Math.SQRT2)).toBeLessThan(1e-6)
  })
})
