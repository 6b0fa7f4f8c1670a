import { assembleProgram } from "../../../src/cell/assemble.ts"
import { compile, traceProgram } from "../../../src/cell/compile.ts"
import type { Compiled, CompileResult } from "../../../src/cell/contract.ts"
import { createNodeStripper } from "../../../src/cell/strip.node.ts"
import type { RunRequest } from "../../../src/run/contract.ts"

const stripper = createNodeStripper()

/** One or more cells compiled as a worksheet would have them, or the compiler's objections. */
export async function tryCompile(...cells: readonly string[]): Promise<CompileResult> {
  const sources = cells.map((text, i) => ({
    name: i === 0 ? "drop" : `cell${i + 1}`,
    line: 1,
    segments: [{ kind: "given" as const, text }],
  }))
  return compile(assembleProgram(sources, {}, ["height"], "dt"), await stripper)
}

/** The same without the text that finds the place of a failure, as marking compiles; and where that text is made then. */
export const withoutTrace = (program: Compiled): Compiled => ({ ...program, traceJs: null })
export const makeTrace = async (program: Compiled): Promise<Compiled | null> =>
  traceProgram(program, await stripper)

/** The compiled program. @throws in the words of the compiler */
export async function compiled(...cells: readonly string[]): Promise<Compiled> {
  const result = await tryCompile(...cells)
  if (!result.ok) throw new Error(result.problems.map(p => `${p.code}: ${p.text}`).join("\n"))
  return result.compiled
}

/** A program that the compiler never saw: the worst that could reach a runner. */
export function raw(js: string): Compiled {
  return {
    js,
    traceJs: js,
    sites: [],
    program: {
      text: js,
      cells: [{ name: "drop", from: 0, to: js.length }],
      blanks: [],
      parameters: ["height"],
      timeStep: "dt",
    },
  }
}

export const request = (program: Compiled, more: Partial<RunRequest> = {}): RunRequest => ({
  compiled: program,
  parameters: { height: 2 },
  seed: 7,
  ...more,
})

/** A falling key, 1000 steps; the honest program of these tests. */
export const fallingKey = `
const mass = 0.25
const g = vec3(0, -9.81, 0)
let r = vec3(0, height, 0)
let p = vec3(0, 0, 0)
const dt = 0.001
let t = 0
for (let i = 0; i < 1000; i++) {
  const Fnet = mass * g
  p = p + Fnet * dt
  r = r + (p / mass) * dt
  t = t + dt
  record(t, { key: { position: r, momentum: p, forces: { weight: Fnet } } })
}
`
