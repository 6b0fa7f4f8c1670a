import type { Compiled } from "../cell/contract.ts"
import type { RunRequest } from "./contract.ts"
import type { FromPlace, ToPlace } from "./protocol.ts"
import type { Realm, RunEnd } from "./realm.ts"

/**
 * What a child process and a worker both do: run what they are sent, one run after the other, answer each with its
 * outcome, and look for the place of a failure when there was one.
 *
 * @param send resolves when the message has left, so that it is not lost if the place is ended afterwards
 * @returns what takes each message; rejects when the place is of no use any more
 */
export function createServer(
  realm: Realm,
  send: (message: FromPlace) => Promise<void>,
): (message: ToPlace) => Promise<void> {
  let last: Compiled | undefined
  let failed: { readonly request: RunRequest; readonly end: RunEnd } | undefined
  const trace = async (number: number, request: RunRequest, end: RunEnd): Promise<void> => {
    const problem = await realm.trace(request, end)
    await send({ kind: "traced", number, problem, worn: !realm.sound() })
  }
  /** @returns whether the next run may follow at once */
  const run = async (number: number, request: RunRequest): Promise<boolean> => {
    const end = await realm.run(request)
    const tracing = end.failure !== undefined
    const worn = !realm.sound()
    await send({ kind: "outcome", number, outcome: end.outcome, tracing, worn })
    if (!tracing) return !worn
    if (request.compiled.traceJs === null) failed = { request, end }
    else await trace(number, request, end)
    return false
  }
  return async message => {
    if (message.kind === "trace") {
      if (failed === undefined) throw new Error("Nothing has failed.")
      const { request, end } = failed
      failed = undefined
      return trace(message.number, { ...request, compiled: message.compiled }, end)
    }
    const compiled = message.compiled ?? last
    if (compiled === undefined) throw new Error("There was no run before.")
    last = compiled
    let { number } = message
    for (const request of message.requests) if (!(await run(number++, { ...request, compiled }))) return
  }
}
