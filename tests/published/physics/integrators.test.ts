import { describe, expect, it } from "vitest"
import {
  adaptiveRungeKutta,
  explicitEuler,
  gravityForce,
  largestTimeStep,
  planeContactForce,
  rotate,
  rungeKutta4,
  type Stepper,
  type StepperName,
  type System,
  semiImplicitEuler,
  springForce,
  sum,
  vec3,
  velocityVerlet,
  weight,
} from "../../../src/physics/index.ts"
import { first, oneBody, oscillator, phaseDistance, relative, run, springLaw } from "./one-body.ts"

/** I01: E. Hairer, C. Lubich, G. Wanner, Geometric Numerical Integration (2006), sec. I.1 (from memory). */
describe("I01 explicit Euler on the oscillator", () => {
  it("multiplies the amplitude by √(1 + (ωh)²) in every step", () => {
    let amplitude = 1
    const end = first(
      run(oscillator, springLaw, explicitEuler, 0.1, 1000, s => {
        const next = Math.hypot(first(s).position.x, first(s).momentum.x)
        expect(relative(next / amplitude, Math.sqrt(1.01))).toBeLessThan(1e-12)
        amplitude = next
      }),
    )
    expect(relative(Math.hypot(end.position.x, end.momentum.x), 144.77277243257396)).toBeLessThan(1e-12)
  })
})

/** I02: Hairer, Lubich, Wanner 2006, ch. VI and IX: the modified Hamiltonian H − (h/2) p q (seen quoted). */
describe("I02 semi-implicit Euler on the oscillator", () => {
  const h = 0.1
  it("conserves p²/2m + kq²/2 − (hk/2m) p q to 1e-13 over 10 000 steps and keeps the energy within its band", () => {
    let [drift, low, high] = [0, 1, 1]
    run(oscillator, springLaw, semiImplicitEuler, h, 10_000, s => {
      const [q, p] = [first(s).position.x, first(s).momentum.x]
      drift = Math.max(drift, Math.abs((p * p) / 2 + (q * q) / 2 - (h / 2) * p * q - 0.5))
      low = Math.min(low, p * p + q * q)
      high = Math.max(high, p * p + q * q)
    })
    expect(drift).toBeLessThan(1e-13)
    expect(low).toBeGreaterThan(0.9523809523809523 - 1e-8)
    expect(high).toBeLessThan(1.0526315789473684 + 1e-8)
  })
  it("goes through A cos((n + ½) θ)/cos(θ/2), cos θ = 1 − (ωh)²/2, to 1e-11", () => {
    const theta = Math.acos(1 - (h * h) / 2)
    let worst = 0
    run(oscillator, springLaw, semiImplicitEuler, h, 10_000, (s, n) => {
      worst = Math.max(
        worst,
        Math.abs(first(s).position.x - Math.cos((n + 0.5) * theta) / Math.cos(theta / 2)),
      )
    })
    expect(worst).toBeLessThan(1e-11)
  })
  it("becomes velocity Verlet when the momentum starts half a kick back", () => {
    const back = oneBody(1, vec3(1, 0, 0), vec3(0.5 * h, 0, 0))
    const verlet: number[] = []
    run(oscillator, springLaw, velocityVerlet, h, 1000, s => verlet.push(first(s).position.x))
    run(back, springLaw, semiImplicitEuler, h, 1000, (s, n) =>
      expect(Math.abs(first(s).position.x - verlet[n - 1]!)).toBeLessThan(1e-13),
    )
  })
  it("a step with the old momentum does not conserve it", () => {
    const end = first(run(oscillator, springLaw, explicitEuler, h, 100))
    const [q, p] = [end.position.x, end.momentum.x]
    expect(Math.abs((p * p) / 2 + (q * q) / 2 - (h / 2) * p * q - 0.5)).toBeGreaterThan(0.1)
  })
})

