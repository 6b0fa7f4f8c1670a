/** Codes of what the judge finds wanting in a worksheet, or in its own verdict; each has a page in public/problems. */
export const judgeProblemCodes = [
  "check-cannot-tell",
  "check-met-by-empty",
  "check-never-fails",
  "check-refuses-author",
  "check-refuses-right",
  "runs-too-long",
  "slip-passes",
  "verdict-unsure",
] as const

export type JudgeProblemCode = (typeof judgeProblemCodes)[number]
