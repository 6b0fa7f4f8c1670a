// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, wrongCount } from "../check.ts"
import type { Vec3 } from "../vec3.ts"
import { type EndVelocities, lineFrom, relativeVelocity } from "./line.ts"

export interface DamperOptions extends EndVelocities {
  /** c in N s/m, ≥ 0 */
  readonly dampingCoefficient: number
}

const known = { dampingCoefficient: "N s/m", velocity: "m/s", anchorVelocity: "m/s" }

/**
 * The force of a viscous damper between two points on the body at its end: F = −c (v · n) n, with n the unit
 * vector from the anchor to the body and v the velocity of the body relative to the anchor. It opposes the change
 * of length and nothing else. At length zero the direction of v takes the place of n.
 *
 * @param position of the body, m
 * @param anchor position of the other end, m
 * @param options dampingCoefficient, velocity, and anchorVelocity if the other end moves
 * @returns the force on the body, N; the force on the other end is the opposite vector
 * @throws out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source linear viscous damping, common practice, no source
 * @example
 * damperForce(vec3(1, 0, 0), vec3(0, 0, 0), { dampingCoefficient: 3, velocity: vec3(2, 5, 0) }).toString() // "(-6, 0, 0)"
 */
export function damperForce(position: Vec3, anchor: Vec3, options: DamperOptions): Vec3 {
  if (arguments.length > 3) wrongCount("damperForce", 3, arguments.length)
  checkedOptions(options, "damperForce", known)
  const { direction } = lineFrom(anchor, position)
  const c = checkedAmount(options.dampingCoefficient, "dampingCoefficient")
  const v = relativeVelocity("damperForce", options)
  if (direction === undefined) return v.times(-c)
  const factor = -c * v.dot(direction)
  return direction.times(factor === 0 ? 0 : factor)
}
