// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedNumber, checkedPositive, wrongCount } from "../check.ts"
import { math } from "../math.ts"
import { PhysicsError } from "../problem.ts"
import { asVec3, Vec3 } from "../vec3.ts"

/** Where a body's own axes point in space: three unit vectors at right angles, right-handed. */
export interface Orientation {
  readonly xAxis: Vec3
  readonly yAxis: Vec3
  readonly zAxis: Vec3
}

/** A rigid body in space. */
export interface RigidBody {
  /** kg, > 0 */
  readonly mass: number
  /** principal moments along the body's own axes, kg m²; from momentsOfInertia */
  readonly momentsOfInertia: Vec3
  /** of the centre of mass, m */
  readonly position: Vec3
  /** kg m/s */
  readonly momentum: Vec3
  /** where the body's axes point */
  readonly orientation: Orientation
  /** about the centre of mass, kg m²/s */
  readonly angularMomentum: Vec3
}

/**
 * An orientation turned from the axes of space about an axis. Without arguments the two agree.
 *
 * @param axis direction of the axis; z if left out
 * @param angle in rad, right-handed; 0 if left out
 * @returns the three axes of the body
 * @throws zero-length, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @example
 * orientation().yAxis.toString() // "(0, 1, 0)"
 */
export function orientation(axis: Vec3 = new Vec3(0, 0, 1), angle = 0): Orientation {
  if (arguments.length > 2) wrongCount("orientation", 2, arguments.length)
  const n = asVec3(axis, "axis").unit()
  const theta = checkedNumber(angle, "angle")
  const upright = { xAxis: new Vec3(1, 0, 0), yAxis: new Vec3(0, 1, 0), zAxis: new Vec3(0, 0, 1) }
  return theta === 0 ? upright : turned(upright, n, theta)
}

/**
 * The angular velocity of a rigid body: ω = Σ (L · e_i / I_i) e_i over its principal axes e_i.
 * About an axis without inertia (a thin rod's own) it does not spin.
 *
 * @param angularMomentum L about the centre of mass, kg m²/s
 * @param momentsOfInertia I in kg m², from momentsOfInertia
 * @param orientation where the body's axes point
 * @returns ω in rad/s
 * @throws not-a-vector, not-finite, missing-option, wrong-argument-count
 * @source L. Euler, Theoria motus corporum solidorum (1765)
 * @example
 * angularVelocityOf(vec3(0, 0, 6), vec3(1, 2, 3), orientation()).toString() // "(0, 0, 2)"
 */
export function angularVelocityOf(
  angularMomentum: Vec3,
  momentsOfInertia: Vec3,
  orientation: Orientation,
): Vec3 {
  if (arguments.length > 3) wrongCount("angularVelocityOf", 3, arguments.length)
  const l = asVec3(angularMomentum, "angularMomentum")
  const i = asVec3(momentsOfInertia, "momentsOfInertia")
  const e = axesOf(orientation)
  return e.xAxis
    .times(spin(l.dot(e.xAxis), i.x))
    .add(e.yAxis.times(spin(l.dot(e.yAxis), i.y)))
    .add(e.zAxis.times(spin(l.dot(e.zAxis), i.z)))
}

/**
 * The kinetic energy of a rigid body's rotation: K = Σ (L · e_i)² / (2 I_i).
 *
 * @param angularMomentum L about the centre of mass, kg m²/s
 * @param momentsOfInertia I in kg m²
 * @param orientation where the body's axes point
 * @returns K in J
 * @throws not-a-vector, not-finite, missing-option, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-28.2
 * @example
 * rotationalEnergy(vec3(0, 0, 6), vec3(1, 2, 3), orientation()) // 6
 */
export function rotationalEnergy(
  angularMomentum: Vec3,
  momentsOfInertia: Vec3,
  orientation: Orientation,
): number {
  if (arguments.length > 3) wrongCount("rotationalEnergy", 3, arguments.length)
  return (
    0.5 *
    asVec3(angularMomentum, "angularMomentum").dot(
      angularVelocityOf(angularMomentum, momentsOfInertia, orientation),
    )
  )
}

/**
 * The orientation after one time step: the axes turned by |ω| Δt about ω, exactly for a steady spin.
 *
 * @param orientation before
 * @param angularVelocity ω in rad/s
 * @param timeStep Δt in s, > 0
 * @returns the orientation after, with its axes again at right angles to rounding
 * @throws not-positive, not-a-vector, not-a-number, not-finite, missing-option, wrong-argument-count
 * @source O. Rodrigues, J. Math. Pures Appl. 5, 380 (1840)
 * @example
 * updateOrientation(orientation(), vec3(0, 0, 0), 0.1).xAxis.toString() // "(1, 0, 0)"
 */
export function updateOrientation(
  orientation: Orientation,
  angularVelocity: Vec3,
  timeStep: number,
): Orientation {
  if (arguments.length > 3) wrongCount("updateOrientation", 3, arguments.length)
  const axes = axesOf(orientation)
  const omega = asVec3(angularVelocity, "angularVelocity")
  const dt = checkedPositive(timeStep, "timeStep")
  const rate = omega.magnitude()
  return rate === 0 ? axes : turned(axes, omega.over(rate), rate * dt)
}

