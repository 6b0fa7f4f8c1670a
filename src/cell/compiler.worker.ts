import { initialize, transform } from "esbuild-wasm"
import { assembleProgram } from "./assemble.ts"
import { type BlankWords, blankWords } from "./blank-words.ts"
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
  | { readonly kind: "measured"; readonly id: number; readonly run: LookedAt }

/** What a program's text shows without being run: its units, and what its blanks name, by cell. */
export interface LookedAt extends UnitsRun {
  readonly words: Readonly<Record<string, BlankWords>>
}

const say = (message: FromCompiler): void => self.postMessage(message)

let wasm = ""
let stripper: Promise<void> | null = null

/** Some megabytes, loaded when the first program needs them: one whose types stand for something that runs. */
async function strip(typescript: string): Promise<string> {
  stripper ??= initialize({ wasmURL: wasm, worker: false })
  await stripper
  return (await transform(typescript, stripOptions)).code
}

/** The first programs of a fresh engine are slow; these are none of a student's. */
async function warmUp(): Promise<void> {
  const text = "let p: Vec3 = vec3(1, 0, 0)\nwhile (p.x < 3) { p = p + 0.1 * p / 2; record(p.x, { p }) }"
  const cell = { name: "", line: 1, segments: [{ kind: "given", text }] } as const
  for (let i = 0; i < 5; i++) await compile(assembleProgram([cell], {}, [], "dt"), strip)
}

/** The newest job not yet begun: a later one takes its place. */
let waiting: Job | null = null
let busy = false

async function work(): Promise<void> {
  if (busy) return
  busy = true
  while (waiting !== null) {
    const job = waiting
    waiting = null
    try {
      say({ kind: "compiled", id: job.id, result: await compile(job.program, strip) })
    } catch (cause) {
      say({ kind: "failed", message: String(cause) })
    }
  }
  busy = false
}

self.onmessage = ({ data }: MessageEvent<ToCompiler>) => {
  if (data.kind === "start") {
    wasm = data.wasm
    warmUp().then(
      () => say({ kind: "ready" }),
      cause => say({ kind: "failed", message: String(cause) }),
    )
  } else if (data.kind === "units") {
    const run = { ...unitsRun(data.program, data.parameters), words: blankWords(data.program) }
    say({ kind: "measured", id: data.id, run })
  } else {
    waiting = data
    void work()
  }
}
