// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedOptions, checkedPositive, wrongCount } from "../check.ts"
import { gravitationalConstant } from "../constants.ts"
import { PhysicsError } from "../problem.ts"
import { asVec3, type Vec3 } from "../vec3.ts"

export interface GravityOptions {
  /** m of the body that feels the force, kg, > 0 */
  readonly mass: number
  /** M of the other body, kg, > 0; or give massParameter in its place */
  readonly otherMass?: number
  /** GM of the other body, m³/s², > 0: known to more digits than G and M apart */
  readonly massParameter?: number
}

const known = { mass: "kg", otherMass: "kg", massParameter: "m³/s²" }

/**
 * The gravitational attraction of a body by another (Newton): F = −G m M (r − s) / |r − s|³.
 * The force on the other body is the opposite vector.
 *
 * @param position r of the body that feels the force, m
 * @param otherPosition s of the body that attracts, m
 * @param options mass, and either otherMass or massParameter
 * @returns the force on the first body, N, pointing to the other
 * @throws zero-length, not-positive, missing-option, unknown-option, not-a-vector, not-finite, wrong-argument-count
 * @source I. Newton, Principia (1687), book III, prop. 7; G from CODATA 2022
 * @example
 * gravityForce(vec3(2, 0, 0), vec3(0, 0, 0), { mass: 3, massParameter: 8 }).toString() // "(-6, 0, 0)"
 */
export function gravityForce(position: Vec3, otherPosition: Vec3, options: GravityOptions): Vec3 {
  if (arguments.length > 3) wrongCount("gravityForce", 3, arguments.length)
  const r = asVec3(position, "position").subtract(asVec3(otherPosition, "otherPosition"))
  checkedOptions(options, "gravityForce", known)
  const gm = sourceStrength(options) * checkedPositive(options.mass, "mass")
  const d = r.magnitude()
  if (d === 0) throw samePlace(position)
  const factor = -gm / d / d / d
  return r.times(factor)
}

/**
 * The potential energy of two bodies that attract each other: U = −G m M / |r − s|, zero at infinite distance.
 *
 * @param position r of one body, m
 * @param otherPosition s of the other, m
 * @param options mass, and either otherMass or massParameter
 * @returns the energy of the pair, J, always negative; count it once for the pair
 * @throws zero-length, not-positive, missing-option, unknown-option, not-a-vector, not-finite, wrong-argument-count
 * @source H. Goldstein, Classical Mechanics, ch. 3 (from memory)
 * @example
 * gravityEnergy(vec3(2, 0, 0), vec3(0, 0, 0), { mass: 3, massParameter: 8 }) // -12
 */
export function gravityEnergy(position: Vec3, otherPosition: Vec3, options: GravityOptions): number {
  if (arguments.length > 3) wrongCount("gravityEnergy", 3, arguments.length)
  const d = asVec3(position, "position").subtract(asVec3(otherPosition, "otherPosition")).magnitude()
  checkedOptions(options, "gravityEnergy", known)
  const gm = sourceStrength(options) * checkedPositive(options.mass, "mass")
  if (d === 0) throw samePlace(position)
  return -gm / d
}

function sourceStrength(options: GravityOptions): number {
  if (options.massParameter !== undefined && options.otherMass !== undefined) {
    throw new PhysicsError(
      "unknown-option",
      "Both otherMass and massParameter were given, and they could contradict each other.",
      "Keep one: massParameter is G times otherMass.",
      options,
    )
  }
  if (options.massParameter !== undefined) return checkedPositive(options.massParameter, "massParameter")
  return gravitationalConstant * checkedPositive(options.otherMass, "otherMass")
}

function samePlace(position: Vec3): PhysicsError {
  return new PhysicsError(
    "zero-length",
    `Both bodies are at ${asVec3(position)}, so the attraction has no direction.`,
    "Start them at different places; if they met during the run, take a smaller time step or let them touch at a distance.",
    position,
  )
}
