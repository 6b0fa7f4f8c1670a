/*
 * A cell against the same loop by hand, in one run, turn about; medians. The bars: 2.0 times with the loop guard, 3 times with
 * four vectors recorded every step.
 */
import { assembleProgram } from "../../../src/cell/assemble.ts"
import { lower } from "../../../src/cell/compile.ts"
import { knownNames } from "../../../src/cell/names.ts"
import * as operators from "../../../src/cell/operators.ts"
import { createNodeStripper } from "../../../src/cell/strip.node.ts"
import * as physics from "../../../src/physics/index.ts"
import { createRecorder } from "../../../src/run/record.ts"
import { byHand, plainCell, recordedCell } from "./loop-b.ts"

const strip = await createNodeStripper()
const repeats = Number(process.argv[3] ?? 9)

async function ready(text: string, blind: boolean): Promise<() => string> {
  const cell = { name: "loop", line: 1, segments: [{ kind: "given", text }] } as const
  const lowered = lower(assembleProgram([cell], {}, [], "dt"), { trace: false, blind })
  if (!lowered.ok) throw new Error(JSON.stringify(lowered.problems))
  const js = await strip(lowered.lowered.text)
  return () => {
    const program = new Function("lib", "parameters", "host", fresh(js))
    let printed = ""
    const globals = globalThis as unknown as Record<string, unknown>
    const lib: Record<string, unknown> = {}
    for (const name of knownNames) lib[name] = (physics as Record<string, unknown>)[name] ?? globals[name]
    lib.console = { log: (...values: unknown[]) => (printed = values.join()) }
    const recorder = createRecorder(["loop"], 1e9, physics.Vec3.prototype)
    program(
      lib,
      {},
      {
        ...operators,
        maxTurns: 20_000_000,
        overrun: () => {},
        done: () => {},
        enterCell: () => {},
        timeStep: (x: number) => x,
        record: recorder.record,
        rows: recorder.rows,
      },
    )
    return printed
  }
}

/** A text of its own for each round: a run always meets its program for the first time, and so does the engine. */
let round = 0
const fresh = (js: string): string => `"use strict"; // ${round++}\n${js}`

const runs: Record<string, () => string> = {
  "by hand": () => {
    let printed = ""
    const hand = new Function("console", fresh(byHand))
    hand({ log: (...values: unknown[]) => (printed = values.join()) })
    return printed
  },
  cell: await ready(plainCell, false),
  "cell, recorded": await ready(recordedCell, false),
  "every operator rewritten": await ready(plainCell, true),
  "every operator rewritten, recorded": await ready(recordedCell, true),
}

const times: Record<string, number[]> = {}
const printed = new Set<string>()
const only = process.argv[4]
for (let i = 0; i < repeats; i++) {
  for (const [name, run] of Object.entries(runs)) {
    if (only && !only.split(",").includes(name)) continue
    // the processor's time, all threads: on a busy machine the clock says little
    const before = process.cpuUsage()
    printed.add(run())
    const { user, system } = process.cpuUsage(before)
    times[name] = [...(times[name] ?? []), (user + system) / 1000]
  }
}
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!
const raw = median(times["by hand"]!)
for (const [name, values] of Object.entries(times)) {
  console.log(
    name.padEnd(36),
    `${median(values).toFixed(1)} ns a step (least ${Math.min(...values).toFixed(1)})`,
    `${(median(values) / raw).toFixed(2)} times by hand`,
  )
}
console.log(printed.size === 1 ? "All gave the same bits." : "The bits differ!", [...printed].join("\n"))
process.exit(printed.size === 1 ? 0 : 1)
