import type { FromPlace, ToPlace } from "./protocol.ts"
import type { Realm } from "./realm.ts"

/**
 * What a child process and a worker both do: take one run at a time, answer with its outcome, and look for the
 * place of a failure when there was one.
 *
 * @param send resolves when the message has left, so that it is not lost if the place is ended afterwards
 */
export async function serveRun(
  realm: Realm,
  { number, request }: ToPlace,
  send: (message: FromPlace) => Promise<void>,
): Promise<void> {
  const end = await realm.run(request)
  const tracing = end.failure !== undefined
  await send({ kind: "outcome", number, outcome: end.outcome, tracing, worn: !realm.sound() })
  if (!tracing) return
  const problem = await realm.trace(request, end)
  await send({ kind: "traced", number, problem, worn: !realm.sound() })
}
