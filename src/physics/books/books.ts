// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedList, checkedNumber, checkedOptions, checkedPositive, nearest, wrongCount } from "../check.ts"
import { PhysicsError } from "../problem.ts"
import {
  type Body,
  checkedBodies,
  totalAngularMomentum,
  totalKineticEnergy,
  totalMomentum,
} from "../systems.ts"
import { asVec3, Vec3 } from "../vec3.ts"

/** The account of a vector: what there was, what each force gave, what there is, and what does not add up. */
export interface VectorAccount {
  readonly start: Vec3
  readonly now: Vec3
  /** by name of the force: impulse, or its moment */
  readonly given: Readonly<Record<string, Vec3>>
  /** now − start − everything given: zero if the books close */
  readonly imbalance: Vec3
}

/** The account of an energy. */
export interface EnergyAccount {
  readonly start: number
  readonly now: number
  /** by name of the force: its work, J */
  readonly given: Readonly<Record<string, number>>
  /** J taken by friction, drag and damping, counted positive; always 0 for kineticEnergy, where each force's work is given */
  readonly lost: number
  /** now − start − everything given + lost: zero if the books close */
  readonly imbalance: number
}

/** The running account of a motion. */
export interface Books {
  /** the point that angular momentum is about, m */
  readonly about: Vec3
  /** kg m/s */
  readonly momentum: VectorAccount
  /** kg m²/s */
  readonly angularMomentum: VectorAccount
  /** J; every force's work is given */
  readonly kineticEnergy: EnergyAccount
  /** kinetic and potential together, J; forces with a potential energy give nothing here, lossy ones appear as lost */
  readonly mechanicalEnergy: EnergyAccount
  readonly potentialForces: readonly string[]
  readonly lossyForces: readonly string[]
}

export interface OpenBooksOptions {
  /** the point that angular momentum is about, m; the origin if left out */
  readonly about?: Vec3
  /** U at the start, J, of all forces that have one; 0 if left out */
  readonly potentialEnergy?: number
  /** names of the forces whose work the potential energy counts */
  readonly potentialForces?: readonly string[]
  /** names of the forces that take energy for good: friction, drag, damping */
  readonly lossyForces?: readonly string[]
}

export interface BookStepOptions {
  /** Δt in s, > 0 */
  readonly timeStep: number
  /** U after the step, J; 0 if left out */
  readonly potentialEnergy?: number
}

/**
 * Open the books of a motion: momentum, angular momentum, kinetic and mechanical energy as they are now.
 *
 * @param bodies a list of bodies
 * @param options about, potentialEnergy, potentialForces, lossyForces
 * @returns books without entries
 * @throws not-a-list, not-positive, not-a-vector, not-a-number, not-finite, unknown-option, wrong-argument-count
 * @example
 * const crate = { mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }
 * openBooks([crate]).kineticEnergy.start // 4
 */
export function openBooks(bodies: readonly Body[], options: OpenBooksOptions = {}): Books {
  if (arguments.length > 2) wrongCount("openBooks", 2, arguments.length)
  checkedOptions(options, "openBooks", {
    about: "",
    potentialEnergy: "",
    potentialForces: "",
    lossyForces: "",
  })
  const about = options.about === undefined ? new Vec3(0, 0, 0) : asVec3(options.about, "about")
  const kinetic = totalKineticEnergy(checkedBodies(bodies))
  const potential = checkedNumber(options.potentialEnergy ?? 0, "potentialEnergy")
  return {
    about,
    momentum: emptyVector(totalMomentum(bodies)),
    angularMomentum: emptyVector(totalAngularMomentum(bodies, about)),
    kineticEnergy: emptyEnergy(kinetic),
    mechanicalEnergy: emptyEnergy(kinetic + potential),
    potentialForces: checkedList(options.potentialForces ?? [], "potentialForces"),
    lossyForces: checkedList(options.lossyForces ?? [], "lossyForces"),
  }
}

/**
 * Enter one step: Δp = F Δt, ΔL = r × F Δt with r before the step, work W = F · ½(v + v') Δt for each force by name.
 * For semi-implicit Euler momentum, angular momentum and kinetic energy close to rounding, at any Δt: the mean velocity is
 * what makes the work exact (F · Δr would count F² Δt²/2m too much). Mechanical energy closes to the order of the method,
 * other steppers to theirs.
 *
 * @param books as they were before the step
 * @param before the bodies before the step
 * @param after the same bodies after it, in the same order
 * @param forces by name, a list with one force on each body, N, in the order of the bodies
 * @param options timeStep, and potentialEnergy after the step
 * @returns the books with the step entered; the argument is left as it was
 * @throws not-a-list, not-positive, not-a-vector, not-a-number, not-finite, missing-option, unknown-option, wrong-argument-count
 * @source derived from the update rule p' = p + F Δt, r' = r + p' Δt/m
 * @example
 * const before = { mass: 2, position: vec3(0, 0, 0), momentum: vec3(4, 0, 0) }
 * const after = { mass: 2, position: vec3(1.5, 0, 0), momentum: vec3(6, 0, 0) }
 * const books = bookStep(openBooks([before]), [before], [after], { push: [vec3(4, 0, 0)] }, { timeStep: 0.5 })
 * books.kineticEnergy.given.push // 5
 * books.kineticEnergy.imbalance // 0
 */
