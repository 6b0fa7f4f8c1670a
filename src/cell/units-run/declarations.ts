/**
 * What the functions of the physics library take and give, one declaration each. In a unit, X, Y and Z stand for any
 * unit, the same one throughout a declaration; other symbols are those of the SI; a fractional power is written X^(1|3). A type `Any` is not looked at.
 */
export const declarations = `
function vec3(x: Scalar<'X'>, y: Scalar<'X'>, z: Scalar<'X'>): Vec3<'X'>
function asVec3(value: Vec3<'X'>, name: Any): Vec3<'X'>
function isVec3(value: Any): Any

function dot(a: Vec3<'X'>, b: Vec3<'Y'>): Scalar<'X Y'>
function cross(a: Vec3<'X'>, b: Vec3<'Y'>): Vec3<'X Y'>
function magnitude(v: Vec3<'X'>): Scalar<'X'>
function unit(v: Vec3<'X'>): Vec3<'1'>
function distance(a: Vec3<'m'>, b: Vec3<'m'>): Scalar<'m'>
function sum(...vectors: Vec3<'X'>[]): Vec3<'X'>
function component(v: Vec3<'X'>, direction: Vec3<'Y'>): Scalar<'X'>
function along(v: Vec3<'X'>, direction: Vec3<'Y'>): Vec3<'X'>
function across(v: Vec3<'X'>, direction: Vec3<'Y'>): Vec3<'X'>
function angleBetween(a: Vec3<'X'>, b: Vec3<'X'>): Scalar<'rad'>
function rotate(v: Vec3<'X'>, axis: Vec3<'Y'>, angle: Scalar<'rad'>): Vec3<'X'>

type Body = { mass: Scalar<'kg'>; position: Vec3<'m'>; momentum: Vec3<'kg m/s'> }
type System = { time: Scalar<'s'>; bodies: Body[] }
type ForceLaw = (system: System) => Vec3<'N'>[]
type Plane = { point: Vec3<'m'>; normal: Any }
type Orientation = { xAxis: Vec3<'1'>; yAxis: Vec3<'1'>; zAxis: Vec3<'1'> }
type RigidBody = {
  mass: Scalar<'kg'>
  momentsOfInertia: Vec3<'kg m^2'>
  position: Vec3<'m'>
  momentum: Vec3<'kg m/s'>
  orientation: Orientation
  angularMomentum: Vec3<'kg m^2/s'>
}
type Shape = { mass: Scalar<'kg'>; radius: Scalar<'m'>; length: Scalar<'m'>; width: Scalar<'m'>; height: Scalar<'m'> }
type FloatingShape = { radius: Scalar<'m'>; length: Scalar<'m'>; width: Scalar<'m'>; height: Scalar<'m'> }

let gravitationalConstant: Scalar<'m^3 kg^-1 s^-2'>
let standardGravity: Scalar<'m/s^2'>
let astronomicalUnit: Scalar<'m'>
let solarMassParameter: Scalar<'m^3/s^2'>
let earthMassParameter: Scalar<'m^3/s^2'>
let jupiterMassParameter: Scalar<'m^3/s^2'>
let earthRadius: Scalar<'m'>

function momentumOf(mass: Scalar<'kg'>, velocity: Vec3<'m/s'>): Vec3<'kg m/s'>
function velocityOf(momentum: Vec3<'kg m/s'>, mass: Scalar<'kg'>): Vec3<'m/s'>
function impulse(force: Vec3<'N'>, timeStep: Scalar<'s'>): Vec3<'N s'>
function updateMomentum(momentum: Vec3<'kg m/s'>, netForce: Vec3<'N'>, timeStep: Scalar<'s'>): Vec3<'kg m/s'>
function updatePosition(position: Vec3<'m'>, momentum: Vec3<'kg m/s'>, mass: Scalar<'kg'>, timeStep: Scalar<'s'>): Vec3<'m'>
function kineticEnergy(momentum: Vec3<'kg m/s'>, mass: Scalar<'kg'>): Scalar<'J'>
function weightEnergy(mass: Scalar<'kg'>, field: Vec3<'N/kg'>, position: Vec3<'m'>): Scalar<'J'>
function torque(position: Vec3<'m'>, force: Vec3<'N'>, about: Vec3<'m'>): Vec3<'N m'>
function angularMomentum(position: Vec3<'m'>, momentum: Vec3<'kg m/s'>, about: Vec3<'m'>): Vec3<'kg m^2/s'>
function updateAngularMomentum(angularMomentum: Vec3<'kg m^2/s'>, netTorque: Vec3<'N m'>, timeStep: Scalar<'s'>): Vec3<'kg m^2/s'>
function velocityOfPoint(velocity: Vec3<'m/s'>, angularVelocity: Vec3<'rad/s'>, arm: Vec3<'m'>): Vec3<'m/s'>

function weight(mass: Scalar<'kg'>, field: Vec3<'N/kg'>): Vec3<'N'>
function gravityForce(position: Vec3<'m'>, otherPosition: Vec3<'m'>, options: { mass: Scalar<'kg'>; otherMass: Scalar<'kg'>; massParameter: Scalar<'m^3/s^2'> }): Vec3<'N'>
function gravityEnergy(position: Vec3<'m'>, otherPosition: Vec3<'m'>, options: { mass: Scalar<'kg'>; otherMass: Scalar<'kg'>; massParameter: Scalar<'m^3/s^2'> }): Scalar<'J'>
type SpringOptions = {
  stiffness: Scalar<'N/m'>
  restLength: Scalar<'m'>
  dampingCoefficient: Scalar<'N s/m'>
  velocity: Vec3<'m/s'>
  anchorVelocity: Vec3<'m/s'>
}
function springForce(position: Vec3<'m'>, anchor: Vec3<'m'>, options: SpringOptions): Vec3<'N'>
function springEnergy(position: Vec3<'m'>, anchor: Vec3<'m'>, options: SpringOptions): Scalar<'J'>
type RopeOptions = {
  length: Scalar<'m'>
  stiffness: Scalar<'N/m'>
  dampingCoefficient: Scalar<'N s/m'>
  velocity: Vec3<'m/s'>
  anchorVelocity: Vec3<'m/s'>
}
function ropeForce(position: Vec3<'m'>, anchor: Vec3<'m'>, options: RopeOptions): Vec3<'N'>
function ropeEnergy(position: Vec3<'m'>, anchor: Vec3<'m'>, options: RopeOptions): Scalar<'J'>
function damperForce(position: Vec3<'m'>, anchor: Vec3<'m'>, options: { dampingCoefficient: Scalar<'N s/m'>; velocity: Vec3<'m/s'>; anchorVelocity: Vec3<'m/s'> }): Vec3<'N'>
type PlaneContactOptions = {
  stiffness: Scalar<'N/m'>
  dampingCoefficient: Scalar<'N s/m'>
  velocity: Vec3<'m/s'>
  radius: Scalar<'m'>
}
function planeContactForce(position: Vec3<'m'>, plane: Plane, options: PlaneContactOptions): Vec3<'N'>
function planeContactEnergy(position: Vec3<'m'>, plane: Plane, options: PlaneContactOptions): Scalar<'J'>
type SphereContactOptions = {
  stiffness: Scalar<'N/m'>
  radius: Scalar<'m'>
  otherRadius: Scalar<'m'>
  dampingCoefficient: Scalar<'N s/m'>
  velocity: Vec3<'m/s'>
  otherVelocity: Vec3<'m/s'>
}
function sphereContactForce(position: Vec3<'m'>, otherPosition: Vec3<'m'>, options: SphereContactOptions): Vec3<'N'>
function sphereContactEnergy(position: Vec3<'m'>, otherPosition: Vec3<'m'>, options: SphereContactOptions): Scalar<'J'>
function contactRestitution(options: { stiffness: Scalar<'N/m'>; mass: Scalar<'kg'>; dampingCoefficient: Scalar<'N s/m'> }): Scalar<'1'>
function contactDamping(options: { restitution: Scalar<'1'>; stiffness: Scalar<'N/m'>; mass: Scalar<'kg'> }): Scalar<'N s/m'>
function kineticFriction(velocity: Vec3<'m/s'>, normalForce: Vec3<'N'>, options: { kineticFrictionCoefficient: Scalar<'1'>; timeStep: Scalar<'s'>; effectiveMass: Scalar<'kg'> }): Vec3<'N'>
function frictionForce(momentum: Vec3<'kg m/s'>, otherForces: Vec3<'N'>, options: { normalForce: Vec3<'N'>; staticFrictionCoefficient: Scalar<'1'>; kineticFrictionCoefficient: Scalar<'1'>; timeStep: Scalar<'s'> }): Vec3<'N'>
function linearDrag(velocity: Vec3<'m/s'>, dragCoefficient: Scalar<'kg/s'>): Vec3<'N'>
function quadraticDrag(velocity: Vec3<'m/s'>, options: { fluidDensity: Scalar<'kg/m^3'>; dragCoefficient: Scalar<'1'>; area: Scalar<'m^2'> }): Vec3<'N'>
function buoyantForce(field: Vec3<'N/kg'>, options: { fluidDensity: Scalar<'kg/m^3'>; displacedVolume: Scalar<'m^3'> }): Vec3<'N'>
function immersedVolume(shape: FloatingShape, depth: Scalar<'m'>): Scalar<'m^3'>
function airDensity(height: Scalar<'m'>): Scalar<'kg/m^3'>

function totalMass(bodies: Body[]): Scalar<'kg'>
function centreOfMass(bodies: Body[]): Vec3<'m'>
function totalMomentum(bodies: Body[]): Vec3<'kg m/s'>
function totalAngularMomentum(bodies: Body[], about: Vec3<'m'>): Vec3<'kg m^2/s'>
function totalKineticEnergy(bodies: Body[]): Scalar<'J'>
function reducedMass(mass: Scalar<'kg'>, otherMass: Scalar<'kg'>): Scalar<'kg'>
function pairForces(bodies: Body[], forceOn: (body: Body, other: Body, index: Any, otherIndex: Any) => Vec3<'N'>): Vec3<'N'>[]

function momentsOfInertia(shape: Shape): Vec3<'kg m^2'>
function momentOfInertia(moments: Vec3<'kg m^2'>, axis: Vec3<'X'>): Scalar<'kg m^2'>
function parallelAxis(momentOfInertia: Scalar<'kg m^2'>, mass: Scalar<'kg'>, distance: Scalar<'m'>): Scalar<'kg m^2'>
function contactMass(mass: Scalar<'kg'>, momentOfInertia: Scalar<'kg m^2'>, arm: Scalar<'m'>): Scalar<'kg'>
function orientation(axis: Vec3<'X'>, angle: Scalar<'rad'>): Orientation
function angularVelocityOf(angularMomentum: Vec3<'kg m^2/s'>, momentsOfInertia: Vec3<'kg m^2'>, orientation: Orientation): Vec3<'rad/s'>
function rotationalEnergy(angularMomentum: Vec3<'kg m^2/s'>, momentsOfInertia: Vec3<'kg m^2'>, orientation: Orientation): Scalar<'J'>
function updateOrientation(orientation: Orientation, angularVelocity: Vec3<'rad/s'>, timeStep: Scalar<'s'>): Orientation
function updateAngle(angle: Scalar<'rad'>, angularMomentum: Vec3<'kg m^2/s'>, momentOfInertia: Scalar<'kg m^2'>, timeStep: Scalar<'s'>): Scalar<'rad'>
function pointInSpace(body: RigidBody, point: Vec3<'m'>): Vec3<'m'>
function stepRigidBody(body: RigidBody, netForce: Vec3<'N'>, netTorque: Vec3<'N m'>, timeStep: Scalar<'s'>): RigidBody

function explicitEuler(system: System, forceLaw: ForceLaw, timeStep: Scalar<'s'>): System
function semiImplicitEuler(system: System, forceLaw: ForceLaw, timeStep: Scalar<'s'>): System
function velocityVerlet(system: System, forceLaw: ForceLaw, timeStep: Scalar<'s'>): System
function rungeKutta4(system: System, forceLaw: ForceLaw, timeStep: Scalar<'s'>): System
function advance(system: System, forceLaw: ForceLaw, options: { timeStep: Scalar<'s'>; steps: Scalar<'1'>; stepper: Any; watch: (system: System, step: Any) => Any }): System
function adaptiveRungeKutta(system: System, forceLaw: ForceLaw, options: { duration: Scalar<'s'>; relativeTolerance: Scalar<'1'>; positionTolerance: Scalar<'m'>; momentumTolerance: Scalar<'kg m/s'>; maxSteps: Scalar<'1'> }): System
function largestTimeStep(options: { stiffness: Scalar<'N/m'>; mass: Scalar<'kg'>; dampingCoefficient: Scalar<'N s/m'>; stepper: Any }): Scalar<'s'>

type MomentumAccount = { start: Vec3<'kg m/s'>; now: Vec3<'kg m/s'>; imbalance: Vec3<'kg m/s'> }
type AngularMomentumAccount = { start: Vec3<'kg m^2/s'>; now: Vec3<'kg m^2/s'>; imbalance: Vec3<'kg m^2/s'> }
type EnergyAccount = { start: Scalar<'J'>; now: Scalar<'J'>; lost: Scalar<'J'>; imbalance: Scalar<'J'> }
type Books = {
  about: Vec3<'m'>
  momentum: MomentumAccount
  angularMomentum: AngularMomentumAccount
  kineticEnergy: EnergyAccount
  mechanicalEnergy: EnergyAccount
}
function openBooks(bodies: Body[], options: { about: Vec3<'m'>; potentialEnergy: Scalar<'J'>; potentialForces: Any; lossyForces: Any }): Books
function bookStep(books: Books, before: Body[], after: Body[], forces: Any, options: { timeStep: Scalar<'s'>; potentialEnergy: Scalar<'J'> }): Books
`

