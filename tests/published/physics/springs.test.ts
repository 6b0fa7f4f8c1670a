import { describe, expect, it } from "vitest"
import {
  pairForces,
  type Stepper,
  type System,
  semiImplicitEuler,
  springForce,
  vec3,
  velocityVerlet,
} from "../../../src/physics/index.ts"
import { first, oneBody, relative, run } from "./one-body.ts"

/** Times at which a sampled signal crosses zero upwards, by the cubic through four samples. */
function upCrossings(values: readonly number[], h: number): number[] {
  const times: number[] = []
  for (let i = 1; i < values.length - 2; i++) {
    const [a, b, c, d] = [values[i - 1]!, values[i]!, values[i + 1]!, values[i + 2]!]
    if (b >= 0 || c < 0) continue
    const at = (s: number) =>
      (-a * s * (s - 1) * (s - 2)) / 6 +
      (b * (s + 1) * (s - 1) * (s - 2)) / 2 -
      (c * (s + 1) * s * (s - 2)) / 2 +
      (d * (s + 1) * s * (s - 1)) / 6
    let [low, high] = [0, 1]
    for (let n = 0; n < 60; n++) {
      const middle = (low + high) / 2
      if (at(middle) < 0) low = middle
      else high = middle
    }
    times.push((i + low) * h)
  }
  return times
}

function meanPeriod(values: readonly number[], h: number): number {
  const times = upCrossings(values, h)
  expect(times.length).toBeGreaterThan(100)
  return (times.at(-1)! - times[0]!) / (times.length - 1)
}

/** S01: textbook periods (from memory); discrete frequency from Hairer, Lubich, Wanner 2006, ch. I and IX (from memory). */
describe("S01 mass–spring period and reduced mass", () => {
  const ratio = 0.9995830378145856
  it.each([semiImplicitEuler, velocityVerlet])(
    "of one mass is T ωh/(2 arcsin(ωh/2)) at ωh = 0.1",
    stepper => {
      const period = 0.6283185307179586
      const h = (0.1 * period) / (2 * Math.PI)
      const x: number[] = []
      const law = ({ bodies: [b] }: System) => [springForce(b!.position, vec3(0, 0, 0), { stiffness: 50 })]
      run(oneBody(0.5, vec3(0.1, 0, 0), vec3(0, 0, 0)), law, stepper as Stepper, h, 6600, s =>
        x.push(first(s).position.x),
      )
      expect(relative(meanPeriod(x, h) / period, ratio)).toBeLessThan(1e-6)
    },
  )
  it("of two masses on one spring is that of their reduced mass", () => {
    const period = 0.4442882938158366
    const h = (0.1 * period) / (2 * Math.PI)
    const stretch: number[] = []
    const bodies = [
      { mass: 0.3, position: vec3(0, 0, 0), momentum: vec3(0.02, 0.01, 0) },
      { mass: 0.7, position: vec3(0.55, 0, 0), momentum: vec3(-0.02, 0.01 * (7 / 3), 0) },
    ]
    const law = (s: System) =>
      pairForces(s.bodies, (a, b) => springForce(a.position, b.position, { stiffness: 42, restLength: 0.5 }))
    run({ time: 0, bodies }, law, semiImplicitEuler, h, 6600, ({ bodies: [a, b] }) =>
      stretch.push(b!.position.subtract(a!.position).magnitude() - 0.5),
    )
    expect(relative(meanPeriod(stretch, h) / period, ratio)).toBeLessThan(1e-6)
  })
})

/** S02: logarithmic decrement, vibration textbooks (from memory); discrete version from the update rule. */
describe("S02 logarithmic decrement of a damped oscillator", () => {
  const damped = { stiffness: 50, dampingCoefficient: 0.4 }
  const law = ({ bodies: [b] }: System) => [
    springForce(b!.position, vec3(-1, 0, 0), {
      ...damped,
      restLength: 1,
      velocity: b!.momentum.over(b!.mass),
    }),
  ]
  function peaks(h: number): { time: number; height: number }[] {
    const x: number[] = [0.1]
    run(oneBody(0.5, vec3(0.1, 0, 0), vec3(0, 0, 0)), law, semiImplicitEuler, h, Math.round(5 / h), s =>
      x.push(first(s).position.x),
    )
    const found: { time: number; height: number }[] = []
    for (let i = 1; i < x.length - 1; i++) {
      const [a, b, c] = [x[i - 1]!, x[i]!, x[i + 1]!]
      if (b < a || b <= c) continue
      const shift = (a - c) / (2 * (a - 2 * b + c))
      found.push({ time: (i + shift) * h, height: b - ((a - c) * shift) / 4 })
    }
    return found
  }
  it.each([
    [1e-3, 0.2515780736903622, 0.6286935725950298],
    [1e-4, 0.25153374414954366, 0.6288092066642963],
  ])("at h = %f s has the discrete rule's decrement and period", (h, decrement, period) => {
    const found = peaks(h)
    const [a, b] = [found[0]!, found.at(-1)!]
    const periods = found.length - 1
    expect(Math.abs(Math.log(a.height / b.height) / periods - decrement)).toBeLessThan(1e-6)
    expect(relative((b.time - a.time) / periods, period)).toBeLessThan(1e-5)
  })
  it("tends to 2πζ/√(1 − ζ²) at first order", () => {
    const error = (h: number) => {
      const found = peaks(h)
      return Math.abs(
        Math.log(found[0]!.height / found.at(-1)!.height) / (found.length - 1) - 0.25152871581347913,
      )
    }
    const slope = Math.log2(error(1e-3) / error(5e-4))
    expect(slope).toBeGreaterThan(0.9)
    expect(slope).toBeLessThan(1.1)
  })
})