/** I03: Hairer, Lubich, Wanner 2006 (from memory); stability polynomial of the classical Runge–Kutta method. */
describe("I03 velocity Verlet and Runge–Kutta on the oscillator", () => {
  it("Verlet goes through A cos(nθ) and conserves p²/2m + (kq²/2)(1 − (ωh)²/4)", () => {
    const h = 0.1
    const theta = Math.acos(1 - (h * h) / 2)
    run(oscillator, springLaw, velocityVerlet, h, 10_000, (s, n) => {
      const [q, p] = [first(s).position.x, first(s).momentum.x]
      const drift = (p * p) / 2 + ((q * q) / 2) * (1 - (h * h) / 4) - 0.5 * (1 - (h * h) / 4)
      expect(Math.abs(drift)).toBeLessThan(1e-13)
      expect(Math.abs(q - Math.cos(n * theta))).toBeLessThan(1e-11)
    })
  })
  it("Runge–Kutta changes the squared amplitude by 1 − z⁶/72 + z⁸/576 in a step", () => {
    for (const z of [0.1, 0.5, 1]) {
      const end = first(run(oscillator, springLaw, rungeKutta4, z, 1))
      const squared = end.position.x ** 2 + end.momentum.x ** 2
      expect(Math.abs(squared - (1 - z ** 6 / 72 + z ** 8 / 576))).toBeLessThan(1e-15)
    }
  })
  it.each([
    [explicitEuler, 1, [0.10516, 0.05127, 0.025315]],
    [semiImplicitEuler, 1, [0.0055351, 0.0027433, 0.0013658]],
    [velocityVerlet, 2, [0.00014461, 0.000036151, 0.0000090376]],
    [rungeKutta4, 4, [1.3333e-8, 8.3333e-10, 5.2084e-11]],
  ] as const)(
    "%o has order %d within 0.05, from both sides, and the published errors at t = 10 s",
    (stepper, order, errors) => {
      const steps = [0.02, 0.01, 0.005]
      const got = steps.map(h =>
        phaseDistance(
          first(run(oscillator, springLaw, stepper as Stepper, h, Math.round(10 / h))),
          Math.cos(10),
          -Math.sin(10),
        ),
      )
      for (const [i, error] of errors.entries()) expect(relative(got[i]!, error)).toBeLessThan(2e-3)
      const slope = Math.log2(got[1]! / got[2]!)
      expect(Math.abs(slope - order)).toBeLessThan(0.05)
    },
  )
})

/** I04: Phys. Lett. A 371, 360 (2007), arXiv:0705.4523; damped and Runge–Kutta bounds derived. */
describe("I04 stability limits", () => {
  const largest = (stepper: Stepper, h: number, steps: number, zeta = 0) => {
    let worst = 0
    const law = ({ bodies: [b] }: System) => [b!.position.negated().subtract(b!.momentum.times(2 * zeta))]
    try {
      run(oscillator, law, stepper, h, steps, s => {
        worst = Math.abs(first(s).position.x)
      })
    } catch {
      return Number.POSITIVE_INFINITY
    }
    return worst
  }
  it.each([semiImplicitEuler, velocityVerlet])("is ωh = 2 without damping", stepper => {
    expect(largest(stepper as Stepper, 1.99, 2000)).toBeLessThan(100)
    expect(largest(stepper as Stepper, 2.01, 2000)).toBeGreaterThan(
      stepper === semiImplicitEuler ? 1e170 : 1e80,
    )
  })
  it.each([
    [0.1, 1.809975],
    [0.5, 1.236068],
    [1, 0.828427],
  ])(
    "of semi-implicit Euler at ζ = %f is %f, sharp to a thousandth, and largestTimeStep knows it",
    (zeta, limit) => {
      const known = largestTimeStep({ stiffness: 100, mass: 4, dampingCoefficient: 2 * zeta * 20 })
      expect(Math.abs(known * 5 - limit)).toBeLessThan(1e-6)
      expect(largest(semiImplicitEuler, 0.999 * limit, 20_000, zeta)).toBeLessThan(1)
      expect(largest(semiImplicitEuler, 1.001 * limit, 20_000, zeta)).toBeGreaterThan(1e3)
    },
  )
  it("of Runge–Kutta is 2√2: 2.82 decays, 2.83 diverges", () => {
    expect(largest(rungeKutta4, 2.82, 20_000)).toBeLessThan(1)
    expect(largest(rungeKutta4, 2.83, 20_000)).toBeGreaterThan(1)
    expect(largestTimeStep({ stiffness: 1, mass: 1, stepper: "rungeKutta4" })).toBeCloseTo(2.8284271247, 9)
  })
  const steppers: Record<StepperName, Stepper> = {
    explicitEuler,
    semiImplicitEuler,
    velocityVerlet,
    rungeKutta4,
  }
  it.each(Object.keys(steppers) as StepperName[])(
    "of %s with damping is where largestTimeStep says",
    name => {
      for (const zeta of [0.2, 0.7, 1.5]) {
        const limit = largestTimeStep({ stiffness: 1, mass: 1, dampingCoefficient: 2 * zeta, stepper: name })
        expect(largest(steppers[name], 0.999 * limit, 20_000, zeta)).toBeLessThan(1)
        expect(largest(steppers[name], 1.001 * limit, 20_000, zeta)).toBeGreaterThan(1)
      }
    },
  )
})

