import { type System, semiImplicitEuler, springForce, sum, Vec3, vec3 } from "../../../src/physics/index.ts"

/*
 * A chain of 100 masses, neighbours joined by springs, 10,000 steps: with the library's vectors, spring and stepper,
 * and by hand with typed arrays. Both in one run, turn by turn; medians. The last positions must agree.
 */
const masses = 100
const steps = 10_000
const rounds = 5
const m = 0.2 // kg
const k = 400 // N/m
const rest = 0.1 // m
const dt = 0.001 // s

const start = (i: number): [number, number] => [i * rest * 1.05, 0.02 * Math.sin(i)]

function byLibrary(): number[] {
  let system: System = {
    time: 0,
    bodies: Array.from({ length: masses }, (_, i) => ({
      mass: m,
      position: vec3(...start(i), 0),
      momentum: vec3(0, 0, 0),
    })),
  }
  const options = { stiffness: k, restLength: rest }
  const law = ({ bodies }: System): Vec3[] => {
    const forces: Vec3[] = bodies.map(() => new Vec3(0, 0, 0))
    for (let i = 0; i + 1 < bodies.length; i++) {
      const pull = springForce(bodies[i]!.position, bodies[i + 1]!.position, options)
      forces[i] = forces[i]!.add(pull)
      forces[i + 1] = forces[i + 1]!.subtract(pull)
    }
    return forces
  }
  for (let n = 0; n < steps; n++) system = semiImplicitEuler(system, law, dt)
  return system.bodies.flatMap(({ position }) => [position.x, position.y])
}

function byHand(): number[] {
  const r = new Float64Array(3 * masses)
  const p = new Float64Array(3 * masses)
  const f = new Float64Array(3 * masses)
  for (let i = 0; i < masses; i++) [r[3 * i], r[3 * i + 1]] = start(i)
  for (let n = 0; n < steps; n++) {
    f.fill(0)
    for (let i = 0; i + 1 < masses; i++) {
      const a = 3 * i
      const b = a + 3
      const x = r[a]! - r[b]!
      const y = r[a + 1]! - r[b + 1]!
      const z = r[a + 2]! - r[b + 2]!
      const length = Math.sqrt(x * x + y * y + z * z)
      const pull = (-k * (length - rest)) / length
      f[a] = f[a]! + x * pull
      f[a + 1] = f[a + 1]! + y * pull
      f[a + 2] = f[a + 2]! + z * pull
      f[b] = f[b]! - x * pull
      f[b + 1] = f[b + 1]! - y * pull
      f[b + 2] = f[b + 2]! - z * pull
    }
    for (let j = 0; j < 3 * masses; j++) {
      p[j] = p[j]! + f[j]! * dt
      r[j] = r[j]! + (p[j]! * dt) / m
    }
  }
  return Array.from({ length: masses }, (_, i) => [r[3 * i]!, r[3 * i + 1]!]).flat()
}

function timed(work: () => number[]): { milliseconds: number; result: number[] } {
  const from = performance.now()
  const result = work()
  return { milliseconds: performance.now() - from, result }
}

const median = (list: number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1]!

const library: number[] = []
const hand: number[] = []
let apart = 0
for (let round = 0; round < rounds; round++) {
  const a = timed(byLibrary)
  const b = timed(byHand)
  library.push(a.milliseconds)
  hand.push(b.milliseconds)
  apart = Math.max(...a.result.map((x, i) => Math.abs(x - b.result[i]!)))
}
const perSpring = (ms: number): string => ((ms * 1e6) / (steps * (masses - 1))).toFixed(0)
console.log(`largest difference of the last positions: ${apart.toExponential(1)} m`)
console.log(`library: ${median(library).toFixed(0)} ms (${perSpring(median(library))} ns a spring and step)`)
console.log(
  `by hand, typed arrays: ${median(hand).toFixed(0)} ms (${perSpring(median(hand))} ns a spring and step)`,
)
console.log(`ratio: ${(median(library) / median(hand)).toFixed(1)}`)
if (sum(vec3(apart, 0, 0)).x > 1e-6) throw new Error("the two do not agree")
