/** Problems that this room words. A run can end with those of the cell language and the physics library as well. */
export const runProblemCodes = [
  "endless-loop",
  "late-call",
  "memory-limit",
  "program-damaged",
  "program-failed",
  "record-shape",
  "record-time",
  "record-value",
  "recorded-too-much",
  "run-lost",
  "run-unavailable",
  "stopped",
  "time-limit",
] as const

export type RunProblemCode = (typeof runProblemCodes)[number]
