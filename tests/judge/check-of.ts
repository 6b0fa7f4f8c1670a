import type { Check, CheckRule } from "../../src/worksheet/contract.ts"

/** A check of one rule over the cell of steppers.ts. */
export const checkOf = (rule: CheckRule): Check => ({
  name: "c",
  cell: "cell",
  rule,
  points: 1,
  says: "",
  hint: "",
  slips: {},
  draws: 0,
})
