import { describe, expect, it } from "vitest"
import {
  contactDamping,
  contactRestitution,
  planeContactForce,
  type Stepper,
  type System,
  semiImplicitEuler,
  springForce,
  sum,
  vec3,
  velocityVerlet,
  weight,
} from "../../../src/physics/index.ts"
import { first, oneBody, relative } from "./one-body.ts"

const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }

/** A point of 1 kg that meets a floor of 1 N/m (ω = 1) with 1 m/s; the phase is the part of a step left when it touches. */
function bounce(
  zeta: number,
  h: number,
  phase: number,
  mayPull: boolean,
  stepper: Stepper = velocityVerlet,
): { e: number; depth: number } {
  const dampingCoefficient = 2 * zeta
  let now = oneBody(1, vec3(0, (1 - phase) * h, 0), vec3(0, -1, 0))
  let depth = 0
  const law = ({ bodies: [b] }: System) => {
    const velocity = b!.momentum
    if (!mayPull)
      return [planeContactForce(b!.position, floor, { stiffness: 1, dampingCoefficient, velocity })]
    if (b!.position.y > 0) return [vec3(0, 0, 0)]
    // the same spring and damper without the clip: a strut that lets go when the point is back at the surface
    return [
      springForce(b!.position, vec3(0, -10, 0), {
        stiffness: 1,
        restLength: 10,
        dampingCoefficient,
        velocity,
      }),
    ]
  }
  for (let n = 0; n < 40 / h; n++) {
    now = stepper(now, law, h)
    depth = Math.max(depth, -first(now).position.y)
    if (first(now).position.y > 0 && first(now).momentum.y > 0) break
  }
  return { e: first(now).momentum.y, depth }
}

const phases = [0.05, 0.25, 0.5, 0.75, 0.95]

/** K01: P. A. Cundall and O. D. L. Strack, Géotechnique 29, 47 (1979); Schwager and Pöschel, Granular Matter 9, 465 (2007). */
describe("K01 restitution of a spring–dashpot contact, tension allowed", () => {
  it.each([
    [0.05, 0.854467893],
    [0.1, 0.729247614],
    [0.2, 0.526620599],
    [0.3, 0.372326105],
    [0.5, 0.163033535],
    [0.7, 0.04598791],
  ])("at ζ = %f is %f within 0.15 ωh, arriving at the start of a step", (zeta, e) => {
    for (const h of [0.1, 0.05, 0.01]) {
      expect(Math.abs(bounce(zeta, h, 1, true).e - e)).toBeLessThanOrEqual(0.15 * h + 1e-9)
    }
  })
  it("at ζ = 0.2 stays within the published worst cases when it arrives in the middle of a step", () => {
    for (const [h, worst] of [
      [0.1, 1.3e-2],
      [0.05, 7e-3],
      [0.01, 1.8e-3],
    ] as const) {
      for (const phase of phases) {
        const { e } = bounce(0.2, h, phase, true, semiImplicitEuler)
        expect(Math.abs(e - 0.526620599)).toBeLessThanOrEqual(worst)
      }
    }
  })
})

