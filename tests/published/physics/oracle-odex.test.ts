import { createRequire } from "node:module"
import { describe, expect, it } from "vitest"
import {
  adaptiveRungeKutta,
  angularVelocityOf,
  gravityForce,
  momentsOfInertia,
  orientation,
  quadraticDrag,
  type RigidBody,
  rotationalEnergy,
  rungeKutta4,
  type System,
  springForce,
  stepRigidBody,
  vec3,
  weight,
} from "../../../src/physics/index.ts"
import { first, oneBody, run } from "./one-body.ts"

/** What is used of odex. Its package holds TypeScript sources that a strict check of this project would trip over. */
interface OdexSolver {
  absoluteTolerance: number
  relativeTolerance: number
  maxSteps: number
  solve(
    f: (t: number, y: number[]) => number[],
    from: number,
    y0: number[],
    to: number,
  ): { readonly y: number[] }
}
const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (size: number) => OdexSolver }

/** Second opinion: the extrapolation solver odex 2.0.4 (E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I). */
function odex(
  f: (t: number, y: number[]) => number[],
  y0: readonly number[],
  end: number,
  tolerance = 1e-13,
): number[] {
  const solver = new Solver(y0.length)
  solver.absoluteTolerance = tolerance
  solver.relativeTolerance = tolerance
  solver.maxSteps = 100_000
  return solver.solve(f, 0, [...y0], end).y
}

describe("smooth force laws, with odex as a second opinion", () => {
  it("S02: a damped oscillator after 5 s, against odex and the closed form", () => {
    const damped = { stiffness: 50, dampingCoefficient: 0.4, restLength: 1 }
    const law = ({ bodies: [b] }: System) => [
      springForce(b!.position, vec3(-1, 0, 0), { ...damped, velocity: b!.momentum.over(b!.mass) }),
    ]
    const start = oneBody(0.5, vec3(0.1, 0, 0), vec3(0, 0, 0))
    const theirs = odex((_, [x, v]) => [v!, (-50 * x! - 0.4 * v!) / 0.5], [0.1, 0], 5)[0]!
    expect(Math.abs(theirs - 0.012743938522069)).toBeLessThan(1e-12)
    const adaptive = first(adaptiveRungeKutta(start, law, { duration: 5, relativeTolerance: 1e-12 })).position
      .x
    expect(Math.abs(adaptive - theirs)).toBeLessThan(1e-11)
    expect(Math.abs(first(run(start, law, rungeKutta4, 1e-3, 5000)).position.x - theirs)).toBeLessThan(1e-10)
  })

  it("a ball thrown against quadratic drag (Timmerman and van der Weele 1999)", () => {
    const ball = { fluidDensity: 1.2, dragCoefficient: 0.47, area: 0.0043 }
    const c = (0.5 * 1.2 * 0.47 * 0.0043) / 0.15
    const law = ({ bodies: [b] }: System) => [
      weight(b!.mass, vec3(0, -9.80665, 0)).add(quadraticDrag(b!.momentum.over(b!.mass), ball)),
    ]
    const start = oneBody(0.15, vec3(0, 0, 0), vec3(0.15 * 30, 0.15 * 25, 0.15 * 2))
    const theirs = odex(
      (_, [, , , u, v, w]) => {
        const speed = Math.hypot(u!, v!, w!)
        return [u!, v!, w!, -c * speed * u!, -9.80665 - c * speed * v!, -c * speed * w!]
      },
      [0, 0, 0, 30, 25, 2],
      4,
    )
    const ours = first(adaptiveRungeKutta(start, law, { duration: 4, relativeTolerance: 1e-12 })).position
    expect(Math.hypot(ours.x - theirs[0]!, ours.y - theirs[1]!, ours.z - theirs[2]!)).toBeLessThan(1e-9)
  })

  it("I05: the eccentric orbit D5", () => {
    const start = oneBody(1, vec3(0.1, 0, 0), vec3(0, Math.sqrt(19), 0))
    const law = ({ bodies: [b] }: System) => [
      gravityForce(b!.position, vec3(0, 0, 0), { mass: 1, massParameter: 1 }),
    ]
    const theirs = odex(
      (_, [x, y, u, v]) => {
        const d3 = Math.hypot(x!, y!) ** 3
        return [u!, v!, -x! / d3, -y! / d3]
      },
      [0.1, 0, 0, Math.sqrt(19)],
      20,
    )
    const ours = first(adaptiveRungeKutta(start, law, { duration: 20, relativeTolerance: 1e-13 })).position
    expect(Math.hypot(ours.x - theirs[0]!, ours.y - theirs[1]!)).toBeLessThan(1e-9)
  })
})

describe("a free box that tumbles about its middle axis, with odex on Euler's equations", () => {
  const shape = { kind: "box", mass: 2, length: 0.3, height: 0.2, width: 0.1 } as const
  const moments = momentsOfInertia(shape)
  const spin = vec3(0.05, 6, 0.02)
  const start: RigidBody = {
    mass: shape.mass,
    momentsOfInertia: moments,
    position: vec3(0, 0, 0),
    momentum: vec3(0, 0, 0),
    orientation: orientation(),
    angularMomentum: vec3(moments.x * spin.x, moments.y * spin.y, moments.z * spin.z),
  }
  const tumble = (dt: number, seconds: number) => {
    let body = start
    for (let n = 0; n < Math.round(seconds / dt); n++)
      body = stepRigidBody(body, vec3(0, 0, 0), vec3(0, 0, 0), dt)
    return body
  }
  const theirs = odex(
    (_, [a, b, c]) => [
      ((moments.y - moments.z) / moments.x) * b! * c!,
      ((moments.z - moments.x) / moments.y) * c! * a!,
      ((moments.x - moments.y) / moments.z) * a! * b!,
    ],
    [spin.x, spin.y, spin.z],
    2.8,
  )
  const inBody = ({ angularMomentum, momentsOfInertia, orientation: e }: RigidBody) => {
    const omega = angularVelocityOf(angularMomentum, momentsOfInertia, e)
    return [omega.dot(e.xAxis), omega.dot(e.yAxis), omega.dot(e.zAxis)]
  }
  const off = (body: RigidBody) => Math.hypot(...inBody(body).map((w, i) => w - theirs[i]!))

  it("turns over, and the spin in its own axes tends to Euler's at first order", () => {
    expect(theirs[1]).toBeLessThan(-5)
    const [coarse, fine] = [off(tumble(2e-4, 2.8)), off(tumble(1e-4, 2.8))]
    expect(fine).toBeLessThan(0.05)
    expect(Math.log2(coarse / fine)).toBeGreaterThan(0.9)
    expect(Math.log2(coarse / fine)).toBeLessThan(1.1)
  })
  it("keeps its angular momentum to the bit and its axes at right angles", () => {
    const body = tumble(1e-3, 10)
    expect(body.angularMomentum.equals(start.angularMomentum)).toBe(true)
    const { xAxis, yAxis, zAxis } = body.orientation
    for (const product of [xAxis.dot(yAxis), yAxis.dot(zAxis), zAxis.dot(xAxis)]) {
      expect(Math.abs(product)).toBeLessThan(1e-15)
    }
    expect(xAxis.cross(yAxis).subtract(zAxis).magnitude()).toBeLessThan(1e-15)
    const energy = ({ angularMomentum, momentsOfInertia, orientation }: RigidBody) =>
      rotationalEnergy(angularMomentum, momentsOfInertia, orientation)
    expect(Math.abs(energy(tumble(1e-4, 1)) / energy(start) - 1)).toBeLessThan(2e-3)
  })
})
