// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, checkedPositive, wrongCount } from "../check.ts"
import { PhysicsError } from "../problem.ts"
import { asVec3, type Vec3 } from "../vec3.ts"
import { dampingOf, noForce } from "./line.ts"

/** An infinite flat surface; bodies stay on the side to which its normal points. */
export interface Plane {
  /** any point of the surface, m */
  readonly point: Vec3
  /** at right angles to the surface, pointing to the free side; of any length but zero */
  readonly normal: Vec3
}

export interface PlaneContactOptions {
  /** k in N/m, ≥ 0 */
  readonly stiffness: number
  /** c in N s/m, ≥ 0; none if left out; contactDamping finds it for a wanted restitution */
  readonly dampingCoefficient?: number
  /** of the body, m/s; needed when there is damping */
  readonly velocity?: Vec3
  /** of the body, m, ≥ 0; a point if left out */
  readonly radius?: number
}

export interface SphereContactOptions {
  /** k in N/m, ≥ 0 */
  readonly stiffness: number
  /** radius of the body that feels the force, m, > 0 */
  readonly radius: number
  /** radius of the other sphere, m, > 0 */
  readonly otherRadius: number
  /** c in N s/m, ≥ 0; none if left out */
  readonly dampingCoefficient?: number
  /** of the body, m/s; needed when there is damping */
  readonly velocity?: Vec3
  /** of the other sphere, m/s; at rest if left out */
  readonly otherVelocity?: Vec3
}

const knownOfPlane = { stiffness: "N/m", dampingCoefficient: "N s/m", velocity: "m/s", radius: "m" }
const knownOfSphere = {
  stiffness: "N/m",
  radius: "m",
  otherRadius: "m",
  dampingCoefficient: "N s/m",
  velocity: "m/s",
  otherVelocity: "m/s",
}

/**
 * The push of a flat surface on a body that presses into it: F = max(0, k δ − c v_n) n while the depth δ > 0,
 * else zero. v_n is the velocity along the normal n. The surface only pushes: damping never turns the push into a pull.
 *
 * @param position of the body, m; the centre if it has a radius
 * @param plane a point of the surface and its normal
 * @param options stiffness; dampingCoefficient with velocity; radius
 * @returns the normal force on the body, N; zero while they do not touch
 * @throws zero-length, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source T. Schwager and T. Pöschel, Granular Matter 9, 465 (2007), arXiv:0708.1434
 * @example
 * const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }
 * planeContactForce(vec3(3, -0.125, 0), floor, { stiffness: 2000 }).toString() // "(0, 250, 0)"
 * planeContactForce(vec3(3, 0.25, 0), floor, { stiffness: 2000 }).toString() // "(0, 0, 0)"
 */
export function planeContactForce(position: Vec3, plane: Plane, options: PlaneContactOptions): Vec3 {
  if (arguments.length > 3) wrongCount("planeContactForce", 3, arguments.length)
  checkedOptions(options, "planeContactForce", knownOfPlane)
  const n = normalOf(plane)
  const depth = depthIn(position, plane, n, options)
  const k = checkedAmount(options.stiffness, "stiffness")
  const c = dampingOf(options)
  if (depth <= 0) return noForce
  let push = k * depth
  if (c > 0) push -= c * velocityToDamp("planeContactForce", options.velocity).dot(n)
  return push > 0 ? n.times(push) : noForce
}

/**
 * The push of a sphere on another that overlaps it: F = max(0, k δ − c v_n) n with the overlap
 * δ = R₁ + R₂ − distance, n the unit vector from the other centre to this one and v_n the velocity of separation.
 *
 * @param position centre of the body that feels the force, m
 * @param otherPosition centre of the other sphere, m
 * @param options stiffness, radius, otherRadius; dampingCoefficient with velocity, otherVelocity
 * @returns the force on the first sphere, N; the force on the other is the opposite vector
 * @throws zero-length, not-positive, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source T. Schwager and T. Pöschel, Granular Matter 9, 465 (2007), arXiv:0708.1434
 * @example
 * const touch = { stiffness: 1000, radius: 0.5, otherRadius: 0.5 }
 * sphereContactForce(vec3(0.75, 0, 0), vec3(0, 0, 0), touch).toString() // "(250, 0, 0)"
 */
