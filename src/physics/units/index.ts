export {
  type Dimension,
  dimensionless,
  dimensionOf,
  type Exponents,
  exponentsOf,
  isKnown,
  per,
  raised,
  sameDimension,
  times,
  unknownDimension,
} from "./dimension.ts"
export { type UnitFailure, unitProblemCodes } from "./failure.ts"
export { formatUnit, type Shape } from "./format.ts"
export { nearestUnit } from "./nearest.ts"
export { parseUnit, type Unit, type UnitResult } from "./parse.ts"
export { nameOfDimension } from "./quantity.ts"
export { namedDerivedUnits, prefixes, unitName, unitSymbols } from "./symbols.ts"
export { unitTokens } from "./tokens.ts"
