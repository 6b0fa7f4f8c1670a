/*
 * Speeds of the units run and of equations on the worksheets that ship:
 * node tests/bench/cell.mjs units
 * Medians of 30 runs each, after the first, in ms of processor time of this process.
 */
import { pathToFileURL } from "node:url"
import { equationsOf } from "../../../src/cell/equation/index.ts"
import { readTree } from "../../../src/cell/tree/index.ts"
import { unitsRun } from "../../../src/cell/units-run/index.ts"
import { shippedPrograms } from "../../equation/worksheets.ts"

function processorTime(action: () => void): number {
  const times: number[] = []
  for (let repeat = 0; repeat < 30; repeat++) {
    const before = process.cpuUsage()
    action()
    const used = process.cpuUsage(before)
    times.push((used.user + used.system) / 1000)
  }
  return times.sort((a, b) => a - b)[times.length >> 1]!
}

console.log("worksheet".padEnd(18), "characters", "first ", "units ", "tree  ", "equations")
for (const { name, program, parameters } of shippedPrograms(
  new URL("worksheets/", pathToFileURL(`${process.cwd()}/`)),
)) {
  const started = performance.now()
  unitsRun(program, parameters)
  const first = performance.now() - started
  const cells = [
    first,
    processorTime(() => unitsRun(program, parameters)),
    processorTime(() => readTree(program.text)),
    processorTime(() => equationsOf(program)),
  ]
  console.log(
    name.padEnd(18),
    String(program.text.length).padEnd(10),
    ...cells.map(ms => ms.toFixed(1).padEnd(6)),
  )
}
