import type { Recording } from "../run/contract.ts"
import type { Check } from "../worksheet/contract.ts"
import type { Looked, Sensitive } from "./contract.ts"

/** Runs by step factor, descending. */
export interface Runs {
  readonly factors: readonly number[]
  readonly runs: readonly (readonly Recording[])[]
  /** of a reference: cells with a chaotic motion */
  readonly sensitive?: readonly Sensitive[]
}

/** What a rule is asked about: one check, and the motions of student and reference by factor. */
export interface Asked {
  readonly check: Check
  readonly student: Runs
  readonly reference: Runs
  /** what the text shows; null or left out where nobody looked */
  readonly looked?: Looked | null
}

/** What a rule found. Whole sentences; numbers with units; nothing of the answer. */
export interface Finding {
  readonly met: boolean
  /** runs at a shorter step would tell more surely */
  readonly undecided: boolean
  readonly departsAt: number | null
  /** what the motion does right, as far as it goes; "" for nothing */
  readonly right: string
  /** the first thing that is wrong; "" when met */
  readonly wrong: string
  /** where to look on the bench */
  readonly look: string
  /** what was recorded is right, but does not reach over the reference's time: the check's own hint would mislead */
  readonly onlyReach: boolean
  /** up to here alone the motion was compared point by point, s; null for to its end */
  readonly horizon: number | null
  /** the slip that the rule itself sees; null where that is for the motion to tell */
  readonly slip: string | null
  /** how far beyond (> 1) or within (< 1) its tolerance the motion lies */
  readonly ratio: number
}

export const found = (finding: Partial<Finding> & { met: boolean }): Finding => ({
  undecided: false,
  departsAt: null,
  right: "",
  wrong: "",
  look: "",
  onlyReach: false,
  horizon: null,
  slip: null,
  ratio: finding.met ? 0 : Number.POSITIVE_INFINITY,
  ...finding,
})
