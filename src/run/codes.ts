/** Every problem that a run can end with, besides those of the cell language and the physics library. */
export const runProblemCodes = [
  "empty-blank",
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
