// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedOptions, checkedPositive, checkedRange, wrongCount } from "../check.ts"
import { PhysicsError } from "../problem.ts"
import { semiImplicitEuler } from "./semi-implicit-euler.ts"
import { checkStep, type ForceLaw, type Stepper, type System } from "./system.ts"

export interface AdvanceOptions {
  /** Δt in s, > 0 */
  readonly timeStep: number
  /** how many, a whole number ≥ 0 */
  readonly steps: number
  /** semiImplicitEuler if left out */
  readonly stepper?: Stepper
  /** called with the system after each step, to record it; what it gives back is not used */
  readonly watch?: (system: System, step: number) => void
}

/**
 * Go many steps with one stepper. The time after n steps is the starting time plus n Δt, not a sum of n roundings.
 *
 * @param system time and bodies
 * @param forceLaw gives the net force on each body
 * @param options timeStep, steps; stepper, watch
 * @returns the system after the last step
 * @throws not-positive, out-of-range, not-a-list, not-a-force-law, not-a-vector, not-a-number, not-finite, missing-option, unknown-option, wrong-argument-count
 * @example
 * const start = { time: 0, bodies: [{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }] }
 * advance(start, () => [vec3(0, 0, 0)], { timeStep: 0.1, steps: 10 }).time // 1
 */
export function advance(system: System, forceLaw: ForceLaw, options: AdvanceOptions): System {
  if (arguments.length > 3) wrongCount("advance", 3, arguments.length)
  checkedOptions(options, "advance", { timeStep: "s", steps: "1", stepper: "", watch: "" })
  const dt = checkedPositive(options.timeStep, "timeStep")
  const steps = checkedRange(options.steps, "steps", 0, 1e9)
  const stepper = options.stepper ?? semiImplicitEuler
  if (typeof stepper !== "function" || !Number.isInteger(steps)) {
    throw new PhysicsError(
      "out-of-range",
      typeof stepper !== "function"
        ? "The stepper is not a function."
        : `${steps} is not a whole number of steps.`,
      "Give stepper one of explicitEuler, semiImplicitEuler, velocityVerlet, rungeKutta4, and steps a whole number.",
      typeof stepper !== "function" ? stepper : steps,
    )
  }
  checkStep("advance", system, forceLaw, dt)
  let now = system
  for (let n = 1; n <= steps; n++) {
    now = { ...stepper(now, forceLaw, dt), time: system.time + n * dt }
    options.watch?.(now, n)
  }
  return now
}
