// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import {
  checkedAmount,
  checkedNumber,
  checkedOptions,
  checkedPositive,
  unknownKind,
  wrongCount,
} from "../check.ts"
import { asVec3, type Vec3 } from "../vec3.ts"

export interface BuoyancyOptions {
  /** ρ of the fluid, kg/m³, ≥ 0; about 1000 for fresh water, 1025 for sea water */
  readonly fluidDensity: number
  /** V below the surface, m³, ≥ 0; immersedVolume finds it for common shapes */
  readonly displacedVolume: number
}

/**
 * The buoyant force on a body (Archimedes): F = −ρ V g, the weight of the fluid that it displaces, upwards.
 *
 * @param field g in N/kg, a vector pointing down
 * @param options fluidDensity and displacedVolume
 * @returns the force on the body, N
 * @throws out-of-range, missing-option, unknown-option, not-a-vector, not-a-number, not-finite, wrong-argument-count
 * @source Archimedes, On Floating Bodies, book I, prop. 5–7
 * @example
 * buoyantForce(vec3(0, -10, 0), { fluidDensity: 1000, displacedVolume: 0.25 }).toString() // "(0, 2500, 0)"
 */
export function buoyantForce(field: Vec3, options: BuoyancyOptions): Vec3 {
  if (arguments.length > 2) wrongCount("buoyantForce", 2, arguments.length)
  checkedOptions(options, "buoyantForce", { fluidDensity: "kg/m³", displacedVolume: "m³" })
  const g = asVec3(field, "field")
  const rho = checkedAmount(options.fluidDensity, "fluidDensity")
  const displaced = checkedAmount(options.displacedVolume, "displacedVolume")
  return g.times(0).subtract(g.times(rho * displaced))
}

/** A floating body's outer shape, upright: its dimensions in m, > 0. */
export type FloatingShape =
  | { readonly kind: "box"; readonly length: number; readonly width: number; readonly height: number }
  | { readonly kind: "uprightCylinder"; readonly radius: number; readonly height: number }
  | { readonly kind: "sphere"; readonly radius: number }

/**
 * The volume of a floating body below the surface, from how deep its lowest point lies.
 * Upright prisms: base area times depth; sphere: V = π d² (3 R − d) / 3. Zero above the water, the whole volume below it.
 *
 * @param shape { kind: "box", length, width, height }, { kind: "uprightCylinder", radius, height } or { kind: "sphere", radius }
 * @param depth of the lowest point below the surface, m; negative while the body is in the air
 * @returns the displaced volume, m³
 * @throws not-positive, unknown-choice, not-a-number, not-finite, wrong-argument-count
 * @source spherical segment: Archimedes, On the Sphere and Cylinder, book II, prop. 2
 * @example
 * immersedVolume({ kind: "box", length: 2, width: 1, height: 0.5 }, 0.25) // 0.5
 * immersedVolume({ kind: "sphere", radius: 1 }, 1) // 2.0943951023931953
 */
export function immersedVolume(shape: FloatingShape, depth: number): number {
  if (arguments.length > 2) wrongCount("immersedVolume", 2, arguments.length)
  const d = Math.max(0, checkedNumber(depth, "depth"))
  switch (shape?.kind) {
    case "box": {
      const area = checkedPositive(shape.length, "length") * checkedPositive(shape.width, "width")
      return area * Math.min(d, checkedPositive(shape.height, "height"))
    }
    case "uprightCylinder": {
      const r = checkedPositive(shape.radius, "radius")
      return Math.PI * r * r * Math.min(d, checkedPositive(shape.height, "height"))
    }
    case "sphere": {
      const r = checkedPositive(shape.radius, "radius")
      const h = Math.min(d, 2 * r)
      return (Math.PI * h * h * (3 * r - h)) / 3
    }
    default:
      throw unknownKind(shape, "shape", ["box", "uprightCylinder", "sphere"])
  }
}