/** K02: Schwager and Pöschel 2007 (above), its three branches in one form; S. P. Bartz, arXiv:2204.10917. */
describe("K02 restitution when the contact may only push", () => {
  const values = [
    [0, 1],
    [0.05, 0.858758102],
    [0.1, 0.744079398],
    [0.2, 0.571740028],
    [0.3, 0.450975453],
    [0.5, 0.298436059],
    [0.7, 0.210284564],
    [0.8, 0.179783315],
    [0.9, 0.155282748],
    [1, 0.135335283],
    [1.5, 0.075588309],
    [2, 0.047768733],
    [3, 0.023769514],
  ] as const
  it.each(values)(
    "contactRestitution at ζ = %f is %f to the last printed digit, and contactDamping undoes it",
    (zeta, e) => {
      const dampingCoefficient = 2 * zeta * Math.sqrt(50 * 2)
      expect(Math.abs(contactRestitution({ stiffness: 50, mass: 2, dampingCoefficient }) - e)).toBeLessThan(
        6e-10,
      )
      const exact = contactRestitution({ stiffness: 50, mass: 2, dampingCoefficient })
      const c = contactDamping({ restitution: exact, stiffness: 50, mass: 2 })
      expect(Math.abs(c - dampingCoefficient)).toBeLessThan(1e-12 * (1 + dampingCoefficient))
    },
  )
  it("is smooth through ζ = 1, where the branches meet", () => {
    const at = (zeta: number) => contactRestitution({ stiffness: 1, mass: 1, dampingCoefficient: 2 * zeta })
    for (const d of [1e-3, 1e-5, 1e-7]) {
      expect(Math.abs((at(1 - d) + at(1 + d)) / 2 - at(1))).toBeLessThan(d * d + 1e-15)
    }
  })
  it.each(values)("a bounce at ζ = %f is %f within 0.15 ωh, whatever the phase of arrival", (zeta, e) => {
    for (const h of [0.1, 0.05, 0.01]) {
      for (const phase of phases)
        expect(Math.abs(bounce(zeta, h, phase, false).e - e)).toBeLessThanOrEqual(0.15 * h + 1e-9)
    }
  })
  it.each(values)("at ζ = %f the deepest point is √e v/ω (e = %f)", (zeta, e) => {
    expect(Math.abs(bounce(zeta, 1e-3, 0.5, false).depth - Math.sqrt(e))).toBeLessThan(1e-3)
  })
  it("tells a clipped contact from one that may pull: 0.572 against 0.527 at ζ = 0.2", () => {
    expect(bounce(0.2, 0.01, 0.5, false).e - bounce(0.2, 0.01, 0.5, true).e).toBeGreaterThan(0.04)
  })
})

/** K03: contact equations as in "freely falling particle" (Garg et al. 2012, case DEM01); undamped closed forms derived. */
describe("K03 contact time, depth and bounce period on a spring floor", () => {
  const mass = 0.2
  const field = vec3(0, -9.80665, 0)
  const law = ({ bodies: [b] }: System) => [
    sum(weight(mass, field), planeContactForce(b!.position, floor, { stiffness: 2000 })),
  ]
  /** Times of touching and leaving by the straight line between two samples, depth and heights by the parabola of three. */
  function drop(h: number, seconds: number) {
    let now = oneBody(mass, vec3(0, 0.5, 0), vec3(0, 0, 0))
    const y = [0.5]
    for (let n = 0; n < seconds / h; n++) {
      now = semiImplicitEuler(now, law, h)
      y.push(first(now).position.y)
    }
    const touches: number[] = []
    const leaves: number[] = []
    const depths: number[] = []
    const heights: number[] = []
    for (let i = 1; i < y.length - 1; i++) {
      const [a, b, c] = [y[i - 1]!, y[i]!, y[i + 1]!]
      const crossing = (i - 1 + a / (a - b)) * h
      if (a > 0 && b <= 0) touches.push(crossing)
      if (a <= 0 && b > 0) leaves.push(crossing)
      const extreme = b - (a - c) ** 2 / (8 * (a - 2 * b + c))
      if (b < a && b <= c && b < 0) depths.push(-extreme)
      if (b > a && b >= c && b > 0) heights.push(extreme)
    }
    return { touches, leaves, depths, heights }
  }
  it.each([
    [1e-3, 7e-4, 5e-4, 1e-4],
    [1e-4, 3e-5, 3e-5, 3e-5],
  ])("at h = %f s", (h, depthError, timeError, periodError) => {
    const { touches, leaves, depths } = drop(h, 3.9)
    expect(relative(depths[0]!, 0.032311587486294986)).toBeLessThan(depthError)
    expect(relative(leaves[0]! - touches[0]!, 0.03204203334651465)).toBeLessThan(timeError)
    const bounces = touches.length - 1
    expect(relative((touches[bounces]! - touches[0]!) / bounces, 0.670701946908632)).toBeLessThan(periodError)
  })
  it("five bounces come back to the same height within 0.2 mm at h = 1 ms", () => {
    const { heights } = drop(1e-3, 3.9)
    expect(heights.length).toBeGreaterThanOrEqual(5)
    for (const height of heights.slice(0, 5)) expect(Math.abs(height - 0.5)).toBeLessThan(2e-4)
  })
  it("the closed forms without gravity", () => {
    expect(relative(3.1315571206669692 * Math.sqrt(mass / 2000), 0.031315571206669696)).toBeLessThan(1e-15)
    let now = oneBody(mass, vec3(0, 0, 0), vec3(0, -mass * 3.1315571206669692, 0))
    let steps = 0
    const h = 1e-5
    do
      now = semiImplicitEuler(
        now,
        ({ bodies: [b] }) => [planeContactForce(b!.position, floor, { stiffness: 2000 })],
        h,
      )
    while (++steps < 1e5 && first(now).position.y < 0)
    expect(Math.abs(steps * h - 0.031415926535897934)).toBeLessThan(2 * h)
  })
})

