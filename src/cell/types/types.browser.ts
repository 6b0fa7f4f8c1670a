import type { Program } from "../contract.ts"
import { createLoading } from "../loading.ts"
import type { Answers } from "./contract.ts"
import type { KnownParameter } from "./surroundings.ts"
import type { Ask, FromTypes, ToTypes } from "./types.worker.ts"

/** Where the build puts the declarations, beside the page. */
const declarations = "reference/declarations.json"

export interface PageTypes {
  /** resolves when the checker is there; rejects if it cannot be loaded */
  readonly ready: Promise<void>
  ask<K extends keyof Answers>(
    kind: K,
    program: Program,
    parameters: readonly KnownParameter[],
    offset?: number,
    name?: string,
  ): Promise<Answers[K]>
  close(): void
}

/** The checker of the page, in a worker of its own: about a megabyte, so create it when nothing else is waited for. */
export function createPageTypes(): PageTypes {
  const worker = new Worker(new URL("./types.worker.ts", import.meta.url), { type: "module" })
  const asked = new Map<number, { resolve: (answer: never) => void; reject: (reason: Error) => void }>()
  let count = 0
  const { ready, loaded, lost } = createLoading()
  const fail = (message: string): void => {
    const reason = new Error(`The check of kinds could not be used: ${message}`)
    lost(reason)
    for (const { reject } of asked.values()) reject(reason)
    asked.clear()
  }
  worker.onerror = event => fail(event.message || "its file did not load")
  worker.onmessage = ({ data }: MessageEvent<FromTypes>) => {
    if (data.kind === "ready") loaded()
    else if (data.kind === "failed") fail(data.message)
    else {
      asked.get(data.id)?.resolve(data.answer as never)
      asked.delete(data.id)
    }
  }
  const send = (message: ToTypes): void => worker.postMessage(message)
  send({ kind: "start", declarations: new URL(declarations, location.href).href })
  return {
    ready,
    ask: (kind, program, parameters, offset = 0, name = "") =>
      new Promise((resolve, reject) => {
        const id = ++count
        asked.set(id, { resolve, reject })
        const known = parameters.map(one => ({ name: one.name, label: one.label, unit: one.unit }))
        send({ kind, id, program, parameters: known, offset, name } satisfies Ask)
      }),
    close() {
      worker.terminate()
      fail("it was closed")
    },
  }
}
