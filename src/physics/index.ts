/** What a cell can call. Names that are not here are free to change. */
export { math } from "./math.ts"
export { PhysicsError, type PhysicsProblemCode, physicsProblemCodes } from "./problem.ts"
export { asVec3, isVec3, Vec3, vec3 } from "./vec3.ts"
export {
  across,
  along,
  angleBetween,
  component,
  cross,
  distance,
  dot,
  magnitude,
  rotate,
  sum,
  unit,
} from "./vectors.ts"
