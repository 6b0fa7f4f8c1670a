import { initialize, transform } from "esbuild-wasm"
import { compile } from "./compile.ts"
import type { CompileResult, Program } from "./contract.ts"
import { stripOptions } from "./strip.ts"
import { type UnitsRun, unitsRun } from "./units-run/index.ts"

/** What the page says to its compiler, and what it hears back. */
export type ToCompiler = { readonly kind: "start"; readonly wasm: string } | Job | UnitsJob
export interface UnitsJob {
  readonly kind: "units"
  readonly id: number
  readonly program: Program
  readonly parameters: readonly { readonly name: string; readonly unit: string; readonly value: number }[]
}
export interface Job {
  readonly kind: "compile"
  readonly id: number
  readonly program: Program
}
export type FromCompiler =
  | { readonly kind: "ready" }
  | { readonly kind: "failed"; readonly message: string }
  | { readonly kind: "compiled"; readonly id: number; readonly result: CompileResult }
  | { readonly kind: "measured"; readonly id: number; readonly run: UnitsRun }

const say = (message: FromCompiler): void => self.postMessage(message)
const strip = async (typescript: string): Promise<string> => (await transform(typescript, stripOptions)).code

let started: Promise<void> | null = null
/** The newest job not yet begun: a later one takes its place. */
let waiting: Job | null = null
let busy = false

async function start(wasm: string): Promise<void> {
  await initialize({ wasmURL: wasm, worker: false })
  // The first transform is slow; it is made here and not with the student's first line.
  await strip("const warm: number = 1")
}

async function work(): Promise<void> {
  if (busy) return
  busy = true
  while (waiting !== null) {
    const job = waiting
    waiting = null
    try {
      await started
      say({ kind: "compiled", id: job.id, result: await compile(job.program, strip) })
    } catch (cause) {
      say({ kind: "failed", message: String(cause) })
    }
  }
  busy = false
}

self.onmessage = ({ data }: MessageEvent<ToCompiler>) => {
  if (data.kind === "start") {
    started = start(data.wasm)
    started.then(
      () => say({ kind: "ready" }),
      cause => say({ kind: "failed", message: String(cause) }),
    )
  } else if (data.kind === "units") {
    say({ kind: "measured", id: data.id, run: unitsRun(data.program, data.parameters) })
  } else {
    waiting = data
    void work()
  }
}
