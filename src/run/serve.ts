import type { Compiled } from "../cell/contract.ts"
import type { RunRequest } from "./contract.ts"
import type { FromPlace, ToPlace } from "./protocol.ts"
import type { Realm, RunEnd } from "./realm.ts"

/**
 * What a child process and a worker both do: take one run at a time, answer with its outcome, and look for the
 * place of a failure when there was one.
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
  const requestOf = (message: Exclude<ToPlace, { kind: "trace" }>): RunRequest => {
    if (message.kind === "run") return message.request
    if (last === undefined) throw new Error("There was no run before.")
    return { ...message.request, compiled: last }
  }
  const trace = async (number: number, request: RunRequest, end: RunEnd): Promise<void> => {
    const problem = await realm.trace(request, end)
    await send({ kind: "traced", number, problem, worn: !realm.sound() })
  }
  return async message => {
    const { number } = message
    if (message.kind === "trace") {
      if (failed === undefined) throw new Error("Nothing has failed.")
      const { request, end } = failed
      failed = undefined
      return trace(number, { ...request, compiled: message.compiled }, end)
    }
    const request = requestOf(message)
    last = request.compiled
    const end = await realm.run(request)
    const tracing = end.failure !== undefined
    await send({ kind: "outcome", number, outcome: end.outcome, tracing, worn: !realm.sound() })
    if (!tracing) return
    if (request.compiled.traceJs === null) failed = { request, end }
    else await trace(number, request, end)
  }
}
