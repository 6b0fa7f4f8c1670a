/*
 * From text to runnable for a 40-line cell, and the lowering alone for a 200-line cell, in Node. Each round changes one line, so
 * that nothing can be remembered. Bars: 10 ms at the median, 40 ms at the 95th percentile; 5 ms for parsing and rewriting 200 lines.
 */
import { assembleProgram } from "../../../src/cell/assemble.ts"
import { compile, lower } from "../../../src/cell/compile.ts"
import { createNodeStripper } from "../../../src/cell/strip.node.ts"
import { longCell } from "./long-cell.ts"

const programOf = (text: string) =>
  assembleProgram([{ name: "cell", line: 1, segments: [{ kind: "given", text }] }], {}, ["mass"], "dt")

const at = (values: readonly number[], share: number): string =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * share)]!.toFixed(2)

async function measure(name: string, rounds: number, work: (round: number) => unknown): Promise<void> {
  const times: number[] = []
  for (let i = 0; i < rounds; i++) {
    const started = performance.now()
    await work(i)
    times.push(performance.now() - started)
  }
  const first = times.shift()!
  const rest = times.slice(Math.floor(times.length / 5))
  console.log(
    `${name.padEnd(34)} first ${first.toFixed(0)} ms, then median ${at(rest, 0.5)} ms, 95th percentile ${at(rest, 0.95)} ms`,
  )
}

const strip = await createNodeStripper()
await measure("40 lines, text to runnable", 200, i => compile(programOf(longCell(40, i)), strip))
await measure("40 lines, lowering both texts", 200, i => {
  lower(programOf(longCell(40, i)), { trace: false })
  lower(programOf(longCell(40, i)), { trace: true })
})
await measure("200 lines, parse and rewrite", 200, i => lower(programOf(longCell(200, i)), { trace: false }))
process.exit(0)
