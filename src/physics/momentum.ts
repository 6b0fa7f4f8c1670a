// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedPositive, wrongCount } from "./check.ts"
import { asVec3, type Vec3 } from "./vec3.ts"

/**
 * The momentum of a body: p = m v.
 *
 * @param mass m in kg, > 0
 * @param velocity v in m/s
 * @returns p in kg m/s
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-8
 * @example
 * momentumOf(2, vec3(3, 0, 0)).toString() // "(6, 0, 0)"
 */
export function momentumOf(mass: number, velocity: Vec3): Vec3 {
  if (arguments.length > 2) wrongCount("momentumOf", 2, arguments.length)
  return asVec3(velocity, "velocity").times(checkedPositive(mass, "mass"))
}

/**
 * The velocity of a body: v = p / m.
 *
 * @param momentum p in kg m/s
 * @param mass m in kg, > 0
 * @returns v in m/s
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-8
 * @example
 * velocityOf(vec3(6, 0, 0), 2).toString() // "(3, 0, 0)"
 */
export function velocityOf(momentum: Vec3, mass: number): Vec3 {
  if (arguments.length > 2) wrongCount("velocityOf", 2, arguments.length)
  return asVec3(momentum, "momentum").over(checkedPositive(mass, "mass"))
}

/**
 * The impulse of a force that stays the same for a short time: J = F Δt.
 *
 * @param force F in N
 * @param timeStep Δt in s, > 0
 * @returns J in N s, the change of momentum
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-24
 * @example
 * impulse(vec3(0, -8, 0), 0.5).toString() // "(0, -4, 0)"
 */
export function impulse(force: Vec3, timeStep: number): Vec3 {
  if (arguments.length > 2) wrongCount("impulse", 2, arguments.length)
  return asVec3(force, "force").times(checkedPositive(timeStep, "timeStep"))
}

/**
 * The momentum principle over one time step: p' = p + F_net Δt. Exact while the net force stays the same.
 *
 * @param momentum p before, kg m/s
 * @param netForce F_net, the sum of all forces on the body, N
 * @param timeStep Δt in s, > 0
 * @returns p' after, kg m/s
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source I. Newton, Principia (1687), law II
 * @example
 * updateMomentum(vec3(1, 0, 0), vec3(0, -8, 0), 0.5).toString() // "(1, -4, 0)"
 */
export function updateMomentum(momentum: Vec3, netForce: Vec3, timeStep: number): Vec3 {
  if (arguments.length > 3) wrongCount("updateMomentum", 3, arguments.length)
  const dt = checkedPositive(timeStep, "timeStep")
  return asVec3(momentum, "momentum").add(asVec3(netForce, "netForce").times(dt))
}

/**
 * The position after one time step: r' = r + (p / m) Δt. With the new momentum this is semi-implicit Euler,
 * with the old one explicit Euler.
 *
 * @param position r before, m
 * @param momentum p in kg m/s
 * @param mass m in kg, > 0
 * @param timeStep Δt in s, > 0
 * @returns r' after, m
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source definition of velocity, ISO 80000-3:2019, item 3-10.1
 * @example
 * updatePosition(vec3(0, 5, 0), vec3(1, -4, 0), 2, 0.5).toString() // "(0.25, 4, 0)"
 */
export function updatePosition(position: Vec3, momentum: Vec3, mass: number, timeStep: number): Vec3 {
  if (arguments.length > 4) wrongCount("updatePosition", 4, arguments.length)
  const m = checkedPositive(mass, "mass")
  const dt = checkedPositive(timeStep, "timeStep")
  return asVec3(position, "position").add(asVec3(momentum, "momentum").over(m).times(dt))
}

/**
 * The kinetic energy of a body from its momentum: K = p² / (2 m).
 *
 * @param momentum p in kg m/s
 * @param mass m in kg, > 0
 * @returns K in J
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-28.2
 * @example
 * kineticEnergy(vec3(6, 0, 0), 2) // 9
 */
export function kineticEnergy(momentum: Vec3, mass: number): number {
  if (arguments.length > 2) wrongCount("kineticEnergy", 2, arguments.length)
  const p = asVec3(momentum, "momentum")
  return p.dot(p) / (2 * checkedPositive(mass, "mass"))
}

/**
 * The potential energy of a body in a uniform field: U = −m g · r, zero at the origin.
 *
 * @param mass m in kg, > 0
 * @param field g in N/kg, a vector
 * @param position r in m
 * @returns U in J
 * @throws not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-28.1
 * @example
 * weightEnergy(2, vec3(0, -10, 0), vec3(7, 3, 0)) // 60
 */
export function weightEnergy(mass: number, field: Vec3, position: Vec3): number {
  if (arguments.length > 3) wrongCount("weightEnergy", 3, arguments.length)
  return -checkedPositive(mass, "mass") * asVec3(field, "field").dot(asVec3(position, "position"))
}
