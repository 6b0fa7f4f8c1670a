export { type RunProblemCode, runProblemCodes } from "./codes.ts"
export {
  defaultLimits,
  type Limits,
  type Recording,
  type Runner,
  type RunOutcome,
  type RunRequest,
  type Series,
} from "./contract.ts"
export { seededRandom } from "./random.ts"
export { createRecorder, type Recorder } from "./record.ts"
