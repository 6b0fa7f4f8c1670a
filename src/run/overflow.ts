import { deep } from "../cell/explain.ts"
import { RunStop, stop } from "./stop.ts"

/** Engines word it in one of two ways; one of them has a kind of error of its own for it. */
const wording = /^(?:Maximum call stack size exceeded\.?|too much recursion)$/
const ownKind = (globalThis as { InternalError?: ErrorConstructor }).InternalError

/** Whether an error is the engine's word that its stack is full. Runs nothing of the program's. */
export function isOverflow(thrown: unknown): boolean {
  if (!(thrown instanceof RangeError) && !(ownKind && thrown instanceof ownKind)) return false
  const message: unknown = Object.getOwnPropertyDescriptor(thrown, "message")?.value
  return typeof message === "string" && wording.test(message)
}

/** How deep calls go before the stack is full is chance, so it ends the run, even of a program that catches it. */
export const tooDeep = (site?: number): RunStop => stop("too-deep", deep.text, deep.todo, site)

export const endedByDepth = (thrown: unknown): boolean =>
  thrown instanceof RunStop ? thrown.problem.code === deep.code : isOverflow(thrown)
