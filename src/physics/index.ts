/** What a cell can call. Names that are not here are free to change. */

export {
  angularMomentum,
  torque,
  updateAngularMomentum,
  velocityOfPoint,
} from "./angular.ts"
export {
  type BookStepOptions,
  type Books,
  bookStep,
  type EnergyAccount,
  type OpenBooksOptions,
  openBooks,
  type VectorAccount,
} from "./books/books.ts"
export {
  astronomicalUnit,
  earthMassParameter,
  earthRadius,
  gravitationalConstant,
  jupiterMassParameter,
  solarMassParameter,
  standardGravity,
} from "./constants.ts"
export { airDensity } from "./forces/atmosphere.ts"
export { type BuoyancyOptions, buoyantForce, type FloatingShape, immersedVolume } from "./forces/buoyancy.ts"
export {
  type Plane,
  type PlaneContactOptions,
  planeContactEnergy,
  planeContactForce,
  type SphereContactOptions,
  sphereContactEnergy,
  sphereContactForce,
} from "./forces/contact.ts"
export { type DamperOptions, damperForce } from "./forces/damper.ts"
export { linearDrag, type QuadraticDragOptions, quadraticDrag } from "./forces/drag.ts"
export {
  type FrictionOptions,
  frictionForce,
  type KineticFrictionOptions,
  kineticFriction,
} from "./forces/friction.ts"
export { type GravityOptions, gravityEnergy, gravityForce } from "./forces/gravity.ts"
export {
  type ContactDampingOptions,
  contactDamping,
  contactRestitution,
  type RestitutionOptions,
} from "./forces/restitution.ts"
export { type RopeOptions, ropeEnergy, ropeForce } from "./forces/rope.ts"
export { type SpringOptions, springEnergy, springForce } from "./forces/spring.ts"
export { weight } from "./forces/weight.ts"
export { math } from "./math.ts"
export {
  impulse,
  kineticEnergy,
  momentumOf,
  updateMomentum,
  updatePosition,
  velocityOf,
  weightEnergy,
} from "./momentum.ts"
export { PhysicsError, type PhysicsProblemCode, physicsProblemCodes } from "./problem.ts"
export { contactMass, momentOfInertia, momentsOfInertia, parallelAxis, type Shape } from "./rigid/inertia.ts"
export {
  angularVelocityOf,
  type Orientation,
  orientation,
  pointInSpace,
  type RigidBody,
  rotationalEnergy,
  stepRigidBody,
  updateAngle,
  updateOrientation,
} from "./rigid/rigid-body.ts"
export { type AdvanceOptions, advance } from "./steppers/advance.ts"
export { type AdaptiveOptions, adaptiveRungeKutta } from "./steppers/dormand-prince.ts"
export { explicitEuler } from "./steppers/explicit-euler.ts"
export {
  type LargestTimeStepOptions,
  largestTimeStep,
  type StepperName,
} from "./steppers/largest-time-step.ts"
export { rungeKutta4 } from "./steppers/runge-kutta.ts"
export { semiImplicitEuler } from "./steppers/semi-implicit-euler.ts"
export type { ForceLaw, Stepper, System } from "./steppers/system.ts"
export { velocityVerlet } from "./steppers/velocity-verlet.ts"
export {
  type Body,
  centreOfMass,
  pairForces,
  reducedMass,
  totalAngularMomentum,
  totalKineticEnergy,
  totalMass,
  totalMomentum,
} from "./systems.ts"
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