/** Methods of vectors; the vector itself comes first. */
export const methodDeclarations = `
function add(a: Vec3<'X'>, b: Vec3<'X'>): Vec3<'X'>
function subtract(a: Vec3<'X'>, b: Vec3<'X'>): Vec3<'X'>
function times(a: Vec3<'X'>, factor: Scalar<'Y'>): Vec3<'X Y'>
function over(a: Vec3<'X'>, divisor: Scalar<'Y'>): Vec3<'X/Y'>
function dot(a: Vec3<'X'>, b: Vec3<'Y'>): Scalar<'X Y'>
function cross(a: Vec3<'X'>, b: Vec3<'Y'>): Vec3<'X Y'>
function magnitude(a: Vec3<'X'>): Scalar<'X'>
function unit(a: Vec3<'X'>): Vec3<'1'>
function negated(a: Vec3<'X'>): Vec3<'X'>
function equals(a: Vec3<'X'>, b: Vec3<'X'>): Any
function toString(a: Vec3<'X'>): Any
function toJSON(a: Vec3<'X'>): Any
`

/** Mathematics. Powers are not here: their unit depends on the value of the exponent. */
export const mathDeclarations = `
function abs(x: Scalar<'X'>): Scalar<'X'>
function sign(x: Scalar<'X'>): Scalar<'1'>
function sqrt(x: Scalar<'X'>): Scalar<'X^0.5'>
function min(...values: Scalar<'X'>[]): Scalar<'X'>
function max(...values: Scalar<'X'>[]): Scalar<'X'>
function hypot(...values: Scalar<'X'>[]): Scalar<'X'>
function floor(x: Scalar<'X'>): Scalar<'X'>
function ceil(x: Scalar<'X'>): Scalar<'X'>
function round(x: Scalar<'X'>): Scalar<'X'>
function trunc(x: Scalar<'X'>): Scalar<'X'>
function fround(x: Scalar<'X'>): Scalar<'X'>
function sin(angle: Scalar<'rad'>): Scalar<'1'>
function cos(angle: Scalar<'rad'>): Scalar<'1'>
function tan(angle: Scalar<'rad'>): Scalar<'1'>
function asin(x: Scalar<'1'>): Scalar<'rad'>
function acos(x: Scalar<'1'>): Scalar<'rad'>
function atan(x: Scalar<'1'>): Scalar<'rad'>
function atan2(y: Scalar<'X'>, x: Scalar<'X'>): Scalar<'rad'>
function sinh(x: Scalar<'1'>): Scalar<'1'>
function cosh(x: Scalar<'1'>): Scalar<'1'>
function tanh(x: Scalar<'1'>): Scalar<'1'>
function asinh(x: Scalar<'1'>): Scalar<'1'>
function acosh(x: Scalar<'1'>): Scalar<'1'>
function atanh(x: Scalar<'1'>): Scalar<'1'>
function exp(x: Scalar<'1'>): Scalar<'1'>
function expm1(x: Scalar<'1'>): Scalar<'1'>
function log(x: Scalar<'1'>): Scalar<'1'>
function log10(x: Scalar<'1'>): Scalar<'1'>
function log2(x: Scalar<'1'>): Scalar<'1'>
function log1p(x: Scalar<'1'>): Scalar<'1'>
function cbrt(x: Scalar<'X'>): Scalar<'X^(1|3)'>
`
