import type { Compiled } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import { readProblem } from "./outcome.ts"
import { RunStop } from "./stop.ts"

/**
 * Puts what ended a program into words. What was thrown belongs to the program and may answer anything when it is
 * looked at, or throw; so the words are read at the door like any message, and there is an answer in every case.
 */
export function explain(thrown: unknown, compiled: Compiled, site: number | undefined): Problem {
  const at = thrown instanceof RunStop ? (thrown.site ?? site) : site
  let explained: Problem | null
  try {
    explained = readProblem(ownWords(thrown, compiled, at))
  } catch {
    explained = null
  }
  if (!(thrown instanceof RunStop)) return explained ?? unexplained
  const { where, excerpt } = explained ?? {}
  return {
    ...thrown.problem,
    ...(where === undefined ? {} : { where }),
    ...(excerpt === undefined ? {} : { excerpt }),
  }
}

const unexplained: Problem = {
  code: "program-failed",
  text: "The program ended with an error of its own making, which does not say what it is.",
  todo: "Throw an Error with a message, or find the line that throws and take it out.",
}

/** Errors of the library and of the operators say it themselves. */
function ownWords(thrown: unknown, compiled: Compiled, site: number | undefined): unknown {
  if (!(thrown instanceof Error)) return null
  const { code, text, todo } = thrown as { code?: unknown; text?: unknown; todo?: unknown }
  const stretch = site === undefined ? undefined : compiled.sites[site]
  const where = stretch === undefined ? undefined : placeOf(compiled, stretch.from)
  if (typeof code === "string") return { code, text, todo, where }
  return { ...unexplained, text: `The program failed: ${String(thrown.message)}.`, where }
}

function placeOf({ program }: Compiled, offset: number): unknown {
  const cell = program.cells.find(c => c.from <= offset && offset <= c.to)
  const before = program.text.slice(cell?.from ?? 0, offset).split("\n")
  return { cell: cell?.name, line: before.length, column: before[before.length - 1]!.length + 1 }
}