export function bookStep(
  books: Books,
  before: readonly Body[],
  after: readonly Body[],
  forces: Readonly<Record<string, readonly Vec3[]>>,
  options: BookStepOptions,
): Books {
  if (arguments.length > 5) wrongCount("bookStep", 5, arguments.length)
  checkedOptions(options, "bookStep", { timeStep: "s", potentialEnergy: "J" })
  const dt = checkedPositive(options.timeStep, "timeStep")
  const old = checkedBodies(before)
  const fresh = checkedBodies(after)
  sameLength("after", fresh, old)
  const impulses = { ...books.momentum.given }
  const moments = { ...books.angularMomentum.given }
  const works = { ...books.kineticEnergy.given }
  const given = { ...books.mechanicalEnergy.given }
  let lost = books.mechanicalEnergy.lost
  for (const name of Object.keys(forces)) {
    const list = checkedList(forces[name]!, `the list of forces "${name}"`)
    sameLength(`the list of forces "${name}"`, list, old)
    let force = zero
    let moment = zero
    let work = 0
    for (let i = 0; i < list.length; i++) {
      const f = asVec3(list[i], `force "${name}"`)
      force = force.add(f)
      moment = moment.add(old[i]!.position.subtract(books.about).cross(f))
      work += (f.dot(old[i]!.momentum.add(fresh[i]!.momentum)) * dt) / (2 * old[i]!.mass)
    }
    impulses[name] = (impulses[name] ?? zero).add(force.times(dt))
    moments[name] = (moments[name] ?? zero).add(moment.times(dt))
    works[name] = (works[name] ?? 0) + work
    if (books.lossyForces.includes(name)) lost -= work
    else if (!books.potentialForces.includes(name)) given[name] = (given[name] ?? 0) + work
  }
  checkNames(books, forces)
  const kinetic = totalKineticEnergy(fresh)
  const potential = checkedNumber(options.potentialEnergy ?? 0, "potentialEnergy")
  return {
    ...books,
    momentum: vectorAccount(books.momentum.start, totalMomentum(fresh), impulses),
    angularMomentum: vectorAccount(
      books.angularMomentum.start,
      totalAngularMomentum(fresh, books.about),
      moments,
    ),
    kineticEnergy: energyAccount(books.kineticEnergy.start, kinetic, works, 0),
    mechanicalEnergy: energyAccount(books.mechanicalEnergy.start, kinetic + potential, given, lost),
  }
}

const zero = new Vec3(0, 0, 0)

function emptyVector(value: Vec3): VectorAccount {
  return { start: value, now: value, given: {}, imbalance: zero }
}

function emptyEnergy(value: number): EnergyAccount {
  return { start: value, now: value, given: {}, lost: 0, imbalance: 0 }
}

function vectorAccount(start: Vec3, now: Vec3, given: Readonly<Record<string, Vec3>>): VectorAccount {
  let imbalance = now.subtract(start)
  for (const name of Object.keys(given)) imbalance = imbalance.subtract(given[name]!)
  return { start, now, given, imbalance }
}

function energyAccount(
  start: number,
  now: number,
  given: Readonly<Record<string, number>>,
  lost: number,
): EnergyAccount {
  let imbalance = now - start + lost
  for (const name of Object.keys(given)) imbalance -= given[name]!
  return { start, now, given, lost, imbalance }
}

function sameLength(name: string, list: readonly unknown[], bodies: readonly unknown[]): void {
  if (list.length === bodies.length) return
  throw new PhysicsError(
    "not-a-list",
    `${name} has ${list.length} entries for ${bodies.length} bodies.`,
    "Give one entry for each body, in the same order.",
    list,
  )
}

/** A name in potentialForces or lossyForces that no force has would silently change nothing. */
function checkNames(books: Books, forces: Readonly<Record<string, unknown>>): void {
  for (const name of [...books.potentialForces, ...books.lossyForces]) {
    if (name in forces) continue
    const near = nearest(name, Object.keys(forces))
    throw new PhysicsError(
      "unknown-option",
      `The books were opened with a force called "${name}", and no such force was entered.`,
      near === undefined ? "Enter it, with zero vectors where it does not act." : `Did you mean "${near}"?`,
      name,
    )
  }
}
