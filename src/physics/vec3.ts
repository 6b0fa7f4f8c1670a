// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedNumber, checkedVector, wrongCount } from "./check.ts"
import { PhysicsError } from "./problem.ts"

/**
 * A vector in space: position, velocity, force, torque, any of them. Plain numbers x, y, z in SI units; never changed after it was made, every operation gives a new one.
 *
 * @example
 * const r = vec3(3, 4, 0)
 * r.magnitude() // 5
 * r.add(vec3(0, 0, 12)).toString() // "(3, 4, 12)"
 */
export class Vec3 {
  readonly x: number
  readonly y: number
  readonly z: number

  /** Use vec3(x, y, z), which checks its arguments. The constructor trusts them: it runs millions of times. */
  constructor(x: number, y: number, z: number) {
    this.x = x
    this.y = y
    this.z = z
  }

  /** The sum, a + b. Both in the same unit. */
  add(other: Vec3): Vec3 {
    const b = other instanceof Vec3 ? other : asVec3(other, "the vector to add")
    return new Vec3(this.x + b.x, this.y + b.y, this.z + b.z)
  }

  /** The difference, a − b. Both in the same unit. */
  subtract(other: Vec3): Vec3 {
    const b = other instanceof Vec3 ? other : asVec3(other, "the vector to subtract")
    return new Vec3(this.x - b.x, this.y - b.y, this.z - b.z)
  }

  /** The vector times a number, s a. */
  times(factor: number): Vec3 {
    const s = typeof factor === "number" ? factor : checkedNumber(factor, "factor")
    return new Vec3(this.x * s, this.y * s, this.z * s)
  }

  /** The vector divided by a number, a / s. */
  over(divisor: number): Vec3 {
    const s = typeof divisor === "number" ? divisor : checkedNumber(divisor, "divisor")
    return new Vec3(this.x / s, this.y / s, this.z / s)
  }

  /** The scalar product, a · b. */
  dot(other: Vec3): number {
    const b = other instanceof Vec3 ? other : asVec3(other, "the second vector of the dot product")
    return this.x * b.x + this.y * b.y + this.z * b.z
  }

  /** The vector product, a × b. */
  cross(other: Vec3): Vec3 {
    const b = other instanceof Vec3 ? other : asVec3(other, "the second vector of the cross product")
    return new Vec3(this.y * b.z - this.z * b.y, this.z * b.x - this.x * b.z, this.x * b.y - this.y * b.x)
  }

  /** The length |a|, without overflow or underflow for very long or very short vectors. */
  magnitude(): number {
    const square = this.x * this.x + this.y * this.y + this.z * this.z
    return square > 1e-280 && square < 1e300 ? Math.sqrt(square) : scaledMagnitude(this)
  }

  /** The vector of length 1 in the same direction. A zero vector has none: that is an error. */
  unit(): Vec3 {
    const length = this.magnitude()
    if (length > 0 && length < Number.POSITIVE_INFINITY) {
      const v =
        length < 1e-300
          ? new Vec3(
              this.x * 3.273390607896142e150,
              this.y * 3.273390607896142e150,
              this.z * 3.273390607896142e150,
            )
          : this
      return v === this ? this.over(length) : v.over(v.magnitude())
    }
    if (length === 0) {
      throw new PhysicsError(
        "zero-length",
        "A vector of length zero has no direction, so it has no unit vector.",
        "Check that the two points differ, or that the body moves, before you ask for a direction.",
        this,
      )
    }
    checkedVector(this, "the vector whose direction is wanted")
    throw new PhysicsError(
      "not-finite",
      `The vector ${this} is too long for its length to be a number.`,
      "Find the step in which it grew: the time step may be too large.",
      this,
    )
  }

  /** The opposite vector, −a. */
  negated(): Vec3 {
    return new Vec3(-this.x, -this.y, -this.z)
  }

  /** True if all three components are the same numbers. */
  equals(other: Vec3): boolean {
    return isVec3(other) && this.x === other.x && this.y === other.y && this.z === other.z
  }

  /** The vector as text, such as (3, 4, 0). */
  toString(): string {
    return `(${this.x}, ${this.y}, ${this.z})`
  }

  toJSON(): { x: number; y: number; z: number } {
    return { x: this.x, y: this.y, z: this.z }
  }

  /** As text a vector reads (3, 4, 0). Where a single number is wanted it is an error, not NaN. */
  [Symbol.toPrimitive](hint: string): string {
    if (hint === "string") return this.toString()
    throw new PhysicsError(
      "vector-as-number",
      "A vector has no single number as its value.",
      "Use magnitude(v), or one component such as v.x.",
      this,
    )
  }
}

/**
 * A vector from its three components.
 *
 * @param x component along x, any SI unit
 * @param y component along y, same unit
 * @param z component along z, same unit; 0 for motion in the plane
 * @returns the vector (x, y, z)
 * @throws wrong-argument-count, not-a-number, not-finite
 * @example
 * vec3(1, 2, 3).toString() // "(1, 2, 3)"
 */
export function vec3(x: number, y: number, z: number): Vec3 {
  if (arguments.length !== 3) wrongCount("vec3", 3, arguments.length)
  if (typeof x === "number" && typeof y === "number" && typeof z === "number") {
    if (Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(z)) return new Vec3(x, y, z)
  }
  return new Vec3(checkedNumber(x, "x"), checkedNumber(y, "y"), checkedNumber(z, "z"))
}

/**
 * Whether a value is a vector: made by vec3, or an object with the numbers x, y and z, as a vector becomes when it is copied through JSON.
 *
 * @param value anything
 * @returns true or false
 * @example
 * isVec3(vec3(1, 2, 3)) // true
 * isVec3(5) // false
 */
export function isVec3(value: unknown): value is Vec3 {
  if (value instanceof Vec3) return true
  if (typeof value !== "object" || value === null) return false
  const v = value as Record<string, unknown>
  return typeof v.x === "number" && typeof v.y === "number" && typeof v.z === "number"
}

/**
 * The vector itself, or one made from a plain object {x, y, z}, such as JSON or a structured copy leaves.
 *
 * @param value a vector or an object with finite numbers x, y, z
 * @param name what to call it in a message
 * @returns a Vec3
 * @throws not-a-vector, not-finite
 * @example
 * asVec3(JSON.parse('{"x":1,"y":2,"z":3}')).magnitude() // 3.7416573867739413
 */
export function asVec3(value: unknown, name = "the value"): Vec3 {
  // a sum is finite only if its terms are; sums that overflow are looked at again below
  if (value instanceof Vec3 && Number.isFinite(value.x + value.y + value.z)) return value
  const v = checkedVector(value, name)
  return v instanceof Vec3 ? v : new Vec3(v.x, v.y, v.z)
}

function scaledMagnitude(v: Vec3): number {
  const largest = Math.max(Math.abs(v.x), Math.abs(v.y), Math.abs(v.z))
  if (!(largest > 0) || largest === Number.POSITIVE_INFINITY) return largest
  const s = largest > 1 ? 2.409919865102884e-181 : 4.149515568880993e180
  const x = v.x * s
  const y = v.y * s
  const z = v.z * s
  return Math.sqrt(x * x + y * y + z * z) / s
}
