import wasmUrl from "esbuild-wasm/esbuild.wasm?url"
import type { FromCompiler, LookedAt, ToCompiler, UnitsJob } from "./compiler.worker.ts"
import type { CompileResult, Program } from "./contract.ts"
import { createLoading } from "./loading.ts"

export interface PageCompiler {
  /** resolves when the first text would not wait for anything; rejects if the compiler cannot be loaded */
  readonly ready: Promise<void>
  /** the newest request wins: one that a later request overtook resolves with the later one's result */
  compile(program: Program): Promise<CompileResult>
  /** the units run and the names in blanks, beside the compiler and not before it */
  units(program: Program, parameters: UnitsJob["parameters"]): Promise<LookedAt>
  close(): void
}

interface Asked {
  readonly id: number
  readonly resolve: (result: CompileResult) => void
  readonly reject: (reason: Error) => void
}

/** The compiler of the page, in a worker of its own. Create it once the page is usable. */
export function createPageCompiler(): PageCompiler {
  const worker = new Worker(new URL("./compiler.worker.ts", import.meta.url), { type: "module" })
  let asked: Asked[] = []
  const measuring = new Map<number, { resolve: (run: LookedAt) => void; reject: (reason: Error) => void }>()
  let count = 0
  const { ready, loaded, lost } = createLoading()

  const fail = (message: string): void => {
    const reason = new Error(`The compiler could not be used: ${message}`)
    lost(reason)
    for (const a of asked) a.reject(reason)
    asked = []
    for (const { reject } of measuring.values()) reject(reason)
    measuring.clear()
  }
  worker.onerror = event => fail(event.message || "its file did not load")
  worker.onmessage = ({ data }: MessageEvent<FromCompiler>) => {
    if (data.kind === "ready") loaded()
    else if (data.kind === "failed") fail(data.message)
    else if (data.kind === "measured") {
      measuring.get(data.id)?.resolve(data.run)
      measuring.delete(data.id)
    } else {
      for (const a of asked) if (a.id <= data.id) a.resolve(data.result)
      asked = asked.filter(a => a.id > data.id)
    }
  }
  const send = (message: ToCompiler): void => worker.postMessage(message)
  send({ kind: "start", wasm: new URL(wasmUrl, location.href).href })

  return {
    ready,
    compile: program =>
      new Promise((resolve, reject) => {
        const id = ++count
        asked.push({ id, resolve, reject })
        send({ kind: "compile", id, program })
      }),
    units: (program, parameters) =>
      new Promise((resolve, reject) => {
        const id = ++count
        measuring.set(id, { resolve, reject })
        send({ kind: "units", id, program, parameters })
      }),
    close() {
      worker.terminate()
      fail("it was closed")
    },
  }
}
