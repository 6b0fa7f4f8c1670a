export { libraryConstants, librarySignatures, mathSignatures, methodSignatures } from "./library.ts"
export type { UnitsRun } from "./machine.ts"
export { unitsProblemCodes } from "./problems.ts"
export { unitsRun } from "./units-run.ts"
