// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { wrongCount } from "../check.ts"
import { carried, checkStep, type ForceLaw, forcesOf, moved, plus, type System } from "./system.ts"

/**
 * One step of explicit Euler: r' = r + (p/m) Δt, p' = p + F Δt, both from the old state.
 * First order. An oscillator's amplitude grows by √(1 + (ω Δt)²) in every step, at any Δt: use it to see why not.
 *
 * @param system time and bodies
 * @param forceLaw gives the net force on each body
 * @param timeStep Δt in s, > 0
 * @returns the system at t + Δt; the argument is left as it was
 * @throws not-positive, not-a-list, not-a-force-law, not-a-vector, not-a-number, not-finite, missing-option, wrong-argument-count
 * @source E. Hairer, C. Lubich, G. Wanner, Geometric Numerical Integration, 2nd ed. (2006), sec. I.1 (from memory)
 * @example
 * const start = { time: 0, bodies: [{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }] }
 * explicitEuler(start, () => [vec3(0, -8, 0)], 0.5).bodies[0].position.toString() // "(1, 0, 0)"
 */
export function explicitEuler(system: System, forceLaw: ForceLaw, timeStep: number): System {
  if (arguments.length > 3) wrongCount("explicitEuler", 3, arguments.length)
  checkStep("explicitEuler", system, forceLaw, timeStep)
  const forces = forcesOf(forceLaw, system)
  return moved(system, system.time + timeStep, (body, i) =>
    carried(
      body,
      plus(body.position, body.momentum, timeStep / body.mass),
      plus(body.momentum, forces[i]!, timeStep),
    ),
  )
}
