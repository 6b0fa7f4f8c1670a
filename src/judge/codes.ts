/** Codes of what the judge finds wanting in a worksheet; each has a page in public/problems. */
export const judgeProblemCodes = [
  "check-cannot-tell",
  "check-met-by-empty",
  "check-never-fails",
  "check-refuses-author",
  "check-refuses-right",
  "slip-passes",
] as const

export type JudgeProblemCode = (typeof judgeProblemCodes)[number]
