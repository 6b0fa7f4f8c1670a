import { type Annotation, type FunctionNode, readTree } from "../tree/index.ts"

/**
 * What the functions of the physics library take and give, one declaration each. In a unit, X, Y and Z stand for any
 * unit, the same one throughout a declaration; other symbols are those of the SI; a fractional power is written X^(1|3). A type `Any` is not looked at.
 */
const declarations = `
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
`

/** Methods of vectors; the vector itself comes first. */
const methodDeclarations = `
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
const mathDeclarations = `
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

export type Signatures = ReadonlyMap<string, FunctionNode>

/** Types that declarations, and programs, name: what a body or a spring is made of. */
export const libraryTypes = new Map<string, Annotation>()

function read(text: string): Signatures {
  const found = new Map<string, FunctionNode>()
  for (const statement of readTree(text).body)
    if (statement.kind === "functionDeclaration" && statement.function.name)
      found.set(statement.function.name, statement.function)
    else if (statement.kind === "type") libraryTypes.set(statement.name, statement.annotation)
  return found
}

export const librarySignatures: Signatures = read(declarations)
export const methodSignatures: Signatures = read(methodDeclarations)
export const mathSignatures: Signatures = read(mathDeclarations)

const shape = (type: Annotation | null): "vector" | "scalar" | "unknown" =>
  type?.kind === "vector" || type?.kind === "scalar" ? type.kind : "unknown"

/** Whether a function of the library gives a vector or a number. */
export const libraryShapes: ReadonlyMap<string, "vector" | "scalar" | "unknown"> = new Map(
  [...librarySignatures].map(([name, signature]) => [name, shape(signature.returns)]),
)
