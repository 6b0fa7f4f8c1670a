import { afterAll, describe, expect, it } from "vitest"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { bitsOf } from "../run/support/bits.ts"
import { fallingKey, raw, request, tryCompile } from "../run/support/program.ts"
import { forging } from "./corpus/forging.ts"
import { loops } from "./corpus/loops.ts"
import { floods } from "./corpus/memory.ts"
import { names } from "./corpus/names.ts"
import { poisoning } from "./corpus/poisoning.ts"
import type { Hostile } from "./corpus/program.ts"
import { reaching } from "./corpus/reaching.ts"

const families: Readonly<Record<string, readonly Hostile[]>> = {
  "loops without end": loops,
  "floods of memory, recordings and text": floods,
  "reaching out": reaching,
  poisoning,
  forging,
  names,
}

/** Small enough for a test to wait for. Where the clock must decide, it is short; elsewhere it has no say. */
const limits = { turns: 100_000, recorded: 200_000, output: 5_000, milliseconds: 30_000 }
const limitsFor = ({ ends }: Hostile) =>
  ends instanceof RegExp && ends.test("time-limit") ? { ...limits, milliseconds: 700 } : limits

const runner = createNodeRunner({ workers: 2 })
afterAll(() => runner.close())

async function honestBits(): Promise<string[]> {
  const program = await tryCompile(fallingKey)
  if (!program.ok) throw new Error("the honest program does not compile")
  const outcome = await runner.run(request(program.compiled))
  expect(outcome.problem).toBeNull()
  return outcome.recordings.map(bitsOf)
}

/** How a program ends: refused by the compiler in words, or run. */
async function attack(hostile: Hostile) {
  const { cell, raw: js } = hostile
  const limits = limitsFor(hostile)
  if (js !== undefined) return runner.run(request(raw(js), { limits }))
  const result = await tryCompile(cell!)
  if (!result.ok) return { problem: result.problems[0]!, output: [], recordings: [] }
  return runner.run(request(result.compiled, { limits }))
}

function faultsOf({ name, ends, held }: Hostile, outcome: Awaited<ReturnType<typeof attack>>): string[] {
  const { problem, output } = outcome
  const code = problem?.code ?? "harmless"
  const faults: string[] = []
  if (ends === "harmless" ? problem !== null : !ends.test(code))
    faults.push(`ends as ${code}: ${problem?.text}`)
  if (problem !== null && (problem.text.length < 10 || problem.text.length > 1100 || problem.todo === ""))
    faults.push(`is not told in words: ${problem.text.slice(0, 100)}`)
  if (/\n\s+at |node:|\/src\/|SES_/.test(problem?.text ?? ""))
    faults.push(`shows the inside: ${problem?.text}`)
  if (output.some(line => line.includes("open"))) faults.push(`found a way: ${output.join("; ")}`)
  if (held !== undefined && output.filter(line => line === "held").length < held)
    faults.push(`was not held ${held} times: ${output.join("; ")}`)
  if (output.join("").length > limits.output + 200) faults.push("printed more than the limit")
  return faults.map(fault => `${name} ${fault}`)
}

it("the corpus holds at least 100 programs, each named once", () => {
  const all = Object.values(families).flat()
  expect(all.length).toBeGreaterThanOrEqual(100)
  expect(new Set(all.map(h => h.name)).size).toBe(all.length)
})

describe.each(Object.entries(families))("%s", (_, programs) => {
  it("is contained: each ends in words or in nothing, and honest runs in between keep their bits", async () => {
    const right = await honestBits()
    expect(right).toHaveLength(1)
    const wrong: string[] = []
    // Two at a time, an honest run after each pair: neighbours and successors both could be disturbed.
    for (let i = 0; i < programs.length; i += 2) {
      const pair = programs.slice(i, i + 2)
      const outcomes = await Promise.all(pair.map(attack))
      outcomes.forEach((outcome, n) => {
        wrong.push(...faultsOf(pair[n]!, outcome))
      })
      if ((await honestBits()).join() !== right.join())
        wrong.push(`honest run disturbed after ${pair.map(h => h.name)}`)
    }
    expect(wrong).toEqual([])
  }, 120_000)
})
