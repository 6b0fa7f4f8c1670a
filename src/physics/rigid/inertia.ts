// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedPositive, unknownKind, wrongCount } from "../check.ts"
import { asVec3, Vec3 } from "../vec3.ts"

/** A homogeneous body with its centre of mass at the origin of its own axes; mass in kg, lengths in m, all > 0. */
export type Shape =
  | { readonly kind: "solidSphere"; readonly mass: number; readonly radius: number }
  | { readonly kind: "sphericalShell"; readonly mass: number; readonly radius: number }
  /** axis along z */
  | {
      readonly kind: "solidCylinder"
      readonly mass: number
      readonly radius: number
      readonly length: number
    }
  /** thin, axis along z */
  | { readonly kind: "disc"; readonly mass: number; readonly radius: number }
  /** thin ring, axis along z */
  | { readonly kind: "hoop"; readonly mass: number; readonly radius: number }
  /** thin, along x */
  | { readonly kind: "rod"; readonly mass: number; readonly length: number }
  /** length along x, height along y, width along z */
  | {
      readonly kind: "box"
      readonly mass: number
      readonly length: number
      readonly height: number
      readonly width: number
    }
  /** two points joined by a rod without mass, along x */
  | { readonly kind: "pointPair"; readonly mass: number; readonly otherMass: number; readonly length: number }

const kinds = ["solidSphere", "sphericalShell", "solidCylinder", "disc", "hoop", "rod", "box", "pointPair"]

/**
 * The principal moments of inertia of a common shape about its centre of mass, as (I_x, I_y, I_z) along its own axes.
 * Sphere 2/5 m R²; shell 2/3 m R²; cylinder ½ m R² about its axis and m (3 R² + l²)/12 across;
 * disc ½ and ¼ m R²; hoop 1 and ½ m R²; rod m l²/12 across; box m (a² + b²)/12; two points μ l² across.
 *
 * @param shape { kind, mass, … }: solidSphere, sphericalShell, disc, hoop with radius; solidCylinder with radius, length;
 *   rod with length; box with length, height, width; pointPair with otherMass, length
 * @returns the moments in kg m², as a vector
 * @throws unknown-choice, not-positive, missing-option, not-a-number, not-finite, wrong-argument-count
 * @source integrals of r² dm over the shapes, tabulated in any handbook of mechanics (from memory)
 * @example
 * momentsOfInertia({ kind: "disc", mass: 2, radius: 3 }).toString() // "(4.5, 4.5, 9)"
 */
export function momentsOfInertia(shape: Shape): Vec3 {
  if (arguments.length > 1) wrongCount("momentsOfInertia", 1, arguments.length)
  switch (shape?.kind) {
    case "solidSphere":
      return all((2 / 5) * massOf(shape) * square(shape.radius, "radius"))
    case "sphericalShell":
      return all((2 / 3) * massOf(shape) * square(shape.radius, "radius"))
    case "solidCylinder": {
      const r2 = square(shape.radius, "radius")
      const across = (massOf(shape) * (3 * r2 + square(shape.length, "length"))) / 12
      return new Vec3(across, across, 0.5 * shape.mass * r2)
    }
    case "disc": {
      const axial = 0.5 * massOf(shape) * square(shape.radius, "radius")
      return new Vec3(axial / 2, axial / 2, axial)
    }
    case "hoop": {
      const axial = massOf(shape) * square(shape.radius, "radius")
      return new Vec3(axial / 2, axial / 2, axial)
    }
    case "rod": {
      const across = (massOf(shape) * square(shape.length, "length")) / 12
      return new Vec3(0, across, across)
    }
    case "box": {
      const x2 = square(shape.length, "length")
      const y2 = square(shape.height, "height")
      const z2 = square(shape.width, "width")
      const part = massOf(shape) / 12
      return new Vec3(part * (y2 + z2), part * (x2 + z2), part * (x2 + y2))
    }
    case "pointPair": {
      const other = checkedPositive(shape.otherMass, "otherMass")
      const reduced = (massOf(shape) * other) / (shape.mass + other)
      const across = reduced * square(shape.length, "length")
      return new Vec3(0, across, across)
    }
    default:
      throw unknownKind(shape, "shape", kinds)
  }
}

/**
 * The moment of inertia about an axis through the centre of mass: I = I_x n_x² + I_y n_y² + I_z n_z².
 *
 * @param moments principal moments, kg m², from momentsOfInertia
 * @param axis direction in the body's own axes, of any length but zero
 * @returns I in kg m²
 * @throws zero-length, not-a-vector, not-finite, wrong-argument-count
 * @source ISO 80000-4:2019, item 4-7
 * @example
 * momentOfInertia(momentsOfInertia({ kind: "rod", mass: 12, length: 2 }), vec3(0, 0, 1)) // 4
 */
export function momentOfInertia(moments: Vec3, axis: Vec3): number {
  if (arguments.length > 2) wrongCount("momentOfInertia", 2, arguments.length)
  const i = asVec3(moments, "moments")
  const n = asVec3(axis, "axis").unit()
  return i.x * n.x * n.x + i.y * n.y * n.y + i.z * n.z * n.z
}

/**
 * The moment of inertia about a parallel axis (Steiner): I' = I + m d².
 *
 * @param momentOfInertia I about an axis through the centre of mass, kg m², ≥ 0
 * @param mass m in kg, > 0
 * @param distance d between the axes, m, ≥ 0
 * @returns I' in kg m²
 * @throws not-positive, out-of-range, not-a-number, not-finite, wrong-argument-count
 * @source J. Steiner; Huygens–Steiner theorem, tabulated in any handbook of mechanics (from memory)
 * @example
 * parallelAxis(4, 12, 1) // 16
 */
export function parallelAxis(momentOfInertia: number, mass: number, distance: number): number {
  if (arguments.length > 3) wrongCount("parallelAxis", 3, arguments.length)
  const d = checkedAmount(distance, "distance")
  return checkedAmount(momentOfInertia, "momentOfInertia") + checkedPositive(mass, "mass") * d * d
}

/**
 * The mass that a push at a point of a free body sets in motion along the push: 1/m_e = 1/m + a²/I, with a the distance of
 * the line of the push from the centre of mass.
 *
 * @param mass m in kg, > 0
 * @param momentOfInertia I about the axis that the push turns the body round, kg m², > 0
 * @param arm a in m, ≥ 0
 * @returns m_e in kg, between 0 and m
 * @throws not-positive, out-of-range, not-a-number, not-finite, wrong-argument-count
 * @source W. J. Stronge, Impact Mechanics (2000), planar impact (from memory)
 * @example
 * contactMass(7, 2.8, 1) // 2
 */
export function contactMass(mass: number, momentOfInertia: number, arm: number): number {
  if (arguments.length > 3) wrongCount("contactMass", 3, arguments.length)
  const m = checkedPositive(mass, "mass")
  const i = checkedPositive(momentOfInertia, "momentOfInertia")
  const a = checkedAmount(arm, "arm")
  return m / (1 + (m * a * a) / i)
}

function massOf(shape: { readonly mass: number }): number {
  return checkedPositive(shape.mass, "mass")
}

function square(length: number, name: string): number {
  const l = checkedPositive(length, name)
  return l * l
}

function all(moment: number): Vec3 {
  return new Vec3(moment, moment, moment)
}
