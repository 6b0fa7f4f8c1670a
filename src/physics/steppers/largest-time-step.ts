// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, checkedPositive, unknownKind, wrongCount } from "../check.ts"

export type StepperName = "explicitEuler" | "semiImplicitEuler" | "velocityVerlet" | "rungeKutta4"

export interface LargestTimeStepOptions {
  /** k in N/m, > 0, of the stiffest spring or contact */
  readonly stiffness: number
  /** m in kg, > 0, of the lightest body on it; for two free bodies their reduced mass */
  readonly mass: number
  /** c in N s/m, ≥ 0; none if left out */
  readonly dampingCoefficient?: number
  /** the name of the stepper; "semiImplicitEuler" if left out */
  readonly stepper?: StepperName
}

/**
 * The longest time step with which a mass on a spring stays bounded. With ω = √(k/m) and ζ = c/(2 √(k m)):
 * semi-implicit Euler 2 (√(1 + ζ²) − ζ)/ω, which more damping makes shorter; velocity Verlet 2/ω and Runge–Kutta 2√2/ω without damping;
 * explicit Euler 0 without damping. A sound motion wants it some ten times shorter: 30 steps a period and more.
 *
 * @param options stiffness, mass; dampingCoefficient, stepper
 * @returns the limit of Δt in s
 * @throws not-positive, out-of-range, unknown-choice, unknown-option, missing-option, not-a-number, not-finite, wrong-argument-count
 * @source Phys. Lett. A 371, 360 (2007), arXiv:0705.4523 for ω Δt < 2; with damping by the Schur–Cohn conditions on one step
 * @example
 * largestTimeStep({ stiffness: 400, mass: 1 }) // 0.1
 */
export function largestTimeStep(options: LargestTimeStepOptions): number {
  if (arguments.length > 1) wrongCount("largestTimeStep", 1, arguments.length)
  checkedOptions(options, "largestTimeStep", { stiffness: "", mass: "", dampingCoefficient: "", stepper: "" })
  const k = checkedPositive(options.stiffness, "stiffness")
  const m = checkedPositive(options.mass, "mass")
  const c = checkedAmount(options.dampingCoefficient ?? 0, "dampingCoefficient")
  const omega = Math.sqrt(k / m)
  const zeta = c / (2 * Math.sqrt(k * m))
  return limit(options.stepper ?? "semiImplicitEuler", zeta) / omega
}

/** The largest ω Δt. */
function limit(stepper: StepperName, zeta: number): number {
  switch (stepper) {
    case "semiImplicitEuler":
      return 2 / (Math.sqrt(1 + zeta * zeta) + zeta)
    case "explicitEuler":
      return zeta < 1 ? 2 * zeta : 2 / (zeta + Math.sqrt(zeta * zeta - 1))
    case "velocityVerlet":
      return zeta === 0 ? 2 : firstUnstable(h => verletIsStable(h, zeta))
    case "rungeKutta4":
      return zeta === 0 ? 2 * Math.SQRT2 : firstUnstable(h => rungeKuttaIsStable(h, zeta))
    default:
      throw unknownKind(stepper, "stepper", [
        "explicitEuler",
        "semiImplicitEuler",
        "velocityVerlet",
        "rungeKutta4",
      ])
  }
}

/** The first ω Δt at which a damped oscillator no longer dies away: a walk in small steps, then bisection. */
function firstUnstable(isStable: (h: number) => boolean): number {
  let low = 0
  let stride = 1 / 1024
  while (!isStable(stride)) stride /= 2
  while (isStable(low + stride)) low += stride
  let high = low + stride
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (low + high)
    if (isStable(middle)) low = middle
    else high = middle
  }
  return low
}

/** Schur–Cohn conditions on the one-step matrix of (q, v) with ω = 1: both eigenvalues within the unit circle. */
function verletIsStable(h: number, zeta: number): boolean {
  const g = 2 * zeta
  const qq = 1 - (h * h) / 2
  const qv = h - (g * h * h) / 2
  const vq = (h / 2) * (-1 - qq + g * h)
  const vv = 1 + (h / 2) * (-g - qv - g * (1 - g * h))
  const trace = qq + vv
  const determinant = qq * vv - qv * vq
  return determinant < 1 && Math.abs(trace) < 1 + determinant
}

/** |R(λ h)| < 1 for both roots λ of λ² + 2ζλ + 1, with R(z) = 1 + z + z²/2 + z³/6 + z⁴/24. */
function rungeKuttaIsStable(h: number, zeta: number): boolean {
  if (zeta < 1) return growth(-zeta * h, Math.sqrt(1 - zeta * zeta) * h) < 1
  const root = Math.sqrt(zeta * zeta - 1)
  return growth((-zeta - root) * h, 0) < 1 && growth((-zeta + root) * h, 0) < 1
}

function growth(x: number, y: number): number {
  let re = 1
  let im = 0
  for (let n = 4; n >= 1; n--) {
    const nextRe = 1 + (x * re - y * im) / n
    im = (x * im + y * re) / n
    re = nextRe
  }
  return Math.sqrt(re * re + im * im)
}