/** I05: Hull, Enright, Fellen, Sedgwick, SIAM J. Numer. Anal. 9, 603 (1972); end-states of Enright and Pryce (1987). */
describe("I05 two-body orbits of the nonstiff test set, class D", () => {
  const orbits = [
    {
      e: 0.1,
      end: [0.2198835352008397, 0.9427076846341813, -0.9787659841058176, 0.3287977990962036],
      worst: [9.3e-4, 8.3e-6, 5e-13],
    },
    {
      e: 0.3,
      end: [-0.1777027357140412, 0.9467784719905892, -1.030294163192969, 0.1211074890053952],
      worst: [1.5e-3, 2.1e-5, 4e-12],
    },
    {
      e: 0.5,
      end: [-0.5780432953035362, 0.8633840009194192, -0.9595083730380727, -0.0650491512671209],
      worst: [2.7e-3, 8.3e-5, 4.5e-11],
    },
    {
      e: 0.7,
      end: [-0.9538990293416394, 0.6907409024219432, -0.8212674270877433, -0.1539574259125825],
      worst: [5.4e-3, 6.2e-4, 1.7e-9],
    },
    {
      e: 0.9,
      end: [-1.295266250987574, 0.4003938963792321, -0.6775390924707566, -0.1270838154278686],
      worst: [8.9e-2, 4.7e-2, 4.2e-6],
    },
  ] as const
  const start = (e: number) => oneBody(1, vec3(1 - e, 0, 0), vec3(0, Math.sqrt((1 + e) / (1 - e)), 0))
  const law = ({ bodies: [b] }: System) => [
    gravityForce(b!.position, vec3(0, 0, 0), { mass: 1, massParameter: 1 }),
  ]
  const off = (end: System, [x, y]: readonly number[]) =>
    Math.hypot(first(end).position.x - x!, first(end).position.y - y!)

  /**
   * Error of the end position at h = 1e-3. Where it is as small as rounding (2e-13 here, either way), the mean over several
   * orbits turned about the centre: each rounds differently, and what is left is the method's own error.
   */
  function turnedBack(e: number, stepper: Stepper, turns: number, [x, y]: readonly number[]): number {
    const axis = vec3(0, 0, 1)
    let error = vec3(0, 0, 0)
    for (let n = 0; n < turns; n++) {
      const { mass, position, momentum } = first(start(e))
      const turned = oneBody(mass, rotate(position, axis, n), rotate(momentum, axis, n))
      const end = first(run(turned, law, stepper, 1e-3, 20_000)).position
      error = error.add(rotate(end.subtract(rotate(vec3(x!, y!, 0), axis, n)), axis, -n))
    }
    return error.magnitude() / turns
  }

  it.each(orbits)("e = $e at h = 1e-3, semi-implicit Euler, Verlet, Runge–Kutta", ({ e, end, worst }) => {
    const steppers = [semiImplicitEuler, velocityVerlet, rungeKutta4]
    for (const [i, stepper] of steppers.entries()) {
      // the published figures are rounded to their last digit: half a unit of it is allowed
      const allowed = worst[i]! * (worst[i]! === 5e-13 ? 1.1 : 1.06)
      expect(turnedBack(e, stepper, worst[i]! < 1e-12 ? 8 : 1, end)).toBeLessThan(allowed)
    }
  })
  it.each(orbits)("e = $e by the adaptive pair to 1e-9", ({ e, end }) => {
    const got = adaptiveRungeKutta(start(e), law, { duration: 20, relativeTolerance: 1e-13 })
    expect(off(got, end)).toBeLessThan(1e-9)
    expect(Math.hypot(first(got).momentum.x - end[2], first(got).momentum.y - end[3])).toBeLessThan(1e-9)
  })
  it("angular momentum over 100 orbits at e = 0.5, h = 0.01: 1e-13 for the central kicks, lost by explicit Euler", () => {
    const drift = (stepper: Stepper) => {
      const { position, momentum } = first(run(start(0.5), law, stepper, 0.01, 62_832))
      return Math.abs(position.cross(momentum).z / Math.sqrt(0.75) - 1)
    }
    expect(drift(semiImplicitEuler)).toBeLessThan(1e-13)
    expect(drift(velocityVerlet)).toBeLessThan(1e-13)
    expect(drift(rungeKutta4)).toBeLessThan(1e-7)
    expect(drift(explicitEuler)).toBeGreaterThan(0.5)
  })
})