/** K04: Garg et al. 2012, case DEM02; soft percentages computed with g = 9.81, tension allowed, ζ from K01. */
describe("K04 rebound heights of a sphere of 0.2 m, density 2600 kg/m³, dropped from 0.5 m", () => {
  const mass = 10.890854532444617
  const r = 0.1
  const g = 9.81
  const hard = (e: number, k: number) => (0.5 - r) * e ** (2 * k) + r
  /** First rebound height of the centre with a contact that may pull; flight by closed form, contact stepped. */
  function softHeight(stiffness: number, e: number, from: number): number {
    const zeta = -Math.log(e) / Math.hypot(Math.PI, Math.log(e))
    const contact = { stiffness, restLength: 1, dampingCoefficient: 2 * zeta * Math.sqrt(stiffness * mass) }
    const field = vec3(0, -g, 0)
    const law = ({ bodies: [b] }: System) => [
      weight(mass, field).add(
        springForce(b!.position, vec3(0, r - 1, 0), { ...contact, velocity: b!.momentum.over(mass) }),
      ),
    ]
    const h = 0.002 / Math.sqrt(stiffness / mass)
    let now = oneBody(mass, vec3(0, r, 0), vec3(0, -mass * Math.sqrt(2 * g * (from - r)), 0))
    let before = now
    do {
      before = now
      now = semiImplicitEuler(now, law, h)
    } while (first(now).position.y < r)
    const part = (r - first(before).position.y) / (first(now).position.y - first(before).position.y)
    const [p1, p2] = [first(before).momentum.y, first(now).momentum.y]
    const v = (p1 + part * (p2 - p1)) / mass
    return r + (v * v) / (2 * g)
  }

  it.each([
    [0.5, [0.2, 0.125, 0.10625]],
    [0.6, [0.244, 0.15184, 0.118662]],
    [0.7, [0.296, 0.19604, 0.14706]],
    [0.8, [0.356, 0.26384, 0.204858]],
    [0.9, [0.424, 0.36244, 0.312576]],
    [1, [0.5, 0.5, 0.5]],
  ] as const)("e = %f: the hard-sphere heights, met within 1 %% at k = 5e6", (e, heights) => {
    let from = 0.5
    heights.forEach((height, k) => {
      expect(hard(e, k + 1)).toBeCloseTo(height, 6)
      from = softHeight(5e6, e, from)
      if (k === 0) expect(relative(from, height)).toBeLessThan(0.01)
    })
  })
  it.each([
    [5e4, 0.5, -6.87],
    [5e4, 0.7, -3.9],
    [5e4, 0.9, -1.17],
    [5e4, 1, 0],
    [5e5, 0.5, -2.19],
    [5e5, 0.7, -1.2],
    [5e5, 0.9, -0.36],
    [5e5, 1, 0],
    [5e6, 0.5, -0.7],
    [5e6, 0.7, -0.4],
    [5e6, 0.9, -0.11],
    [5e6, 1, 0],
  ])("k = %d N/m, e = %f: the first height is off by %f %% of the hard one", (k, e, percent) =>
    expect(Math.abs((softHeight(k, e, 0.5) / hard(e, 1) - 1) * 100 - percent)).toBeLessThan(0.05),
  )
  /** Table-tennis ball standard (figures second-hand): 305 mm drop on steel, rebound 240 to 260 mm, 265 mm if not celluloid. */
  it("the table-tennis rule as restitution", () => {
    const bounceOf = (rebound: number) => Math.sqrt(rebound / 305)
    expect(bounceOf(240)).toBeCloseTo(0.88707, 5)
    expect(bounceOf(260)).toBeCloseTo(0.92329, 5)
    expect(bounceOf(265)).toBeCloseTo(0.93212, 5)
    const mass = 0.0027
    const c = contactDamping({ restitution: bounceOf(250), stiffness: 1e4, mass })
    expect(contactRestitution({ stiffness: 1e4, mass, dampingCoefficient: c })).toBeCloseTo(bounceOf(250), 12)
  })
})
