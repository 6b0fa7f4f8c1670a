// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedPositive, wrongCount } from "./check.ts"
import { asVec3, Vec3 } from "./vec3.ts"

const origin = new Vec3(0, 0, 0)

/**
 * The torque of a force about a point: τ = (r − r₀) × F.
 *
 * @param position r where the force acts, m
 * @param force F in N
 * @param about r₀ in m; the origin if left out
 * @returns τ in N m
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-12.1
 * @example
 * torque(vec3(2, 0, 0), vec3(0, 3, 0)).toString() // "(0, 0, 6)"
 */
export function torque(position: Vec3, force: Vec3, about: Vec3 = origin): Vec3 {
  if (arguments.length > 3) wrongCount("torque", 3, arguments.length)
  return asVec3(position, "position").subtract(asVec3(about, "about")).cross(asVec3(force, "force"))
}

/**
 * The angular momentum of a body's motion about a point: L = (r − r₀) × p.
 *
 * @param position r in m
 * @param momentum p in kg m/s
 * @param about r₀ in m; the origin if left out
 * @returns L in kg m²/s
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-11
 * @example
 * angularMomentum(vec3(2, 0, 0), vec3(0, 3, 0), vec3(1, 0, 0)).toString() // "(0, 0, 3)"
 */
export function angularMomentum(position: Vec3, momentum: Vec3, about: Vec3 = origin): Vec3 {
  if (arguments.length > 3) wrongCount("angularMomentum", 3, arguments.length)
  const arm = asVec3(position, "position").subtract(asVec3(about, "about"))
  return arm.cross(asVec3(momentum, "momentum"))
}

/**
 * The angular momentum principle over one time step: L' = L + τ_net Δt.
 *
 * @param angularMomentum L before, kg m²/s
 * @param netTorque τ_net, the sum of all torques about the same point, N m
 * @param timeStep Δt in s, > 0
 * @returns L' after, kg m²/s
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source L. Euler, Novi Comment. Acad. Sci. Petropol. 20, 189 (1776)
 * @example
 * updateAngularMomentum(vec3(0, 0, 1), vec3(0, 0, 4), 0.25).toString() // "(0, 0, 2)"
 */
export function updateAngularMomentum(angularMomentum: Vec3, netTorque: Vec3, timeStep: number): Vec3 {
  if (arguments.length > 3) wrongCount("updateAngularMomentum", 3, arguments.length)
  const dt = checkedPositive(timeStep, "timeStep")
  return asVec3(angularMomentum, "angularMomentum").add(asVec3(netTorque, "netTorque").times(dt))
}

/**
 * The velocity of a point of a spinning body: v_P = v + ω × a.
 *
 * @param velocity v of the centre of mass, or of any other point of the body, m/s
 * @param angularVelocity ω in rad/s, along the axis, right-handed
 * @param arm a from that point to P, m
 * @returns v_P in m/s
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @source L. Euler, Theoria motus corporum solidorum (1765)
 * @example
 * velocityOfPoint(vec3(3, 0, 0), vec3(0, 0, -6), vec3(0, -0.5, 0)).toString() // "(0, 0, 0)"
 */
export function velocityOfPoint(velocity: Vec3, angularVelocity: Vec3, arm: Vec3): Vec3 {
  if (arguments.length > 3) wrongCount("velocityOfPoint", 3, arguments.length)
  const spin = asVec3(angularVelocity, "angularVelocity").cross(asVec3(arm, "arm"))
  return asVec3(velocity, "velocity").add(spin)
}