export function sphereContactForce(position: Vec3, otherPosition: Vec3, options: SphereContactOptions): Vec3 {
  if (arguments.length > 3) wrongCount("sphereContactForce", 3, arguments.length)
  checkedOptions(options, "sphereContactForce", knownOfSphere)
  const r = asVec3(position, "position").subtract(asVec3(otherPosition, "otherPosition"))
  const distance = r.magnitude()
  const reach =
    checkedPositive(options.radius, "radius") + checkedPositive(options.otherRadius, "otherRadius")
  const k = checkedAmount(options.stiffness, "stiffness")
  const c = dampingOf(options)
  if (distance >= reach) return noForce
  if (distance === 0) {
    throw new PhysicsError(
      "zero-length",
      `The centres of both spheres are at ${asVec3(position)}, so they cannot push each other apart in any direction.`,
      "Start them at different places, or take a smaller time step so that they do not run through each other.",
      position,
    )
  }
  const n = r.over(distance)
  let push = k * (reach - distance)
  if (c > 0) {
    const v = velocityToDamp("sphereContactForce", options.velocity)
    const other = options.otherVelocity
    push -= c * (other === undefined ? v : v.subtract(asVec3(other, "otherVelocity"))).dot(n)
  }
  return push > 0 ? n.times(push) : noForce
}

/**
 * The energy stored in the contact with a flat surface: U = ½ k δ² while the depth δ > 0, else 0.
 *
 * @param position of the body, m; the centre if it has a radius
 * @param plane a point of the surface and its normal
 * @param options stiffness and radius; the other quantities of a contact may stand there and do not matter
 * @returns the energy, J
 * @throws zero-length, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @example
 * const floor = { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }
 * planeContactEnergy(vec3(0, -0.125, 0), floor, { stiffness: 2000 }) // 15.625
 */
export function planeContactEnergy(position: Vec3, plane: Plane, options: PlaneContactOptions): number {
  if (arguments.length > 3) wrongCount("planeContactEnergy", 3, arguments.length)
  checkedOptions(options, "planeContactEnergy", knownOfPlane)
  const depth = Math.max(0, depthIn(position, plane, normalOf(plane), options))
  return 0.5 * checkedAmount(options.stiffness, "stiffness") * depth * depth
}

/**
 * The energy stored in the contact of two spheres: U = ½ k δ² while they overlap by δ > 0, else 0.
 *
 * @param position centre of one sphere, m
 * @param otherPosition centre of the other, m
 * @param options stiffness, radius, otherRadius; the other quantities of a contact may stand there and do not matter
 * @returns the energy, J
 * @throws not-positive, out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @example
 * sphereContactEnergy(vec3(0.75, 0, 0), vec3(0, 0, 0), { stiffness: 1000, radius: 0.5, otherRadius: 0.5 }) // 31.25
 */
export function sphereContactEnergy(
  position: Vec3,
  otherPosition: Vec3,
  options: SphereContactOptions,
): number {
  if (arguments.length > 3) wrongCount("sphereContactEnergy", 3, arguments.length)
  checkedOptions(options, "sphereContactEnergy", knownOfSphere)
  const distance = asVec3(position, "position").subtract(asVec3(otherPosition, "otherPosition")).magnitude()
  const reach =
    checkedPositive(options.radius, "radius") + checkedPositive(options.otherRadius, "otherRadius")
  const depth = Math.max(0, reach - distance)
  return 0.5 * checkedAmount(options.stiffness, "stiffness") * depth * depth
}

function normalOf(plane: Plane): Vec3 {
  if (
    typeof plane !== "object" ||
    plane === null ||
    plane.normal === undefined ||
    plane.point === undefined
  ) {
    throw new PhysicsError(
      "missing-option",
      "A plane needs a point of its surface and a normal, and not both were given.",
      "Write { point: vec3(0, 0, 0), normal: vec3(0, 1, 0) }.",
      plane,
    )
  }
  const n = asVec3(plane.normal, "the normal of the plane")
  return n.x * n.x + n.y * n.y + n.z * n.z === 1 ? n : n.unit()
}

function depthIn(position: Vec3, plane: Plane, n: Vec3, options: PlaneContactOptions): number {
  const radius = options.radius === undefined ? 0 : checkedAmount(options.radius, "radius")
  return radius - asVec3(position, "position").subtract(asVec3(plane.point, "the point of the plane")).dot(n)
}

function velocityToDamp(of: string, velocity: Vec3 | undefined): Vec3 {
  if (velocity === undefined) {
    throw new PhysicsError(
      "missing-option",
      `${of} has a dampingCoefficient but no velocity to damp.`,
      "Give velocity as well: momentum over mass.",
      undefined,
    )
  }
  return asVec3(velocity, "velocity")
}
