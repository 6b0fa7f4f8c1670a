import type { Kind } from "./infer.ts"

const number = 1
const vector = 2
const other = 4

/** What the functions of the physics library return, by name. A function that is not here may return anything. */
const returns: Readonly<Record<string, Kind>> = {
  vec3: vector,
  asVec3: vector,
  cross: vector,
  unit: vector,
  sum: vector,
  along: vector,
  across: vector,
  rotate: vector,
  dot: number,
  magnitude: number,
  distance: number,
  component: number,
  angleBetween: number,
  isVec3: other,
  random: number,
  parseFloat: number,
  parseInt: number,
  isNaN: other,
  isFinite: other,
  String: other,
  Boolean: other,
  Number: number,
}

export const returnKind = (name: string): Kind | undefined =>
  Object.hasOwn(returns, name) ? returns[name] : undefined

interface Member {
  /** reading it gives */
  readonly value: Kind
  /** calling it gives */
  readonly call: Kind
}

const members = (names: readonly string[], value: Kind, call: Kind): [string, Member][] =>
  names.map(name => [name, { value, call }])

/** The members of a vector. */
export const vectorMembers: ReadonlyMap<string, Member> = new Map([
  ...members(["x", "y", "z"], number, 7),
  ...members(["add", "subtract", "times", "over", "cross", "unit", "negated"], other, vector),
  ...members(["dot", "magnitude"], other, number),
  ...members(["equals", "toString", "toJSON"], other, other),
])
