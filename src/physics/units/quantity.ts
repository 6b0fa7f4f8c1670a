import { type Dimension, dimensionOf } from "./dimension.ts"
import type { Shape } from "./format.ts"

/**
 * Names of quantities by dimension, after ISO 80000-3:2019 (space and time) and ISO 80000-4:2019 (mechanics; item
 * numbers where known). Where one dimension has two names, the first is for scalars and the second for vectors.
 */
const names = new Map<Dimension, string | readonly [scalar: string, vector: string]>([
  [0, "a pure number"],
  [dimensionOf({ m: 1 }), ["length", "length"]],
  [dimensionOf({ m: 2 }), "area"],
  [dimensionOf({ m: 3 }), "volume"],
  [dimensionOf({ s: 1 }), "time"],
  [dimensionOf({ s: 2 }), "time squared"],
  [dimensionOf({ s: -1 }), ["frequency or angular speed", "angular velocity"]],
  [dimensionOf({ s: -2 }), "angular acceleration"],
  [dimensionOf({ m: 1, s: -1 }), ["speed", "velocity"]],
  [dimensionOf({ m: 2, s: -2 }), "speed squared"],
  [dimensionOf({ m: 1, s: -2 }), "acceleration"],
  // ISO 80000-4: 4-1 mass, 4-2 density, 4-7 moment of inertia, 4-8 momentum, 4-9.1 force, 4-11 angular momentum
  [dimensionOf({ kg: 1 }), "mass"],
  [dimensionOf({ kg: 1, m: -3 }), "density"],
  [dimensionOf({ kg: 1, m: 2 }), "moment of inertia"],
  [dimensionOf({ kg: 1, m: 1, s: -1 }), "momentum"],
  [dimensionOf({ kg: 1, m: 1, s: -2 }), "force"],
  [dimensionOf({ kg: 1, m: 2, s: -1 }), "angular momentum"],
  // 4-12.1 moment of force (torque), 4-27.1 power, 4-28.1 to 4-28.3 energies
  [dimensionOf({ kg: 1, m: 2, s: -2 }), ["energy or torque", "torque"]],
  [dimensionOf({ kg: 1, m: 2, s: -3 }), "power"],
  [dimensionOf({ kg: 1, m: -1, s: -2 }), "pressure"],
  [dimensionOf({ kg: 1, s: -2 }), "stiffness"],
  [dimensionOf({ kg: 1, s: -1 }), "damping coefficient"],
  [dimensionOf({ kg: 1, m: -1 }), "mass per length"],
  [dimensionOf({ kg: -1 }), "one per mass"],
  [dimensionOf({ m: -1 }), "one per length"],
  [dimensionOf({ kg: 1, m: -1, s: -1 }), "viscosity"],
  [dimensionOf({ A: 1 }), "electric current"],
  [dimensionOf({ A: 1, s: 1 }), "electric charge"],
  [dimensionOf({ K: 1 }), "temperature"],
])

/** What quantity has this dimension: "momentum", "force"; null if it has no customary name. */
export function nameOfDimension(dimension: Dimension, shape: Shape = "scalar"): string | null {
  const name = names.get(dimension)
  if (name === undefined) return null
  return typeof name === "string" ? name : name[shape === "vector" ? 1 : 0]
}
