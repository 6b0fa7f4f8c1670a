import { checkedPositive } from "../check.ts"
import { PhysicsError } from "../problem.ts"
import { type Body, checkedBodies, notAForceLaw } from "../systems.ts"
import { asVec3, Vec3 } from "../vec3.ts"

/** Several bodies at one time: what a stepper takes and gives. */
export interface System {
  /** t in s */
  readonly time: number
  /** at least one; each with mass, position, momentum, and whatever else is to be kept */
  readonly bodies: readonly Body[]
}

/** Gives the net force on each body of a system, N, in the order of its bodies. */
export type ForceLaw = (system: System) => readonly Vec3[]

/** Advances a system by one time step. */
export type Stepper = (system: System, forceLaw: ForceLaw, timeStep: number) => System

/** Checks what every stepper is given. */
export function checkStep(of: string, system: System, forceLaw: ForceLaw, timeStep: number): void {
  checkedPositive(timeStep, "timeStep")
  if (typeof system !== "object" || system === null || typeof system.time !== "number") {
    throw new PhysicsError(
      "missing-option",
      `${of} needs a system: a time and a list of bodies.`,
      "Write { time: 0, bodies: [a, b] }.",
      system,
    )
  }
  for (const body of checkedBodies(system.bodies)) {
    asVec3(body.position, "the position of each body")
    asVec3(body.momentum, "the momentum of each body")
  }
  if (typeof forceLaw !== "function") throw notAForceLaw(of, forceLaw)
}

/** The forces that a law gives, one vector for each body. */
export function forcesOf(forceLaw: ForceLaw, system: System): readonly Vec3[] {
  const forces = forceLaw(system)
  if (!Array.isArray(forces) || forces.length !== system.bodies.length) {
    throw new PhysicsError(
      "not-a-force-law",
      `The force law must give a list of ${system.bodies.length} ${system.bodies.length === 1 ? "vector" : "vectors"}, one for each body.`,
      "Return the net force on each body in the order of the bodies: return [F].",
      forces,
    )
  }
  return forces.map(force => asVec3(force, "the force on each body"))
}

/** a + s b without a vector in between. */
export function plus(a: Vec3, b: Vec3, s: number): Vec3 {
  return new Vec3(a.x + b.x * s, a.y + b.y * s, a.z + b.z * s)
}

/** The system at another time, with each body where `change` puts it. */
export function moved(system: System, time: number, change: (body: Body, index: number) => Body): System {
  const bodies: Body[] = []
  for (let i = 0; i < system.bodies.length; i++) bodies.push(change(system.bodies[i]!, i))
  return { ...system, time, bodies }
}

/**
 * The body with a new position and momentum, and everything else that it has. A body that has nothing else is made afresh:
 * copying by spread and then overwriting took several times as long (tests/bench/physics.mjs).
 */
export function carried(body: Body, position: Vec3, momentum: Vec3): Body {
  for (const key in body) {
    if (key !== "mass" && key !== "position" && key !== "momentum") return { ...body, position, momentum }
  }
  return { mass: body.mass, position, momentum }
}
