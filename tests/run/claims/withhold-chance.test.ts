import { expect, it } from "vitest"
import { createProbe } from "../support/probe.ts"
import { compiled, raw, request } from "../support/program.ts"

const probe = createProbe()

it("claim: the only random numbers are those of the seed", async () => {
  expect(await probe.ask("Math.random()", "lib.Math.random()", "crypto", "Symbol().hashCode")).toEqual({
    "Math.random()": "closed",
    "lib.Math.random()": "closed",
    crypto: "closed",
    "Symbol().hashCode": "undefined",
  })
  const program = await compiled("record(0, { a: random() })")
  const value = async (seed: number) =>
    (await probe.runner.run(request(program, { seed }))).recordings[0]!.data[1]
  expect(await value(3)).toBe(await value(3))
  expect(await value(3)).not.toBe(await value(4))
})

it("claim: a program cannot tell the first run of a process from a later one", async () => {
  const program = raw(
    "lib.console.log(JSON.stringify([Object.keys(lib), Object.keys(host), lib.random(), Symbol.for('a').description]))",
  )
  const outputs = [1, 2, 3].map(() => probe.runner.run(request(program)))
  const [first, ...later] = (await Promise.all(outputs)).map(o => o.output.join())
  for (const output of later) expect(output).toBe(first)
})
