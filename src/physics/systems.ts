// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedList, checkedPositive, wrongCount } from "./check.ts"
import { PhysicsError } from "./problem.ts"
import { asVec3, Vec3 } from "./vec3.ts"

/** A body taken as a point. Other properties, such as a name or a radius, are kept. */
export interface Body {
  /** kg, > 0 */
  readonly mass: number
  /** m */
  readonly position: Vec3
  /** kg m/s */
  readonly momentum: Vec3
}

const origin = new Vec3(0, 0, 0)

/**
 * The mass of several bodies together: M = Σ m_i.
 *
 * @param bodies a list of bodies
 * @returns M in kg
 * @throws not-a-list, not-positive, not-a-number, not-finite, wrong-argument-count
 * @example
 * const still = { position: vec3(0, 0, 0), momentum: vec3(0, 0, 0) }
 * totalMass([{ mass: 1, ...still }, { mass: 3, ...still }]) // 4
 */
export function totalMass(bodies: readonly Body[]): number {
  if (arguments.length > 1) wrongCount("totalMass", 1, arguments.length)
  let mass = 0
  for (const body of checkedBodies(bodies)) mass += body.mass
  return mass
}

/**
 * The centre of mass of several bodies: R = Σ m_i r_i / Σ m_i.
 *
 * @param bodies a list of at least one body
 * @returns R in m
 * @throws not-a-list, not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-1
 * @example
 * const still = { momentum: vec3(0, 0, 0) }
 * centreOfMass([{ mass: 1, position: vec3(4, 0, 0), ...still }, { mass: 3, position: vec3(0, 4, 0), ...still }]).toString() // "(1, 3, 0)"
 */
export function centreOfMass(bodies: readonly Body[]): Vec3 {
  if (arguments.length > 1) wrongCount("centreOfMass", 1, arguments.length)
  let mass = 0
  let moment = origin
  for (const body of checkedBodies(bodies)) {
    mass += body.mass
    moment = moment.add(asVec3(body.position, "position").times(body.mass))
  }
  return moment.over(checkedPositive(mass, "the mass of all bodies"))
}

/**
 * The momentum of several bodies together: P = Σ p_i.
 *
 * @param bodies a list of bodies
 * @returns P in kg m/s
 * @throws not-a-list, not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source I. Newton, Principia (1687), corollary III
 * @example
 * const there = { mass: 1, position: vec3(0, 0, 0) }
 * totalMomentum([{ ...there, momentum: vec3(4, 0, 0) }, { ...there, momentum: vec3(-1, 2, 0) }]).toString() // "(3, 2, 0)"
 */
export function totalMomentum(bodies: readonly Body[]): Vec3 {
  if (arguments.length > 1) wrongCount("totalMomentum", 1, arguments.length)
  let total = origin
  for (const body of checkedBodies(bodies)) total = total.add(asVec3(body.momentum, "momentum"))
  return total
}

/**
 * The angular momentum of several bodies about one point: L = Σ (r_i − r₀) × p_i.
 *
 * @param bodies a list of bodies
 * @param about r₀ in m; the origin if left out
 * @returns L in kg m²/s
 * @throws not-a-list, not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-11
 * @example
 * totalAngularMomentum([{ mass: 1, position: vec3(2, 0, 0), momentum: vec3(0, 3, 0) }]).toString() // "(0, 0, 6)"
 */
export function totalAngularMomentum(bodies: readonly Body[], about: Vec3 = origin): Vec3 {
  if (arguments.length > 2) wrongCount("totalAngularMomentum", 2, arguments.length)
  const r0 = asVec3(about, "about")
  let total = origin
  for (const body of checkedBodies(bodies)) {
    total = total.add(asVec3(body.position, "position").subtract(r0).cross(asVec3(body.momentum, "momentum")))
  }
  return total
}

/**
 * The kinetic energy of several bodies together: K = Σ p_i² / (2 m_i).
 *
 * @param bodies a list of bodies
 * @returns K in J
 * @throws not-a-list, not-positive, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-28.2
 * @example
 * totalKineticEnergy([{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(6, 0, 0) }]) // 9
 */
export function totalKineticEnergy(bodies: readonly Body[]): number {
  if (arguments.length > 1) wrongCount("totalKineticEnergy", 1, arguments.length)
  let total = 0
  for (const body of checkedBodies(bodies)) {
    const p = asVec3(body.momentum, "momentum")
    total += p.dot(p) / (2 * body.mass)
  }
  return total
}

/**
 * The reduced mass of two bodies: μ = m₁ m₂ / (m₁ + m₂). Their motion relative to each other is that of one body of mass μ.
 *
 * @param mass m₁ in kg, > 0
 * @param otherMass m₂ in kg, > 0
 * @returns μ in kg
 * @throws not-positive, not-a-number, not-finite, wrong-argument-count
 * @source H. Goldstein, Classical Mechanics, ch. 3 (from memory)
 * @example
 * reducedMass(2, 6) // 1.5
 */
export function reducedMass(mass: number, otherMass: number): number {
  if (arguments.length > 2) wrongCount("reducedMass", 2, arguments.length)
  const a = checkedPositive(mass, "mass")
  const b = checkedPositive(otherMass, "otherMass")
  return (a * b) / (a + b)
}

/**
 * The forces of all pairs of bodies on each other, with the third law built in: each pair's force is asked for once, and
 * acts on the second body as the opposite vector.
 *
 * @param bodies a list of bodies
 * @param forceOn gives the force on its first body from its second, N; undefined or no force where they do not act on each other
 * @returns the net force on each body, N, in the order of the list; their sum is zero to rounding
 * @throws not-a-list, not-a-force-law, not-positive, not-a-vector, not-finite, wrong-argument-count
 * @source I. Newton, Principia (1687), law III
 * @example
 * const still = { mass: 1, momentum: vec3(0, 0, 0) }
 * const two = [{ position: vec3(0, 0, 0), ...still }, { position: vec3(3, 0, 0), ...still }]
 * const pulls = pairForces(two, (a, b) => springForce(a.position, b.position, { stiffness: 2, restLength: 1 }))
 * pulls[0].toString() // "(4, 0, 0)"
 * pulls[1].toString() // "(-4, 0, 0)"
 */
export function pairForces<T extends Body>(
  bodies: readonly T[],
  forceOn: (body: T, other: T, index: number, otherIndex: number) => Vec3 | undefined,
): Vec3[] {
  if (arguments.length > 2) wrongCount("pairForces", 2, arguments.length)
  const list = checkedBodies(bodies)
  if (typeof forceOn !== "function") throw notAForceLaw("pairForces", forceOn)
  const net = list.map(() => origin)
  for (let i = 0; i < list.length; i++) {
    for (let j = i + 1; j < list.length; j++) {
      const value = forceOn(list[i]!, list[j]!, i, j)
      if (value === undefined) continue
      const force = asVec3(value, "the force of a pair")
      net[i] = net[i]!.add(force)
      net[j] = net[j]!.subtract(force)
    }
  }
  return net
}

/** A list of bodies, each with a mass above zero. */
export function checkedBodies<T extends Body>(bodies: readonly T[]): readonly T[] {
  const list = checkedList(bodies, "bodies")
  for (const body of list) checkedPositive(body?.mass, "the mass of each body")
  return list
}

export function notAForceLaw(of: string, value: unknown): PhysicsError {
  return new PhysicsError(
    "not-a-force-law",
    `${of} needs a function that gives the forces.`,
    "Write the name of the function without brackets, or an arrow function.",
    value,
  )
}
