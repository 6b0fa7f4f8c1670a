import type { CheckResult } from "../judge/contract.ts"
import { slipNamed } from "../judge/slips/catalogue.ts"
import { pairHint, partsOf } from "../judge/slips/pair-words.ts"
import type { Check } from "../worksheet/contract.ts"

/**
 * The hint that a student reads at a check at which a slip was found: the worksheet's words for it there, else the
 * catalogue's, else those of the check. "" where the message holds none.
 */
export function hintIn({ slip, message }: CheckResult, { slips, hint }: Check): string {
  if (slip === null) return ""
  const of = (name: string): string =>
    (Object.hasOwn(slips, name) ? slips[name] : slipNamed(name)?.hint) ?? ""
  const [first, second] = partsOf(slip).map(of)
  const ours = first === undefined || second === undefined ? of(slip) : pairHint(first, second)
  return [ours, hint].find(words => words !== "" && message.includes(words)) ?? ""
}
