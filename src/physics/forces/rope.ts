// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, checkedPositive, wrongCount } from "../check.ts"
import { asVec3, type Vec3 } from "../vec3.ts"
import { dampingOf, type EndVelocities, lineFrom, noForce, relativeVelocity } from "./line.ts"

export interface RopeOptions extends EndVelocities {
  /** length of the slack rope, m, > 0 */
  readonly length: number
  /** k in N/m, ≥ 0: how stiff the taut rope is */
  readonly stiffness: number
  /** c in N s/m, ≥ 0; none if left out */
  readonly dampingCoefficient?: number
}

const known = {
  length: "m",
  stiffness: "N/m",
  dampingCoefficient: "N s/m",
  velocity: "m/s",
  anchorVelocity: "m/s",
}

/**
 * The pull of a rope on the body at its end. Slack: no force. Taut: F = −max(0, k (d − L) + c (v · n)) n, with d
 * the distance from the anchor, L the length of the rope and n the unit vector from the anchor to the body.
 * A rope never pushes, damped or not.
 *
 * @param position of the body, m
 * @param anchor where the rope is made fast, m
 * @param options length, stiffness; dampingCoefficient with velocity, anchorVelocity
 * @returns the force on the body, N; the force on the other end is the opposite vector
 * @throws not-positive, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source one-sided Hooke law, common practice, no source
 * @example
 * ropeForce(vec3(0, -2.5, 0), vec3(0, 0, 0), { length: 2, stiffness: 400 }).toString() // "(0, 200, 0)"
 * ropeForce(vec3(0, -1.5, 0), vec3(0, 0, 0), { length: 2, stiffness: 400 }).toString() // "(0, 0, 0)"
 */
export function ropeForce(position: Vec3, anchor: Vec3, options: RopeOptions): Vec3 {
  if (arguments.length > 3) wrongCount("ropeForce", 3, arguments.length)
  checkedOptions(options, "ropeForce", known)
  const line = lineFrom(anchor, position)
  const stretch = line.length - checkedPositive(options.length, "length")
  const k = checkedAmount(options.stiffness, "stiffness")
  const c = dampingOf(options)
  if (stretch <= 0 || line.direction === undefined) return noForce
  let tension = k * stretch
  if (c > 0) tension += c * relativeVelocity("ropeForce", options).dot(line.direction)
  return tension > 0 ? line.direction.times(-tension) : noForce
}

/**
 * The energy stored in a taut rope: U = ½ k (d − L)² for d > L, else 0.
 *
 * @param position of one end, m
 * @param anchor position of the other end, m
 * @param options length and stiffness; the other quantities of a rope may stand there and do not matter
 * @returns the energy, J
 * @throws not-positive, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @example
 * ropeEnergy(vec3(0, -2.5, 0), vec3(0, 0, 0), { length: 2, stiffness: 400 }) // 50
 */
export function ropeEnergy(position: Vec3, anchor: Vec3, options: RopeOptions): number {
  if (arguments.length > 3) wrongCount("ropeEnergy", 3, arguments.length)
  checkedOptions(options, "ropeEnergy", known)
  const d = asVec3(position, "position").subtract(asVec3(anchor, "anchor")).magnitude()
  const stretch = Math.max(0, d - checkedPositive(options.length, "length"))
  return 0.5 * checkedAmount(options.stiffness, "stiffness") * stretch * stretch
}
