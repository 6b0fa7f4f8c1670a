import type { Problem } from "../cell/problem.ts"

/**
 * What is said, one message a line: of what stopped the run before kinds, of kinds before units. A run that stopped in a given
 * line for what a blank handed on is said only if the look at kinds finds nothing in the blanks: that finding
 * stands in the student's own line. Where both say the same of a line, kinds do so with more words.
 */
export function firstOfEachLine(
  stops: readonly Problem[],
  kinds: readonly Problem[],
  units: readonly Problem[],
): readonly Problem[] {
  // a line that does nothing is remarked, but stops no run
  const own = kinds.some(({ code, where }) => code !== "no-effect" && where?.blank !== undefined)
  const found = stops.filter(
    ({ code, where }) =>
      where?.cell === undefined ||
      !(
        (own && where.blank === undefined) ||
        kinds.some(
          one => one.code === code && one.where?.cell === where.cell && one.where?.line === where.line,
        )
      ),
  )
  for (const list of [kinds, units])
    found.push(
      ...list.filter(
        one => !found.some(({ where }) => where?.cell === one.where?.cell && where?.line === one.where?.line),
      ),
    )
  return found
}

export const notJudged = (cause: unknown): Problem => ({
  code: "page-not-judged",
  text: `This motion could not be compared with the reference: ${cause instanceof Error ? cause.message : String(cause)}`,
  todo: "Load the page again; what you typed is kept. If it stays so, tell your teacher.",
})
