import "../lockdown.ts"
import type { FromPlace, ToPlace } from "../protocol.ts"
import { createRealm } from "../realm.ts"
import { createServer } from "../serve.ts"
import { withholdHostPowers } from "../withhold.ts"
import { pack } from "./columns.ts"

// Most programs are run two or three times and never again: the engine's best compiler costs more than it gains there, so
// it waits for longer loops. A motion of a hundred thousand steps still gets it. An engine without this setting goes on as it is.
process.getBuiltinModule?.("node:v8").setFlagsFromString("--interrupt-budget=600000")

/** The process in which programs run: takes runs from its parent over the channel that it was started with. */
const host = process
const later = setImmediate
const { performance: timer } = globalThis
const turnOfTheHost = (): Promise<void> => new Promise(resolve => void later(resolve))
const clock = (): number => timer.now()
const channel = host.send!.bind(host)

const send = (message: FromPlace): Promise<void> =>
  new Promise((resolve, reject) => {
    channel(pack(message), undefined, undefined, (error: Error | null) =>
      error === null ? resolve() : reject(error),
    )
  })

// Jobs that a program leaves may fail after it; they concern nobody.
host.on("unhandledRejection", () => {})
host.on("disconnect", () => host.exit(0))
for (const name of Object.keys(host.env)) delete host.env[name]
withholdHostPowers()
const serve = createServer(createRealm(clock, turnOfTheHost), send)
host.on("message", message => {
  // A place that cannot even answer is of no use any more; the parent replaces it.
  serve(message as ToPlace).catch(() => host.exit(1))
})
void send({ kind: "ready" })
