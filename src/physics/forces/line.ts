import { checkedAmount } from "../check.ts"
import { PhysicsError } from "../problem.ts"
import { asVec3, Vec3 } from "../vec3.ts"

/** How fast the two ends of a line move; what springs, dampers and ropes share. */
export interface EndVelocities {
  /** of the body's end, m/s; needed when there is damping */
  readonly velocity?: Vec3
  /** of the other end, m/s; at rest if left out */
  readonly anchorVelocity?: Vec3
}

/** The line from its anchor to the body: length and unit vector; `direction` is undefined for length zero. */
export interface Line {
  readonly length: number
  readonly direction: Vec3 | undefined
}

export function lineFrom(anchor: unknown, position: unknown): Line {
  const r = asVec3(position, "position").subtract(asVec3(anchor, "anchor"))
  const length = r.magnitude()
  return { length, direction: length > 0 ? r.over(length) : undefined }
}

/** The velocity of the body's end relative to the anchor. */
export function relativeVelocity(of: string, ends: EndVelocities): Vec3 {
  if (ends.velocity === undefined) {
    throw new PhysicsError(
      "missing-option",
      `${of} has a dampingCoefficient but no velocity to damp.`,
      "Give velocity as well: momentum over mass.",
      ends,
    )
  }
  const v = asVec3(ends.velocity, "velocity")
  return ends.anchorVelocity === undefined ? v : v.subtract(asVec3(ends.anchorVelocity, "anchorVelocity"))
}

export function dampingOf(options: { readonly dampingCoefficient?: number }): number {
  return options.dampingCoefficient === undefined
    ? 0
    : checkedAmount(options.dampingCoefficient, "dampingCoefficient")
}

export const noForce = new Vec3(0, 0, 0)

export function noDirection(of: string, position: unknown): PhysicsError {
  return new PhysicsError(
    "zero-length",
    `Both ends of the ${of} are at ${asVec3(position)}: it has length zero and no direction to push or pull in.`,
    "Start it with some length; if the ends met during the run, take a smaller time step.",
    position,
  )
}
