// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { wrongCount } from "../check.ts"
import { carried, checkStep, type ForceLaw, forcesOf, moved, plus, type System } from "./system.ts"

/**
 * One step of semi-implicit Euler, momentum first: p' = p + F Δt, r' = r + (p'/m) Δt.
 * First order; its positions are those of a second-order method, half a step late. Keeps an oscillator's energy bounded while
 * ω Δt < 2, with damping while ω Δt < 2 (√(1 + ζ²) − ζ).
 *
 * @param system time and bodies
 * @param forceLaw gives the net force on each body
 * @param timeStep Δt in s, > 0
 * @returns the system at t + Δt; the argument is left as it was
 * @throws not-positive, not-a-list, not-a-force-law, not-a-vector, not-a-number, not-finite, missing-option, wrong-argument-count
 * @source A. Cromer, Am. J. Phys. 49, 455 (1981)
 * @example
 * const start = { time: 0, bodies: [{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }] }
 * semiImplicitEuler(start, () => [vec3(0, -8, 0)], 0.5).bodies[0].position.toString() // "(1, -1, 0)"
 */
export function semiImplicitEuler(system: System, forceLaw: ForceLaw, timeStep: number): System {
  if (arguments.length > 3) wrongCount("semiImplicitEuler", 3, arguments.length)
  checkStep("semiImplicitEuler", system, forceLaw, timeStep)
  const forces = forcesOf(forceLaw, system)
  return moved(system, system.time + timeStep, (body, i) => {
    const momentum = plus(body.momentum, forces[i]!, timeStep)
    return carried(body, plus(body.position, momentum, timeStep / body.mass), momentum)
  })
}
