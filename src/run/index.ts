export {
  defaultLimits,
  type Limits,
  type Recording,
  type Runner,
  type RunOutcome,
  type RunRequest,
  type Series,
} from "./contract.ts"
