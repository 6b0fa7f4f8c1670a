/*
 * Speeds of the sandbox in Node: node tests/bench/start.mjs tests/bench/run.ts
 * Prints medians; alternate old and new on one quiet machine to compare.
 */
import { compile } from "../../src/cell/compile.ts"
import { Vec3, vec3 } from "../../src/physics/vec3.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { createRecorder } from "../../src/run/record.ts"
import { compiled, fallingKey, request } from "../run/support/program.ts"

void compile
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!

function recordBench(): void {
  const times: number[] = []
  for (let repeat = 0; repeat < 9; repeat++) {
    const recorder = createRecorder(["drop"], 1e9, Vec3.prototype)
    const started = performance.now()
    for (let i = 0; i < 300_000; i++) {
      const r = vec3(i, 1, 2)
      recorder.record(i, { key: { position: r, momentum: r, forces: { weight: r, drag: r } } })
    }
    const all = performance.now() - started
    const again = performance.now()
    let sum = 0
    for (let i = 0; i < 300_000; i++) {
      const r = vec3(i, 1, 2)
      sum += { key: { position: r, momentum: r, forces: { weight: r, drag: r } } }.key.position.x
    }
    times.push(((all - (performance.now() - again)) / 300_000) * 1e6 + sum * 0)
  }
  console.log("record, 12 numbers and time:", median(times).toFixed(0), "ns a step")
}

async function runBench(): Promise<void> {
  const program = await compiled(fallingKey)
  for (const workers of [1, 2]) {
    const runner = createNodeRunner({ workers })
    await runner.run(request(program))
    const times: number[] = []
    for (let repeat = 0; repeat < 5; repeat++) {
      const started = performance.now()
      await Promise.all(Array.from({ length: 200 }, () => runner.run(request(program))))
      times.push((performance.now() - started) / 200)
    }
    console.log(`run of 1000 steps, ${workers} worker(s):`, median(times).toFixed(2), "ms a run")
    await runner.close()
  }
  const long = await compiled(fallingKey.replace("1000", "100000"))
  for (const fresh of [false, true]) {
    const runner = createNodeRunner({ fresh })
    const times: number[] = []
    const inside: number[] = []
    for (let repeat = 0; repeat < 8; repeat++) {
      const started = performance.now()
      const outcome = await runner.run(request(long))
      times.push(performance.now() - started)
      inside.push(outcome.milliseconds)
    }
    console.log(
      `run of 100 000 steps, ${fresh ? "new" : "same"} process:`,
      median(times).toFixed(0),
      "ms, of it in the program",
      median(inside).toFixed(0),
      "ms",
    )
    await runner.close()
  }
}

recordBench()
await runBench()
process.exit()
