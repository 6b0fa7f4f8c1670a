import { afterAll, describe, expect, it } from "vitest"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { compiled, fallingKey, makeTrace, raw, request, withoutTrace } from "./support/program.ts"

const runner = createNodeRunner({ workers: 2 })
afterAll(() => runner.close())

describe("a run in Node", () => {
  it("gives the recording, the printed lines, the turns and the word that a time step was found", async () => {
    const outcome = await runner.run(request(await compiled(`${fallingKey}\nconsole.log("last", t, r)`)))
    expect(outcome.problem).toBeNull()
    expect(outcome.turns).toBe(1000)
    expect(outcome.timeStepFound).toBe(true)
    const [recording] = outcome.recordings
    expect(recording!.rows).toBe(1000)
    // Semi-implicit Euler in free fall, summed exactly: y = h - g dt² n (n + 1) / 2.
    const y = recording!.data[999 * recording!.width + 2]!
    expect(y).toBeCloseTo(2 - (9.81 * 1e-6 * 1000 * 1001) / 2, 10)
    expect(outcome.output).toEqual([`last ${recording!.data[999 * 10]} (0, ${y}, 0)`])
  })

  it("scales the named time step, and that only", async () => {
    const outcome = await runner.run(request(await compiled(fallingKey), { stepFactor: 0.5 }))
    const { data, width } = outcome.recordings[0]!
    expect(data[0]).toBe(0.0005)
    expect(data[width]).toBe(0.001)
    const without = await runner.run(request(await compiled("const step = 0.1\nrecord(step, { a: 1 })")))
    expect(without.timeStepFound).toBe(false)
  })

  it("gives the same random numbers for the same seed and others for another", async () => {
    const program = await compiled("record(0, { a: random(), b: random() })")
    const bits = async (seed: number) => [
      ...(await runner.run(request(program, { seed }))).recordings[0]!.data,
    ]
    expect(await bits(1)).toEqual(await bits(1))
    expect(await bits(1)).not.toEqual(await bits(2))
  })

  it.each([
    ["a value that is none", "let x = vec3(1, 0, 0)\nlet y = x.norm.length\nrecord(0, { a: y + x })"],
    [
      "a number that grows without bound",
      "let x = 2\nfor (let i = 0; i < 4000; i++) {\n  x = x * x\n  record(i, { x })\n}",
    ],
    ["calls without end", "function f(n) {\n  return f(n + 1) + 1\n}\nf(0)"],
    ["a loop without end", "let n = 0\nwhile (true) {\n  n = n + 1\n}"],
  ])("says the same of %s whether the trace is made before the failure or after", async (_, text) => {
    const late = createNodeRunner({ trace: makeTrace })
    const program = await compiled(text)
    const before = await runner.run(request(program))
    const after = await late.run(request(withoutTrace(program)))
    await late.close()
    expect(before.problem?.where?.line).toBeGreaterThan(0)
    expect(after.problem).toEqual(before.problem)
  })

  it("tells the place of a failure at the student's own line and column, and keeps what was recorded before", async () => {
    const outcome = await runner.run(
      request(await compiled("record(0, { a: 1 })", "let v = vec3(1, 2, 3)\nrecord(0, { b: v })\nv = v + 1")),
    )
    expect(outcome.problem).toMatchObject({
      code: "number-and-vector",
      where: { cell: "cell2", line: 3, column: 5 },
      excerpt: "v = v + 1",
    })
    expect(outcome.recordings.map(r => [r.cell, r.rows])).toEqual([
      ["drop", 1],
      ["cell2", 1],
    ])
  })

  it.each([
    ["a loop that does not end", "let a = 0\nwhile (a < 1) { }", "endless-loop", 2],
    ["a record that does not fit", "record(0, { a: 1 })\nrecord(1, { b: 1 })", "record-shape", 2],
    ["a time that runs backwards", "record(1, { a: 1 })\n\nrecord(0, { a: 1 })", "record-time", 3],
    ["a value that is not finite", "const m = 0\nconst a = 1 / m\nrecord(1, { a })", "became-not-finite", 2],
    ["a name that nobody made", "const a = 1\nconst b = mass", "unknown-name", 2],
    ["a library call without sense", "\nconst d = unit(vec3(0, 0, 0))", "zero-length", 2],
  ])("says the line of %s", async (_, text, code, line) => {
    const { problem } = await runner.run(request(await compiled(text), { limits: { turns: 100_000 } }))
    expect(problem).toMatchObject({ code, where: { line } })
  })

  it("stops a loop at the same turn everywhere, however often it is asked", async () => {
    const program = await compiled("let i = 0\nwhile (true) { i = i + 1\nrecord(i, { i }) }")
    const limits = { turns: 5000 }
    const outcomes = await Promise.all([1, 2, 3].map(() => runner.run(request(program, { limits }))))
    for (const outcome of outcomes) {
      expect(outcome.problem?.code).toBe("endless-loop")
      expect(outcome.recordings[0]!.rows).toBe(5000)
    }
  })

  it("does not let a program go on by catching the stop", async () => {
    const program = await compiled(
      "let n = 0\ntry { while (true) { n = n + 1 } } catch (e) { }\nrecord(0, { n })\ntry { record(1, { m: 1 }) } catch (e) { }\nrecord(2, { n })",
    )
    const { problem, recordings } = await runner.run(request(program, { limits: { turns: 1000 } }))
    expect(problem?.code).toBe("endless-loop")
    expect(recordings).toEqual([])
  })

  it("answers each caller with its own run when several are asked for at once", async () => {
    const program = await compiled("record(0, { a: height })")
    const heights = Array.from({ length: 40 }, (_, i) => i)
    const outcomes = await Promise.all(
      heights.map(height => runner.run(request(program, { parameters: { height } }))),
    )
    expect(outcomes.map(o => o.recordings[0]!.data[1])).toEqual(heights)
  })

  it("can be stopped, says so, and runs the next program", async () => {
    const own = createNodeRunner()
    const pending = own.run(request(raw("for (;;) {}")))
    await new Promise(resolve => setTimeout(resolve, 300))
    own.stop()
    expect((await pending).problem?.code).toBe("stopped")
    expect((await own.run(request(await compiled("record(0, { a: 1 })")))).problem).toBeNull()
    await own.close()
    expect((await own.run(request(raw("")))).problem?.code).toBe("stopped")
  })

  it("gives the same bits in a new process for every run", async () => {
    const fresh = createNodeRunner({ fresh: true })
    const program = await compiled(fallingKey)
    const once = await fresh.run(request(program))
    const again = await fresh.run(request(program))
    const pooled = await runner.run(request(program))
    expect(again.recordings).toEqual(once.recordings)
    expect(pooled.recordings).toEqual(once.recordings)
    await fresh.close()
  })

  it("says in words when the child's program is missing", async () => {
    const own = createNodeRunner({ bundle: "/nowhere/runner.js" })
    expect((await own.run(request(raw("")))).problem?.code).toBe("run-unavailable")
    await own.close()
  })
})
