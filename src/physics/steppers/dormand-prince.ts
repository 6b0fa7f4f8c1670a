// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, checkedPositive, checkedRange, wrongCount } from "../check.ts"
import { math } from "../math.ts"
import { PhysicsError } from "../problem.ts"
import { asVec3, type Vec3 } from "../vec3.ts"
import { carried, checkStep, type ForceLaw, forcesOf, moved, plus, type System } from "./system.ts"

export interface AdaptiveOptions {
  /** how far to go, s, > 0 */
  readonly duration: number
  /** error allowed in a step, as a part of the largest position and momentum; 1e-9 if left out */
  readonly relativeTolerance?: number
  /** error of position allowed in a step in any case, m; none if left out */
  readonly positionTolerance?: number
  /** error of momentum allowed in a step in any case, kg m/s; none if left out */
  readonly momentumTolerance?: number
  /** give up after so many tries; 100 000 if left out */
  readonly maxSteps?: number
}

const known = {
  duration: "s",
  relativeTolerance: "1",
  positionTolerance: "m",
  momentumTolerance: "kg m/s",
  maxSteps: "1",
}

/** When each stage is evaluated, and its weights of the stages before; the last row is the fifth-order result. */
const times = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const
const stages: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
]
/** Fifth-order less fourth-order weights: their difference estimates the error. */
const errorWeights = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40]

interface Rates {
  readonly velocity: readonly Vec3[]
  readonly force: readonly Vec3[]
}

/**
 * Go on for a whole duration with steps as long as the tolerance allows, by the pair of fifth and fourth order of
 * Dormand and Prince. Each step is tried, its error estimated from the difference of both, and taken or tried again shorter.
 * Fifth order where the forces are smooth; where a contact opens or closes it takes short steps instead of losing accuracy.
 *
 * @param system time and bodies
 * @param forceLaw gives the net force on each body; called six times for each try
 * @param options duration; relativeTolerance, positionTolerance, momentumTolerance, maxSteps
 * @returns the system at t + duration; the argument is left as it was
 * @throws too-many-steps, not-positive, out-of-range, not-a-list, not-a-force-law, not-a-vector, not-a-number, not-finite, missing-option, unknown-option, wrong-argument-count
 * @source J. R. Dormand and P. J. Prince, J. Comput. Appl. Math. 6, 19 (1980)
 * @example
 * const start = { time: 0, bodies: [{ mass: 1, position: vec3(1, 0, 0), momentum: vec3(0, 0, 0) }] }
 * const spring = ({ bodies: [b] }) => [b.position.times(-4)]
 * adaptiveRungeKutta(start, spring, { duration: Math.PI }).bodies[0].position.x.toFixed(6) // "1.000000"
 */
export function adaptiveRungeKutta(system: System, forceLaw: ForceLaw, options: AdaptiveOptions): System {
  if (arguments.length > 3) wrongCount("adaptiveRungeKutta", 3, arguments.length)
  checkedOptions(options, "adaptiveRungeKutta", known)
  const duration = checkedPositive(options.duration, "duration")
  checkStep("adaptiveRungeKutta", system, forceLaw, duration)
  const relative = checkedRange(options.relativeTolerance ?? 1e-9, "relativeTolerance", 1e-15, 1)
  const positionTolerance = checkedAmount(options.positionTolerance ?? 0, "positionTolerance")
  const momentumTolerance = checkedAmount(options.momentumTolerance ?? 0, "momentumTolerance")
  const maxSteps = checkedPositive(options.maxSteps ?? 100_000, "maxSteps")
  const end = system.time + duration
  let now = system
  let rates = ratesAt(forceLaw, now)
  let step = duration / 100
  for (let tries = 0; tries < maxSteps; tries++) {
    const last = now.time + step >= end
    const dt = last ? end - now.time : step
    const tried = tryStep(now, forceLaw, rates, dt, last ? end : now.time + dt)
    const largest = sizes(now, tried.system)
    const error = Math.max(
      tried.positionError / (positionTolerance + relative * largest.position || Number.MIN_VALUE),
      tried.momentumError / (momentumTolerance + relative * largest.momentum || Number.MIN_VALUE),
    )
    if (error <= 1) {
      if (last) return tried.system
      now = tried.system
      rates = tried.rates
    }
    const factor = error > 0 ? 0.9 * math.pow(error, -0.2) : 5
    step = dt * Math.min(5, Math.max(0.2, factor))
    if (now.time + step === now.time) break
  }
  throw new PhysicsError(
    "too-many-steps",
    `The motion could not be followed from t = ${now.time} s to ${end} s within ${maxSteps} steps at this tolerance.`,
    "Allow a larger relativeTolerance, give positionTolerance, or look for forces that jump.",
    now.time,
  )
}

function ratesAt(forceLaw: ForceLaw, system: System): Rates {
  return {
    velocity: system.bodies.map(body => asVec3(body.momentum, "momentum").over(body.mass)),
    force: forcesOf(forceLaw, system),
  }
}

function tryStep(now: System, forceLaw: ForceLaw, first: Rates, dt: number, timeAfter: number) {
  const rates: Rates[] = [first]
  let system = now
  for (let s = 1; s < stages.length; s++) {
    const weights = stages[s]!
    const time = times[s] === 1 ? timeAfter : now.time + times[s]! * dt
    system = moved(now, time, (body, i) => {
      let position = body.position
      let momentum = body.momentum
      weights.forEach((w, j) => {
        if (w === 0) return
        position = plus(position, rates[j]!.velocity[i]!, w * dt)
        momentum = plus(momentum, rates[j]!.force[i]!, w * dt)
      })
      return carried(body, position, momentum)
    })
    rates.push(ratesAt(forceLaw, system))
  }
  return {
    system,
    rates: rates[6]!,
    positionError: largestError(rates.map(r => r.velocity)) * dt,
    momentumError: largestError(rates.map(r => r.force)) * dt,
  }
}

function largestError(byStage: readonly (readonly Vec3[])[]): number {
  let largest = 0
  for (let i = 0; i < byStage[0]!.length; i++) {
    let error = byStage[0]![i]!.times(errorWeights[0]!)
    for (let s = 1; s < byStage.length; s++) error = plus(error, byStage[s]![i]!, errorWeights[s]!)
    largest = Math.max(largest, error.magnitude())
  }
  return largest
}

function sizes(...systems: System[]): { position: number; momentum: number } {
  let position = 0
  let momentum = 0
  for (const { bodies } of systems) {
    for (const body of bodies) {
      position = Math.max(position, body.position.magnitude())
      momentum = Math.max(momentum, body.momentum.magnitude())
    }
  }
  return { position, momentum }
}
