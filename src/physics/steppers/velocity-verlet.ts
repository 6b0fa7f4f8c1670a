// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { wrongCount } from "../check.ts"
import { carried, checkStep, type ForceLaw, forcesOf, moved, plus, type System } from "./system.ts"

/**
 * One step of velocity Verlet: half a kick, p½ = p + F Δt/2; the whole way, r' = r + (p½/m) Δt; the other half kick with the
 * forces there, p' = p½ + F' Δt/2. For forces that depend on velocity, F' is taken at the predicted momentum p + F Δt.
 * Second order; runs backwards exactly; keeps an oscillator's energy bounded while ω Δt < 2.
 *
 * @param system time and bodies
 * @param forceLaw gives the net force on each body; called twice
 * @param timeStep Δt in s, > 0
 * @returns the system at t + Δt; the argument is left as it was
 * @throws not-positive, not-a-list, not-a-force-law, not-a-vector, not-a-number, not-finite, missing-option, wrong-argument-count
 * @source W. C. Swope et al., J. Chem. Phys. 76, 637 (1982)
 * @example
 * const start = { time: 0, bodies: [{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }] }
 * velocityVerlet(start, () => [vec3(0, -8, 0)], 0.5).bodies[0].position.toString() // "(1, -0.5, 0)"
 */
export function velocityVerlet(system: System, forceLaw: ForceLaw, timeStep: number): System {
  if (arguments.length > 3) wrongCount("velocityVerlet", 3, arguments.length)
  checkStep("velocityVerlet", system, forceLaw, timeStep)
  const forces = forcesOf(forceLaw, system)
  const half = system.bodies.map((body, i) => plus(body.momentum, forces[i]!, timeStep / 2))
  const predicted = moved(system, system.time + timeStep, (body, i) =>
    carried(
      body,
      plus(body.position, half[i]!, timeStep / body.mass),
      plus(body.momentum, forces[i]!, timeStep),
    ),
  )
  const later = forcesOf(forceLaw, predicted)
  return moved(predicted, predicted.time, (body, i) =>
    carried(body, body.position, plus(half[i]!, later[i]!, timeStep / 2)),
  )
}
