import {
  assembleProgram,
  type CellSource,
  type Compiled,
  compile,
  knownNames,
  operators,
  type Program,
} from "../../src/cell/index.ts"
import { createNodeStripper } from "../../src/cell/strip.node.ts"
import * as physics from "../../src/physics/index.ts"

/** One cell with one text and no blank. */
export const cell = (text: string, name = "cell"): CellSource => ({
  name,
  line: 1,
  segments: [{ kind: "given", text }],
})

export const program = (text: string, parameters: readonly string[] = []): Program =>
  assembleProgram([cell(text)], {}, parameters, "dt")

export const strip = await createNodeStripper()

export async function compiled(from: Program | string): Promise<Compiled> {
  const result = await compile(typeof from === "string" ? program(from) : from, strip)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.compiled
}

export interface Ran {
  readonly printed: unknown[]
  readonly recorded: unknown[]
  readonly error: unknown
  readonly turns: number
  readonly site: number | undefined
  readonly cells: number[]
}

const library: Record<string, unknown> = { ...physics }
const globals = globalThis as unknown as Record<string, unknown>

/** Runs a compiled program without a sandbox; the host keeps everything. */
export function run(
  { js, traceJs }: Compiled,
  {
    trace = false,
    maxTurns = 1e6,
    parameters = {},
    stepFactor = 1,
    at,
  }: {
    trace?: boolean
    maxTurns?: number
    parameters?: Record<string, number>
    stepFactor?: number
    at?: (site: number, value?: never) => unknown
  } = {},
): Ran {
  const printed: unknown[] = []
  const recorded: unknown[] = []
  const cells: number[] = []
  let turns = 0
  let site: number | undefined
  let error: unknown
  const lib: Record<string, unknown> = {}
  for (const name of knownNames) lib[name] = library[name] ?? globals[name]
  lib.console = { log: (...values: unknown[]) => printed.push(...values) }
  lib.random = () => 0.5
  const host = {
    ...operators,
    maxTurns,
    overrun(at: number) {
      throw { problem: { code: "endless-loop", text: "stopped", todo: "stop" }, site: at }
    },
    done: (n: number) => {
      turns = n
    },
    enterCell: (i: number) => cells.push(i),
    caught() {},
    timeStep: (value: number) => value * stepFactor,
    emptyBlank(at: number) {
      throw { problem: { code: "empty-blank", text: "empty", todo: "fill" }, site: at }
    },
    at(n: number, value: unknown) {
      site = n
      at?.(n, value as never)
      return value
    },
    record: (time: unknown, quantities: unknown) => recorded.push([time, quantities]),
  }
  try {
    new Function("lib", "parameters", "host", trace ? traceJs! : js)(lib, parameters, host)
  } catch (thrown) {
    error = thrown
  }
  return { printed, recorded, error, turns, site, cells }
}

/** What the program prints, run both ways: the fast text and the tracing one must agree. */
export async function prints(text: string): Promise<unknown[]> {
  const program = await compiled(text)
  const fast = run(program)
  const traced = run(program, { trace: true })
  if (fast.error !== undefined) throw fast.error
  if (traced.error !== undefined) throw traced.error
  if (JSON.stringify(fast.printed.map(String)) !== JSON.stringify(traced.printed.map(String))) {
    throw new Error(`The tracing program prints ${traced.printed} instead of ${fast.printed}`)
  }
  if (fast.turns !== traced.turns) throw new Error("The tracing program counts other turns")
  return fast.printed
}
