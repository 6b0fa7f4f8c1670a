import { type Body, type Stepper, type System, type Vec3, vec3 } from "../../../src/physics/index.ts"

/** A system of one body, for cases whose sources have one. */
export function oneBody(mass: number, position: Vec3, momentum: Vec3, time = 0): System {
  return { time, bodies: [{ mass, position, momentum }] }
}

export function first(system: System): Body {
  return system.bodies[0]!
}

/** A mass of 1 kg on a spring of 1 N/m, so that ω = 1 rad/s, on the x axis from rest at 1 m. */
export const oscillator = oneBody(1, vec3(1, 0, 0), vec3(0, 0, 0))
export const springLaw = ({ bodies: [b] }: System) => [b!.position.negated()]

/** The system after `steps` steps; every system on the way is given to `watch`. */
export function run(
  start: System,
  law: (system: System) => readonly Vec3[],
  stepper: Stepper,
  timeStep: number,
  steps: number,
  watch?: (system: System, n: number) => void,
): System {
  let now = start
  for (let n = 1; n <= steps; n++) {
    now = stepper(now, law, timeStep)
    watch?.(now, n)
  }
  return now
}

/** Distance in the plane of position and velocity of a body of 1 kg from a known state. */
export function phaseDistance(body: Body, x: number, v: number): number {
  return Math.hypot(body.position.x - x, body.momentum.x - v)
}

export function relative(value: number, expected: number): number {
  return Math.abs(value / expected - 1)
}
