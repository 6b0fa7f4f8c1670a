// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedPositive, wrongCount } from "../check.ts"
import { asVec3, type Vec3 } from "../vec3.ts"

/**
 * The weight of a body in a uniform gravitational field: F = m g. A force, not a mass.
 *
 * @param mass m in kg, > 0
 * @param field g in N/kg, a vector; near the ground vec3(0, -9.81, 0) if y points up
 * @returns the force on the body, N
 * @throws not-positive, not-a-number, not-a-vector, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-9.2
 * @example
 * weight(2, vec3(0, -9.81, 0)).toString() // "(0, -19.62, 0)"
 */
export function weight(mass: number, field: Vec3): Vec3 {
  if (arguments.length > 2) wrongCount("weight", 2, arguments.length)
  const m = checkedPositive(mass, "mass")
  return asVec3(field, "field").times(m)
}
