/*
 * Speeds of the sandbox: node tests/bench/start.mjs tests/bench/run.ts
 * Medians. Compare only figures of one machine and one hour, old and new in turn; on a busy one trust the ratios.
 */
import { Vec3, vec3 } from "../../src/physics/vec3.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { createRecorder } from "../../src/run/record.ts"
import { openRunnerPage } from "../run/page/open.ts"
import { compiled, fallingKey, request } from "../run/support/program.ts"

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!
const processorTime = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

interface Instant {
  readonly key: {
    readonly position: Vec3
    readonly momentum: Vec3
    readonly forces: { readonly weight: Vec3; readonly drag: Vec3 }
  }
}

/** What the store is measured against: thirteen numbers stored by hand, with nothing checked. */
function byHand(): (t: number, instant: Instant) => void {
  const chunks: Float64Array[] = []
  let chunk = new Float64Array(4096 * 13)
  let at = 0
  return (t, { key: { position, momentum, forces } }) => {
    if (at === chunk.length) {
      chunks.push(chunk)
      chunk = new Float64Array(4096 * 13)
      at = 0
    }
    chunk[at++] = t
    for (const v of [position, momentum, forces.weight, forces.drag]) {
      chunk[at++] = v.x
      chunk[at++] = v.y
      chunk[at++] = v.z
    }
  }
}

function recordBench(): void {
  const rows = 200_000
  const measure = (record: (t: number, instant: Instant) => void): number => {
    const started = processorTime()
    for (let i = 0; i < rows; i++) {
      const r = vec3(i, 1, 2)
      record(i, { key: { position: r, momentum: r, forces: { weight: r, drag: r } } })
    }
    return ((processorTime() - started) / rows) * 1e6
  }
  const figures = { nothing: [] as number[], hand: [] as number[], store: [] as number[] }
  for (let repeat = 0; repeat < 9; repeat++) {
    let last: Instant | undefined
    figures.nothing.push(
      measure((_, instant) => {
        last = instant
      }),
    )
    if (last === undefined) throw new Error("nothing was measured")
    figures.hand.push(measure(byHand()))
    figures.store.push(measure(createRecorder(["drop"], 1e9, Vec3.prototype).record))
  }
  const [nothing, hand, store] = [median(figures.nothing), median(figures.hand), median(figures.store)]
  console.log(
    `record, 12 numbers and time: +${(store - nothing).toFixed(0)} ns a step; by hand, unchecked: +${(hand - nothing).toFixed(0)} ns`,
  )
}

async function nodeBench(): Promise<void> {
  const program = await compiled(fallingKey)
  const rates: Record<string, number> = {}
  for (const [name, options, runs] of [
    ["1 worker", { workers: 1 }, 200],
    ["2 workers", { workers: 2 }, 200],
    ["a new process for each run", { fresh: true, workers: 2 }, 10],
  ] as const) {
    const runner = createNodeRunner(options)
    await runner.run(request(program))
    const times: number[] = []
    for (let repeat = 0; repeat < 5; repeat++) {
      const started = performance.now()
      await Promise.all(Array.from({ length: runs }, () => runner.run(request(program))))
      times.push((performance.now() - started) / runs)
    }
    rates[name] = median(times)
    console.log(`Node, run of 1000 steps, ${name}: ${median(times).toFixed(2)} ms a run`)
    await runner.close()
  }
  console.log(
    `ratio of the last two: ${(rates["a new process for each run"]! / rates["2 workers"]!).toFixed(0)}`,
  )
  const long = await compiled(fallingKey.replace("1000", "100000"))
  const runner = createNodeRunner()
  const inside: number[] = []
  for (let repeat = 0; repeat < 8; repeat++) inside.push((await runner.run(request(long))).milliseconds)
  console.log(
    `Node, 100 000 steps with their recording: ${((median(inside) / 100_000) * 1e6).toFixed(0)} ns a step`,
  )
  await runner.close()
}

async function pageBench(): Promise<void> {
  const { page, close } = await openRunnerPage()
  const program = await compiled(fallingKey)
  await page.reload()
  await page.waitForFunction("'pageRunner' in window")
  const figures = await page.evaluate(async run => {
    const timed = async (): Promise<number> => {
      const started = performance.now()
      await window.pageRunner.run(run)
      return performance.now() - started
    }
    const first = await timed()
    const later: number[] = []
    for (let i = 0; i < 100; i++) later.push(await timed())
    later.sort((a, b) => a - b)
    return { first, median: later[50]!, late: later[95]! }
  }, request(program))
  console.log(
    `Chromium, run of 1000 steps and back: ${figures.median.toFixed(1)} ms (95th percentile ${figures.late.toFixed(1)}); the first, with the start of its frame and worker: ${figures.first.toFixed(0)} ms`,
  )
  await close()
}

recordBench()
if (process.argv[3] !== "record") await nodeBench()
if (process.argv[3] !== "record") await pageBench()
process.exit()
