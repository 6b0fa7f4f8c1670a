// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedNumber, wrongCount } from "./check.ts"
import { math } from "./math.ts"
import { asVec3, Vec3 } from "./vec3.ts"

/**
 * The scalar product of two vectors: a · b = a_x b_x + a_y b_y + a_z b_z.
 *
 * @param a a vector
 * @param b a vector
 * @returns a number, in the product of both units
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @source ISO 80000-2:2019, items 2-18.8
 * @example
 * dot(vec3(1, 2, 3), vec3(4, 5, 6)) // 32
 */
export function dot(a: Vec3, b: Vec3): number {
  if (arguments.length !== 2) wrongCount("dot", 2, arguments.length)
  return asVec3(a, "a").dot(asVec3(b, "b"))
}

/**
 * The vector product, right-handed: a × b is at right angles to both, with magnitude |a| |b| sin θ.
 *
 * @param a a vector
 * @param b a vector
 * @returns a vector, in the product of both units
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @source ISO 80000-2:2019, item 2-18.9
 * @example
 * cross(vec3(1, 2, 3), vec3(4, 5, 6)).toString() // "(-3, 6, -3)"
 */
export function cross(a: Vec3, b: Vec3): Vec3 {
  if (arguments.length !== 2) wrongCount("cross", 2, arguments.length)
  return asVec3(a, "a").cross(asVec3(b, "b"))
}

/**
 * The magnitude of a vector: |v| = √(v_x² + v_y² + v_z²).
 *
 * @param v a vector
 * @returns its length, in the unit of v
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @example
 * magnitude(vec3(2, 3, 6)) // 7
 */
export function magnitude(v: Vec3): number {
  if (arguments.length !== 1) wrongCount("magnitude", 1, arguments.length)
  return asVec3(v, "v").magnitude()
}

/**
 * The unit vector in the direction of v: v / |v|.
 *
 * @param v a vector other than zero
 * @returns a vector of length 1, without unit
 * @throws zero-length, not-a-vector, not-finite, wrong-argument-count
 * @example
 * unit(vec3(0, -2, 0)).toString() // "(0, -1, 0)"
 */
export function unit(v: Vec3): Vec3 {
  if (arguments.length !== 1) wrongCount("unit", 1, arguments.length)
  return asVec3(v, "v").unit()
}

/**
 * The distance between two points: |b − a|.
 *
 * @param a position of one point, m
 * @param b position of the other, m
 * @returns the distance, m
 * @throws not-a-vector, not-finite, wrong-argument-count
 * @example
 * distance(vec3(1, 1, 0), vec3(4, 5, 0)) // 5
 */
export function distance(a: Vec3, b: Vec3): number {
  if (arguments.length !== 2) wrongCount("distance", 2, arguments.length)
  return asVec3(b, "b").subtract(asVec3(a, "a")).magnitude()
}

/**
 * The sum of any number of vectors, such as the net force of several forces.
 *
 * @param vectors the vectors, all in one unit
 * @returns their sum, added in the order given; the zero vector if there are none
 * @throws not-a-vector, not-finite
 * @example
 * sum(vec3(1, 0, 0), vec3(0, 2, 0), vec3(0, 0, 3)).toString() // "(1, 2, 3)"
 */
export function sum(...vectors: Vec3[]): Vec3 {
  let x = 0
  let y = 0
  let z = 0
  for (const value of vectors) {
    const v = asVec3(value, "each term of a sum")
    x += v.x
    y += v.y
    z += v.z
  }
  return new Vec3(x, y, z)
}

/**
 * The component of v along a direction: v · n with n the unit vector. Negative if v points the other way.
 *
 * @param v a vector
 * @param direction a vector of any length but zero
 * @returns a number, in the unit of v
 * @throws zero-length, not-a-vector, not-finite, wrong-argument-count
 * @example
 * component(vec3(3, 4, 0), vec3(0, 10, 0)) // 4
 */
export function component(v: Vec3, direction: Vec3): number {
  if (arguments.length !== 2) wrongCount("component", 2, arguments.length)
  return asVec3(v, "v").dot(asVec3(direction, "direction").unit())
}

/**
 * The part of v along a direction: (v · n) n with n the unit vector. Together with across(v, direction) it makes up v.
 *
 * @param v a vector
 * @param direction a vector of any length but zero
 * @returns a vector parallel to the direction, in the unit of v
 * @throws zero-length, not-a-vector, not-finite, wrong-argument-count
 * @example
 * along(vec3(3, 4, 0), vec3(0, 10, 0)).toString() // "(0, 4, 0)"
 */
export function along(v: Vec3, direction: Vec3): Vec3 {
  if (arguments.length !== 2) wrongCount("along", 2, arguments.length)
  const n = asVec3(direction, "direction").unit()
  return n.times(asVec3(v, "v").dot(n))
}

/**
 * The part of v at right angles to a direction: v − (v · n) n with n the unit vector.
 *
 * @param v a vector
 * @param direction a vector of any length but zero
 * @returns a vector at right angles to the direction, in the unit of v
 * @throws zero-length, not-a-vector, not-finite, wrong-argument-count
 * @example
 * across(vec3(3, 4, 0), vec3(0, 10, 0)).toString() // "(3, 0, 0)"
 */
export function across(v: Vec3, direction: Vec3): Vec3 {
  if (arguments.length !== 2) wrongCount("across", 2, arguments.length)
  const n = asVec3(direction, "direction").unit()
  const a = asVec3(v, "v")
  return a.subtract(n.times(a.dot(n)))
}

/**
 * The angle between two vectors, 0 to π: θ = atan2(|a × b|, a · b), which keeps its accuracy for nearly parallel vectors.
 *
 * @param a a vector other than zero
 * @param b a vector other than zero
 * @returns the angle, rad
 * @throws zero-length, not-a-vector, not-finite, wrong-argument-count
 * @example
 * angleBetween(vec3(1, 0, 0), vec3(0, 5, 0)) // 1.5707963267948966
 */
export function angleBetween(a: Vec3, b: Vec3): number {
  if (arguments.length !== 2) wrongCount("angleBetween", 2, arguments.length)
  const m = asVec3(a, "a").unit()
  const n = asVec3(b, "b").unit()
  return math.atan2(m.cross(n).magnitude(), m.dot(n))
}

/**
 * The vector turned about an axis through the origin, right-handed (Rodrigues' formula):
 * v cos θ + (n × v) sin θ + n (n · v)(1 − cos θ).
 *
 * @param v a vector
 * @param axis direction of the axis, of any length but zero; vec3(0, 0, 1) turns in the x-y plane
 * @param angle θ in rad, positive counter-clockwise when the axis points at the eye
 * @returns the turned vector, in the unit of v
 * @throws zero-length, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source O. Rodrigues, J. Math. Pures Appl. 5, 380 (1840)
 * @example
 * rotate(vec3(0, 2, 0), vec3(0, 0, 1), 0).toString() // "(0, 2, 0)"
 */
export function rotate(v: Vec3, axis: Vec3, angle: number): Vec3 {
  if (arguments.length !== 3) wrongCount("rotate", 3, arguments.length)
  const a = asVec3(v, "v")
  const n = asVec3(axis, "axis").unit()
  const theta = checkedNumber(angle, "angle")
  const cosine = math.cos(theta)
  return a
    .times(cosine)
    .add(n.cross(a).times(math.sin(theta)))
    .add(n.times(n.dot(a) * (1 - cosine)))
}