/** I06: E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I (1993), pp. 129–130; R. F. Arenstorf (1963). */
describe("I06 Arenstorf orbit", () => {
  const [mu, period] = [0.012277471, 17.065216560157964]
  const start = oneBody(1, vec3(0.994, 0, 0), vec3(0, -2.0015851063790824, 0))
  const law = ({ bodies: [b] }: System) => {
    const { x, y } = b!.position
    const v = b!.momentum
    const d1 = ((x + mu) ** 2 + y * y) ** 1.5
    const d2 = ((x - 1 + mu) ** 2 + y * y) ** 1.5
    return [
      vec3(
        x + 2 * v.y - ((1 - mu) * (x + mu)) / d1 - (mu * (x - 1 + mu)) / d2,
        y - 2 * v.x - ((1 - mu) * y) / d1 - (mu * y) / d2,
        0,
      ),
    ]
  }
  const off = (end: System) => Math.hypot(first(end).position.x - 0.994, first(end).position.y)
  it("Runge–Kutta returns to the start with the published errors, at order 4 from both sides", () => {
    const errors = [24_000, 48_000, 96_000].map(n => off(run(start, law, rungeKutta4, period / n, n)))
    expect(errors[0]).toBeLessThan(1.25e-3)
    expect(errors[1]).toBeLessThan(6.95e-5)
    expect(errors[2]).toBeLessThan(4.05e-6)
    const slope = Math.log2(errors[1]! / errors[2]!)
    expect(slope).toBeGreaterThan(3.9)
    expect(slope).toBeLessThan(4.3)
  })
  it("the adaptive pair returns within 1e-8 for a sixth of the force calls of the finest run above", () => {
    let calls = 0
    const counted = (s: System) => {
      calls++
      return law(s)
    }
    const end = adaptiveRungeKutta(start, counted, { duration: period, relativeTolerance: 1e-13 })
    expect(off(end)).toBeLessThan(1e-8)
    expect(calls).toBeLessThan((4 * 96_000) / 6)
  })
})

/** I08: common knowledge of the practice, no source; exact piecewise solution from K03. */
describe("I08 order loss where a contact opens and closes", () => {
  const [m, k, g, H] = [0.2, 2000, 9.80665, 0.5]
  const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }
  const law = ({ bodies: [b] }: System) => [
    sum(weight(m, vec3(0, -g, 0)), planeContactForce(b!.position, floor, { stiffness: k })),
  ]
  const omega = Math.sqrt(k / m)
  const v = Math.sqrt(2 * g * H)
  const contact = (2 / omega) * (Math.PI - Math.atan((omega * v) / g))
  const flight = (2 * v) / g
  function exact(t: number): number {
    if (t < v / g) return H - (g * t * t) / 2
    const since = (t - v / g) % (contact + flight)
    if (since < contact) {
      const sag = g / omega ** 2
      return -sag + sag * Math.cos(omega * since) - (v / omega) * Math.sin(omega * since)
    }
    const s = since - contact
    return v * s - (g * s * s) / 2
  }
  const worst = (stepper: Stepper, h: number) => {
    let error = 0
    run(oneBody(m, vec3(0, H, 0), vec3(0, 0, 0)), law, stepper, h, Math.round(3 / h), (s, n) => {
      error = Math.max(error, Math.abs(first(s).position.y - exact(n * h)))
    })
    return error
  }
  it("the exact solution is at 6.672 mm after 3 s", () =>
    expect(Math.abs(exact(3) - 0.006672060790896328)).toBeLessThan(1e-12))
  it("Runge–Kutta stays within 1 mm at h = 0.5 ms; every stepper's error shrinks, none as fast as order 4", () => {
    expect(worst(rungeKutta4, 5e-4)).toBeLessThanOrEqual(1e-3)
    for (const stepper of [semiImplicitEuler, velocityVerlet, rungeKutta4]) {
      const [coarse, fine] = [worst(stepper, 1e-3), worst(stepper, 6.25e-5)]
      expect(fine).toBeLessThan(coarse / 4)
      expect(Math.log2(coarse / fine) / 4).toBeLessThan(2.5)
    }
  })
  it("the same spring without a floor's edge shows order 4", () => {
    const law = ({ bodies: [b] }: System) => [
      springForce(b!.position, vec3(0, -1, 0), { stiffness: k, restLength: 1 }),
    ]
    const end = (h: number) => {
      const b = first(
        run(oneBody(m, vec3(0, 0.001, 0), vec3(0, 0, 0)), law, rungeKutta4, h, Math.round(0.1 / h)),
      )
      return Math.abs(b.position.y - 0.001 * Math.cos(omega * 0.1))
    }
    expect(Math.abs(Math.log2(end(5e-4) / end(2.5e-4)) - 4)).toBeLessThan(0.1)
  })
})
