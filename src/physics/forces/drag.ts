// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, wrongCount } from "../check.ts"
import { asVec3, type Vec3 } from "../vec3.ts"

/**
 * Drag in proportion to the velocity: F = −b v. Holds for slow motion in a thick fluid.
 *
 * @param velocity v of the body relative to the fluid, m/s
 * @param dragCoefficient b in kg/s, ≥ 0
 * @returns the force on the body, N
 * @throws out-of-range, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source P. Timmerman and J. P. van der Weele, Am. J. Phys. 67, 538 (1999)
 * @example
 * linearDrag(vec3(4, 0, 0), 0.5).toString() // "(-2, 0, 0)"
 */
export function linearDrag(velocity: Vec3, dragCoefficient: number): Vec3 {
  if (arguments.length > 2) wrongCount("linearDrag", 2, arguments.length)
  const v = asVec3(velocity, "velocity")
  const b = checkedAmount(dragCoefficient, "dragCoefficient")
  return b === 0 ? v.times(0) : opposed(v, b)
}

export interface QuadraticDragOptions {
  /** ρ in kg/m³, ≥ 0; about 1.2 for air near the ground */
  readonly fluidDensity: number
  /** C_D, without unit, ≥ 0; about 0.47 for a smooth sphere */
  readonly dragCoefficient: number
  /** A in m², ≥ 0, as seen along the motion */
  readonly area: number
}

const known = { fluidDensity: "kg/m³", dragCoefficient: "1", area: "m²" }

/**
 * Drag in proportion to the square of the speed: F = −½ C_D ρ A |v| v. Holds for a ball in air.
 *
 * @param velocity v of the body relative to the fluid, m/s
 * @param options fluidDensity, dragCoefficient, area
 * @returns the force on the body, N
 * @throws out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-23.4
 * @example
 * quadraticDrag(vec3(0, -10, 0), { fluidDensity: 1.2, dragCoefficient: 0.5, area: 0.25 }).toString() // "(0, 7.5, 0)"
 */
export function quadraticDrag(velocity: Vec3, options: QuadraticDragOptions): Vec3 {
  if (arguments.length > 2) wrongCount("quadraticDrag", 2, arguments.length)
  checkedOptions(options, "quadraticDrag", known)
  const v = asVec3(velocity, "velocity")
  const rho = checkedAmount(options.fluidDensity, "fluidDensity")
  const cd = checkedAmount(options.dragCoefficient, "dragCoefficient")
  const area = checkedAmount(options.area, "area")
  return opposed(v, 0.5 * cd * rho * area * v.magnitude())
}

/** −s v, with plain zeros where v has them, so that a recording shows no −0. */
function opposed(v: Vec3, s: number): Vec3 {
  return v.times(0).subtract(v.times(s))
}
