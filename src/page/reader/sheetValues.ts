import type { Verdict } from "../../judge/contract.ts"
import type { Check, StudentSheet } from "../../worksheet/contract.ts"

/** What a verdict that is met leaves open: marking tries other values of the parameters. "" where it does not. */
export function openWords(
  { parameters }: Pick<StudentSheet, "parameters">,
  check: Pick<Check, "draws">,
  verdict: Verdict,
): string {
  const others = check.draws > 0 && parameters.some(parameter => parameter.vary)
  return others && verdict === "met"
    ? "Met with the values of the sheet; other values are tried when it is marked."
    : ""
}

/** Which values a verdict is about: said where the sliders stand elsewhere, and where marking tries others. */
export function valueWords(
  sheet: Pick<StudentSheet, "parameters">,
  check: Pick<Check, "draws">,
  verdict: Verdict,
  varied: boolean,
): string {
  const elsewhere = varied ? "Said of the sheet's own values; the bench shows others." : ""
  return [openWords(sheet, check, verdict), elsewhere].filter(words => words !== "").join(" ")
}
