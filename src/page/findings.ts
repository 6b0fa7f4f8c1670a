import type { Problem } from "../cell/problem.ts"

/** All of the first list, and of each later one what stands on a line of which nothing has been said yet. */
export function firstOfEachLine(...lists: readonly (readonly Problem[])[]): readonly Problem[] {
  const found: Problem[] = []
  for (const list of lists)
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
