import "../lockdown.ts"
import type { FromPlace, ToPlace } from "../protocol.ts"
import { createRealm } from "../realm.ts"
import { createServer } from "../serve.ts"
import { withholdHostPowers } from "../withhold.ts"

/** The worker in which programs run in a page: takes runs over the port that its first message brings. */
const { performance: timer } = globalThis
const clock = (): number => timer.now()
const bell = new MessageChannel()
const turnOfTheHost = (): Promise<void> =>
  new Promise(resolve => {
    bell.port1.onmessage = () => resolve()
    bell.port2.postMessage(null)
  })

/** The arrays of a recording move to the page; nobody here needs them any more. */
const arraysOf = (message: FromPlace): Transferable[] =>
  message.kind === "outcome"
    ? [
        ...message.outcome.recordings.map(recording => recording.data.buffer as ArrayBuffer),
        ...(message.outcome.lines
          ? [
              message.outcome.lines.kinds.buffer as ArrayBuffer,
              message.outcome.lines.numbers.buffer as ArrayBuffer,
            ]
          : []),
      ]
    : []

const begin = (port: MessagePort): void => {
  const send = async (message: FromPlace): Promise<void> => port.postMessage(message, arraysOf(message))
  const realm = createRealm(clock, turnOfTheHost)
  const serve = createServer(realm, send)
  port.onmessage = ({ data }: MessageEvent<ToPlace>) => {
    // A place that cannot even answer says something that is no answer; the page replaces it.
    serve(data).catch(() => port.postMessage(null))
  }
  void send({ kind: "ready" })
}

addEventListener("message", (event: MessageEvent<{ port: MessagePort }>) => begin(event.data.port), {
  once: true,
})
withholdHostPowers()
