// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, checkedPositive, wrongCount } from "../check.ts"
import { PhysicsError } from "../problem.ts"
import { asVec3, type Vec3 } from "../vec3.ts"
import { noForce } from "./line.ts"

export interface KineticFrictionOptions {
  /** μ_k, without unit, ≥ 0 */
  readonly kineticFrictionCoefficient: number
  /** Δt in s, > 0: with effectiveMass, the friction of one step is kept from turning the slip round */
  readonly timeStep?: number
  /** mass that the contact point sets in motion, kg, > 0: the body's mass, or contactMass if it can spin */
  readonly effectiveMass?: number
}

const knownOfKinetic = { kineticFrictionCoefficient: "1", timeStep: "s", effectiveMass: "kg" }

/**
 * Kinetic friction (Coulomb): F = −μ_k N v_t / |v_t|, against the velocity of slip along the surface v_t and nothing else.
 * Zero without slip. With timeStep and effectiveMass the force is at most what stops the slip within the step, so that
 * a body at the end of its slide stops and does not tremble.
 *
 * @param velocity of the touching point of the body relative to the surface, m/s; the part along the normal is left out
 * @param normalForce N on the body, a vector at right angles to the surface, N; zero while they do not touch
 * @param options kineticFrictionCoefficient; timeStep and effectiveMass together for the limit
 * @returns the friction force on the body, N
 * @throws out-of-range, not-positive, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-23.2
 * @example
 * kineticFriction(vec3(3, -1, 0), vec3(0, 20, 0), { kineticFrictionCoefficient: 0.25 }).toString() // "(-5, 0, 0)"
 */
export function kineticFriction(velocity: Vec3, normalForce: Vec3, options: KineticFrictionOptions): Vec3 {
  if (arguments.length > 3) wrongCount("kineticFriction", 3, arguments.length)
  checkedOptions(options, "kineticFriction", knownOfKinetic)
  const v = asVec3(velocity, "velocity")
  const normal = asVec3(normalForce, "normalForce")
  const mu = checkedAmount(options.kineticFrictionCoefficient, "kineticFrictionCoefficient")
  const limit = stoppingFactor(options)
  const push = normal.magnitude()
  if (push === 0) return noForce
  const slip = tangential(v, normal.over(push))
  const speed = slip.magnitude()
  if (speed === 0) return noForce
  const factor = Math.min((mu * push) / speed, limit)
  // a slip too small for the quotient still has its direction
  return Number.isFinite(factor) ? opposed(slip, factor) : opposed(slip.unit(), mu * push)
}

export interface FrictionOptions {
  /** N on the body, a vector at right angles to the surface, N; zero while they do not touch */
  readonly normalForce: Vec3
  /** μ_s, without unit, ≥ 0; as large as the kinetic one if left out, never smaller */
  readonly staticFrictionCoefficient?: number
  /** μ_k, without unit, ≥ 0 */
  readonly kineticFrictionCoefficient: number
  /** Δt in s, > 0: the step that the force will be used for */
  readonly timeStep: number
}

const knownOfFriction = {
  normalForce: "N",
  staticFrictionCoefficient: "1",
  kineticFrictionCoefficient: "1",
  timeStep: "s",
}

/** A slip so small that it is rounding of the forces: this part of what the forces give in one step. */
const roundingOfRest = 1e-12

/**
 * Dry friction on a body that may rest, slide, come to rest or break away, for p' = p + (F + friction) Δt.
 * At rest it balances the other forces along the surface as long as that takes no more than μ_s N; beyond it the body
 * breaks away and slides. Sliding, it is μ_k N against the velocity. It never turns a motion round: a slide that would end
 * within the step ends at rest, exactly, so that nothing creeps or trembles.
 *
 * @param momentum p of the body relative to the surface, kg m/s
 * @param otherForces F, the sum of all other forces on the body with the normal force among them, N
 * @param options normalForce, staticFrictionCoefficient, kineticFrictionCoefficient, timeStep
 * @returns the friction force on the body, N
 * @throws out-of-range, not-positive, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, items 4-23.1 and 4-23.2
 * @example
 * const pull = vec3(3, 0, 0)
 * frictionForce(vec3(0, 0, 0), pull, {
 *   normalForce: vec3(0, 20, 0),
 *   staticFrictionCoefficient: 0.4,
 *   kineticFrictionCoefficient: 0.25,
 *   timeStep: 0.001,
 * }).toString() // "(-3, 0, 0)"
 */
export function frictionForce(momentum: Vec3, otherForces: Vec3, options: FrictionOptions): Vec3 {
  if (arguments.length > 3) wrongCount("frictionForce", 3, arguments.length)
  checkedOptions(options, "frictionForce", knownOfFriction)
  const p = asVec3(momentum, "momentum")
  const force = asVec3(otherForces, "otherForces")
  const normal = asVec3(options.normalForce, "normalForce")
  const dt = checkedPositive(options.timeStep, "timeStep")
  const kinetic = checkedAmount(options.kineticFrictionCoefficient, "kineticFrictionCoefficient")
  const holding = staticCoefficient(options, kinetic)
  const push = normal.magnitude()
  if (push === 0) return noForce
  const n = normal.over(push)
  const slip = along(p, n, p.magnitude())
  const pull = along(force, n, force.magnitude() + push)
  const stopping = noForce.subtract(slip.over(dt).add(pull))
  const without = slip.add(pull.times(dt))
  const speedless = slip.magnitude() <= roundingOfRest * dt * (force.magnitude() + push)
  if (speedless) {
    if (stopping.magnitude() <= holding * push) return stopping
    const pulled = pull.magnitude()
    return pulled === 0 ? noForce : opposed(pull, (kinetic * push) / pulled)
  }
  const reached = without.magnitude()
  const turns = slip.dot(without) <= 0
  if (reached <= kinetic * push * dt || (turns && pull.magnitude() <= holding * push)) return stopping
  const heading = turns ? without : slip
  return opposed(heading, (kinetic * push) / heading.magnitude())
}

function staticCoefficient(options: FrictionOptions, kinetic: number): number {
  if (options.staticFrictionCoefficient === undefined) return kinetic
  const holding = checkedAmount(options.staticFrictionCoefficient, "staticFrictionCoefficient")
  if (holding < kinetic) {
    throw new PhysicsError(
      "out-of-range",
      `staticFrictionCoefficient is ${holding}, below kineticFrictionCoefficient, which is ${kinetic}.`,
      "It takes at least as much to set a body sliding as to keep it sliding: check that the two are not exchanged.",
      holding,
    )
  }
  return holding
}

function stoppingFactor(options: KineticFrictionOptions): number {
  if (options.timeStep === undefined && options.effectiveMass === undefined) return Number.POSITIVE_INFINITY
  return (
    checkedPositive(options.effectiveMass, "effectiveMass") / checkedPositive(options.timeStep, "timeStep")
  )
}

function tangential(v: Vec3, n: Vec3): Vec3 {
  return v.subtract(n.times(v.dot(n)))
}

/**
 * The part of v along the surface. Where what stands on the surface is only rounding (against `scale`), v itself,
 * so that a balance of forces comes out as exactly zero.
 */
function along(v: Vec3, n: Vec3, scale: number): Vec3 {
  const across = v.dot(n)
  return Math.abs(across) <= 4 * Number.EPSILON * scale ? v : v.subtract(n.times(across))
}

/** −s v with plain zeros where v has them. */
function opposed(v: Vec3, s: number): Vec3 {
  return noForce.subtract(v.times(s))
}