/**
 * The angle of a body that turns in the plane after one time step: θ' = θ + (L_z / I) Δt.
 *
 * @param angle θ before, rad
 * @param angularMomentum L in kg m²/s, along z
 * @param momentOfInertia I about z, kg m², > 0
 * @param timeStep Δt in s, > 0
 * @returns θ' after, rad
 * @throws not-positive, out-of-range, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source L. Euler, Theoria motus corporum solidorum (1765)
 * @example
 * updateAngle(1, vec3(0, 0, 6), 3, 0.25) // 1.5
 */
export function updateAngle(
  angle: number,
  angularMomentum: Vec3,
  momentOfInertia: number,
  timeStep: number,
): number {
  if (arguments.length > 4) wrongCount("updateAngle", 4, arguments.length)
  const l = asVec3(angularMomentum, "angularMomentum")
  if (l.x !== 0 || l.y !== 0) {
    throw new PhysicsError(
      "out-of-range",
      `An angular momentum of ${l} kg m²/s does not point along z, so the body leaves the plane.`,
      "Use updateOrientation for a body that turns in space.",
      l,
    )
  }
  const rate = l.z / checkedPositive(momentOfInertia, "momentOfInertia")
  return checkedNumber(angle, "angle") + rate * checkedPositive(timeStep, "timeStep")
}

/**
 * A point of a rigid body, in space: r + x e_x + y e_y + z e_z.
 *
 * @param body the rigid body
 * @param point (x, y, z) in the body's own axes, from its centre of mass, m
 * @returns the point's position, m
 * @throws not-a-vector, not-finite, missing-option, wrong-argument-count
 * @example
 * const plank = { mass: 1, momentsOfInertia: vec3(1, 1, 1), position: vec3(5, 0, 0), momentum: vec3(0, 0, 0),
 *   orientation: orientation(), angularMomentum: vec3(0, 0, 0) }
 * pointInSpace(plank, vec3(2, 1, 0)).toString() // "(7, 1, 0)"
 */
export function pointInSpace(body: RigidBody, point: Vec3): Vec3 {
  if (arguments.length > 2) wrongCount("pointInSpace", 2, arguments.length)
  const e = axesOf(body?.orientation)
  const p = asVec3(point, "point")
  return asVec3(body.position, "position")
    .add(e.xAxis.times(p.x))
    .add(e.yAxis.times(p.y))
    .add(e.zAxis.times(p.z))
}

/**
 * Advance a rigid body by one time step, momenta first: p' = p + F Δt, r' = r + p' Δt / m, L' = L + τ Δt, then the axes
 * turn with the angular velocity that L' gives. First order in Δt; without torque L stays as it is, to the bit.
 *
 * @param body mass, momentsOfInertia, position, momentum, orientation, angularMomentum
 * @param netForce F in N
 * @param netTorque τ about the centre of mass, N m
 * @param timeStep Δt in s, > 0
 * @returns a new body at t + Δt; the argument is left as it was
 * @throws not-positive, not-a-vector, not-a-number, not-finite, missing-option, wrong-argument-count
 * @source L. Euler, Theoria motus corporum solidorum (1765)
 * @example
 * const plank = { mass: 2, momentsOfInertia: vec3(1, 1, 1), position: vec3(0, 0, 0), momentum: vec3(4, 0, 0),
 *   orientation: orientation(), angularMomentum: vec3(0, 0, 0) }
 * stepRigidBody(plank, vec3(0, 0, 0), vec3(0, 0, 8), 0.5).angularMomentum.toString() // "(0, 0, 4)"
 */
export function stepRigidBody(body: RigidBody, netForce: Vec3, netTorque: Vec3, timeStep: number): RigidBody {
  if (arguments.length > 4) wrongCount("stepRigidBody", 4, arguments.length)
  const dt = checkedPositive(timeStep, "timeStep")
  const mass = checkedPositive(body?.mass, "the mass of the body")
  const momentum = asVec3(body.momentum, "momentum").add(asVec3(netForce, "netForce").times(dt))
  const position = asVec3(body.position, "position").add(momentum.times(dt / mass))
  const l = asVec3(body.angularMomentum, "angularMomentum").add(asVec3(netTorque, "netTorque").times(dt))
  const omega = angularVelocityOf(l, body.momentsOfInertia, body.orientation)
  return {
    ...body,
    momentum,
    position,
    angularMomentum: l,
    orientation: updateOrientation(body.orientation, omega, dt),
  }
}

function axesOf(value: Orientation): Orientation {
  if (typeof value !== "object" || value === null) {
    throw new PhysicsError(
      "missing-option",
      "The orientation of the body is missing.",
      "Give the axes of the body: orientation() if they point as those of space do.",
      value,
    )
  }
  return {
    xAxis: asVec3(value.xAxis, "xAxis"),
    yAxis: asVec3(value.yAxis, "yAxis"),
    zAxis: asVec3(value.zAxis, "zAxis"),
  }
}

function spin(l: number, moment: number): number {
  return moment > 0 ? l / moment : 0
}

function turned(axes: Orientation, n: Vec3, angle: number): Orientation {
  const cosine = math.cos(angle)
  const sine = math.sin(angle)
  const turn = (v: Vec3) =>
    v
      .times(cosine)
      .add(n.cross(v).times(sine))
      .add(n.times(n.dot(v) * (1 - cosine)))
  const xAxis = turn(axes.xAxis).unit()
  const y = turn(axes.yAxis)
  const zAxis = xAxis.cross(y).unit()
  return { xAxis, yAxis: zAxis.cross(xAxis), zAxis }
}
