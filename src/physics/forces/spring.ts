// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, wrongCount } from "../check.ts"
import { asVec3, type Vec3 } from "../vec3.ts"
import { dampingOf, type EndVelocities, lineFrom, noDirection, noForce, relativeVelocity } from "./line.ts"

export interface SpringOptions extends EndVelocities {
  /** k in N/m, ≥ 0 */
  readonly stiffness: number
  /** L₀ in m, ≥ 0; zero if left out */
  readonly restLength?: number
  /** c in N s/m, ≥ 0, of a damper along the spring; none if left out */
  readonly dampingCoefficient?: number
}

const known = {
  stiffness: "N/m",
  restLength: "m",
  dampingCoefficient: "N s/m",
  velocity: "m/s",
  anchorVelocity: "m/s",
}

/**
 * The force of a spring on the body at its end (Hooke): F = −k (L − L₀) n − c (v · n) n,
 * with L the distance from the anchor, n the unit vector from the anchor to the body and v the velocity of
 * the body relative to the anchor. It pulls when stretched and pushes when compressed.
 * A spring without rest length has no direction at length zero; the law's limit is taken there.
 *
 * @param position of the body, m
 * @param anchor position of the other end, m: a fixed point or another body
 * @param options stiffness; restLength, dampingCoefficient, velocity, anchorVelocity where they matter
 * @returns the force on the body, N; the force on the other end is the opposite vector
 * @throws zero-length, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source R. Hooke, De Potentia Restitutiva (1678)
 * @example
 * springForce(vec3(0, -0.5, 0), vec3(0, 0, 0), { stiffness: 20, restLength: 0.3 }).toString() // "(0, 4, 0)"
 */
export function springForce(position: Vec3, anchor: Vec3, options: SpringOptions): Vec3 {
  if (arguments.length > 3) wrongCount("springForce", 3, arguments.length)
  checkedOptions(options, "springForce", known)
  const { length, direction } = lineFrom(anchor, position)
  const k = checkedAmount(options.stiffness, "stiffness")
  const rest = options.restLength === undefined ? 0 : checkedAmount(options.restLength, "restLength")
  const c = dampingOf(options)
  if (direction === undefined) {
    if (rest > 0) throw noDirection("spring", position)
    return c === 0 ? noForce : relativeVelocity("springForce", options).times(-c)
  }
  const along = -k * (length - rest)
  return direction.times(
    c === 0 ? along : along - c * relativeVelocity("springForce", options).dot(direction),
  )
}

/**
 * The energy stored in a spring: U = ½ k (L − L₀)².
 *
 * @param position of one end, m
 * @param anchor position of the other end, m
 * @param options stiffness and restLength; the other quantities of a spring may stand there and do not matter
 * @returns the energy, J
 * @throws out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-28.1
 * @example
 * springEnergy(vec3(0, -0.5, 0), vec3(0, 0, 0), { stiffness: 100, restLength: 0.25 }) // 3.125
 */
export function springEnergy(position: Vec3, anchor: Vec3, options: SpringOptions): number {
  if (arguments.length > 3) wrongCount("springEnergy", 3, arguments.length)
  checkedOptions(options, "springEnergy", known)
  const rest = options.restLength === undefined ? 0 : checkedAmount(options.restLength, "restLength")
  const k = checkedAmount(options.stiffness, "stiffness")
  const stretch = asVec3(position, "position").subtract(asVec3(anchor, "anchor")).magnitude() - rest
  return 0.5 * k * stretch * stretch
}
