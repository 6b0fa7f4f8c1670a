import { assembleProgram } from "../../../../src/cell/assemble.ts"
import { createPageCompiler } from "../../../../src/cell/compiler.browser.ts"
import { longCell } from "../long-cell.ts"

/** Milliseconds: until the compiler is ready, and then from text to runnable for each of so many 40-line cells. */
async function measure(rounds: number): Promise<{ ready: number; times: number[] }> {
  const started = performance.now()
  const compiler = createPageCompiler()
  await compiler.ready
  const ready = performance.now() - started
  const programOf = (round: number) =>
    assembleProgram(
      [{ name: "c", line: 1, segments: [{ kind: "given", text: longCell(40, round) }] }],
      {},
      ["mass"],
      "dt",
    )
  const times: number[] = []
  for (let i = 0; i < rounds; i++) {
    const from = performance.now()
    const result = await compiler.compile(programOf(i))
    if (!result.ok) throw new Error(JSON.stringify(result.problems))
    times.push(performance.now() - from)
  }
  compiler.close()
  return { ready, times }
}

Object.assign(window, { measure })
