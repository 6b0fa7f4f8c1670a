export { assembleProgram, cellText, placeOf } from "./assemble.ts"
export { compile, lower, traceProgram } from "./compile.ts"
export type {
  CellSource,
  Compiled,
  CompileResult,
  Program,
  Segment,
  TypeStripper,
} from "./contract.ts"
export { type Evidence, explainFailure } from "./explain.ts"
export type { Host } from "./host.ts"
export { checkBlanks } from "./lower.ts"
export { knownNames, languageNames } from "./names.ts"
export { OperatorError } from "./operator-error.ts"
export * as operators from "./operators.ts"
export type { Place, Problem } from "./problem.ts"
export { type CellProblemCode, cellProblemCodes } from "./problems.ts"
export { type Motion, type Overshoot, overshootOf, timeStepProblem } from "./trouble/time-step.ts"
export { createTracer, type NotFinite, type Tracer } from "./trouble/tracer.ts"
