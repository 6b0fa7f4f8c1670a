import { lineAt, placeOf } from "../assemble.ts"
import type { Compiled } from "../contract.ts"
import type { Problem } from "../problem.ts"
import type { NotFinite } from "./tracer.ts"

/** Codes of failures behind which a number that is no ordinary one may stand. */
const suspects = new Set(["not-finite", "record-value", "record-time", "out-of-range", "not-positive"])

/**
 * Where a run broke off because of NaN or infinity, the place where that first came up, instead of the place where it was
 * noticed; null where the failure has another reason.
 */
export function notFiniteProblem(problem: Problem, compiled: Compiled, found: NotFinite): Problem | null {
  if (!suspects.has(problem.code) || !/NaN|[Ii]nfinit|not finite/.test(`${problem.text} ${problem.todo}`))
    return null
  const site = compiled.sites[found.site]
  if (site === undefined) return null
  const { program } = compiled
  const source = program.text.slice(site.from, site.to)
  const name =
    /^([\p{ID_Start}_$][\p{ID_Continue}$]*(?:\.[\p{ID_Continue}$]+)*)\s*(?::[^=]*)?[-+*/]?=(?!=)/u.exec(
      source,
    )?.[1]
  const what = name ?? (source.length < 40 ? source.replace(/\s+/g, " ") : "A value")
  const which =
    found.count === 1 ? "the first time this line runs" : `the ${ordinal(found.count)} time this line runs`
  const excerpt = lineAt(program.text, site.from).slice(0, 200)
  return {
    code: found.grown ? "grew-without-bound" : "became-not-finite",
    text: `${what} becomes ${found.value === "NaN" ? "NaN, which is no number," : "infinite"} here, ${which}${found.grown && found.count > 1 ? ", after it or another quantity grew beyond all measure" : ""}.`,
    todo: found.grown
      ? "Look for a force that drives instead of holding back, or take a shorter time step."
      : "Look in this line for a division by zero, the root of a negative number, or a name without a value.",
    where: placeOf(program, site.from, site.to),
    ...(excerpt === "" ? {} : { excerpt }),
  }
}

function ordinal(n: number): string {
  const tens = n % 100
  const ending = tens > 10 && tens < 14 ? "th" : (["th", "st", "nd", "rd"][n % 10] ?? "th")
  return `${n}${ending}`
}
