// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { wrongCount } from "../check.ts"
import { carried, checkStep, type ForceLaw, forcesOf, moved, plus, type System } from "./system.ts"

/**
 * One step of the classical Runge–Kutta method: the rates of change at the start, twice in the middle and at the end,
 * weighted 1 : 2 : 2 : 1. Fourth order where the forces are smooth; at a contact that opens or closes within a step, about second.
 * Loses a little energy in each step, (ω Δt)⁶/72 of an oscillator's; stable while ω Δt < 2 √2.
 *
 * @param system time and bodies
 * @param forceLaw gives the net force on each body; called four times
 * @param timeStep Δt in s, > 0
 * @returns the system at t + Δt; the argument is left as it was
 * @throws not-positive, not-a-list, not-a-force-law, not-a-vector, not-a-number, not-finite, missing-option, wrong-argument-count
 * @source W. Kutta, Z. Math. Phys. 46, 435 (1901)
 * @example
 * const start = { time: 0, bodies: [{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }] }
 * rungeKutta4(start, () => [vec3(0, -8, 0)], 0.5).bodies[0].position.toString() // "(1, -0.5, 0)"
 */
export function rungeKutta4(system: System, forceLaw: ForceLaw, timeStep: number): System {
  if (arguments.length > 3) wrongCount("rungeKutta4", 3, arguments.length)
  checkStep("rungeKutta4", system, forceLaw, timeStep)
  const stage = (rates: System, forces: ReturnType<ForceLaw>, dt: number) =>
    moved(system, system.time + dt, (body, i) =>
      carried(
        body,
        plus(body.position, rates.bodies[i]!.momentum, dt / body.mass),
        plus(body.momentum, forces[i]!, dt),
      ),
    )
  const f1 = forcesOf(forceLaw, system)
  const s2 = stage(system, f1, timeStep / 2)
  const f2 = forcesOf(forceLaw, s2)
  const s3 = stage(s2, f2, timeStep / 2)
  const f3 = forcesOf(forceLaw, s3)
  const s4 = stage(s3, f3, timeStep)
  const f4 = forcesOf(forceLaw, s4)
  return moved(system, system.time + timeStep, (body, i) => {
    const velocitySum = plus(
      plus(body.momentum, s4.bodies[i]!.momentum, 1),
      s2.bodies[i]!.momentum.add(s3.bodies[i]!.momentum),
      2,
    )
    const forceSum = plus(f1[i]!.add(f4[i]!), f2[i]!.add(f3[i]!), 2)
    return carried(
      body,
      plus(body.position, velocitySum, timeStep / (6 * body.mass)),
      plus(body.momentum, forceSum, timeStep / 6),
    )
  })
}
