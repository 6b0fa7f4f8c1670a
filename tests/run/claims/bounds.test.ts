import { expect, it } from "vitest"
import { createProbe } from "../support/probe.ts"
import { compiled, raw, request } from "../support/program.ts"

const probe = createProbe()

it("claim: turns of loops and calls are bounded, by a count that is the same on every machine", async () => {
  const program = await compiled("let n = 0\nwhile (true) { n = n + 1\nrecord(n, { n }) }")
  const outcomes = await Promise.all(
    [1, 2].map(() => probe.runner.run(request(program, { limits: { turns: 777 } }))),
  )
  for (const { problem, recordings } of outcomes) {
    expect(problem?.code).toBe("endless-loop")
    expect(recordings[0]!.rows).toBe(777)
  }
})

it("claim: recorded numbers are bounded", async () => {
  const program = await compiled("for (let i = 0; i < 1000; i++) record(i, { i })")
  const { problem, recordings } = await probe.runner.run(request(program, { limits: { recorded: 100 } }))
  expect(problem?.code).toBe("recorded-too-much")
  expect(recordings[0]!.rows).toBe(50)
})

it("claim: printed text is bounded inside, and costs the program nothing else", async () => {
  const program = await compiled(
    "for (let i = 0; i < 10000; i++) console.log('line', i)\nrecord(0, { a: 1 })",
  )
  const { problem, output, recordings } = await probe.runner.run(
    request(program, { limits: { output: 200 } }),
  )
  expect(problem).toBeNull()
  expect(output.join("\n").length).toBeLessThan(400)
  expect(output.at(-1)).toContain("more than 200 characters")
  expect(recordings).toHaveLength(1)
})

it("claim: what never comes back by itself is ended from outside, and the next run works", async () => {
  const { problem } = await probe.runner.run(request(raw("for (;;) {}"), { limits: { milliseconds: 300 } }))
  expect(problem?.code).toBe("time-limit")
  expect((await probe.runner.run(request(raw("host.record(0, { a: 1 })")))).problem).toBeNull()
})

it("claim: memory is bounded, and its end touches nothing but the run", async () => {
  const before = process.memoryUsage().rss
  const { problem } = await probe.runner.run(
    request(raw("const a = []; for (;;) a.push(new Array(1000).fill(1))")),
  )
  expect(problem?.code).toMatch(/^(memory-limit|run-lost)$/)
  expect(process.memoryUsage().rss - before).toBeLessThan(200e6)
  expect((await probe.runner.run(request(raw("host.record(0, { a: 1 })")))).problem).toBeNull()
})
