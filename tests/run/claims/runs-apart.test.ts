import { expect, it } from "vitest"
import { createNodeRunner } from "../../../src/run/node/runner.ts"
import { bitsOf } from "../support/bits.ts"
import { createProbe } from "../support/probe.ts"
import { compiled, fallingKey, raw, request } from "../support/program.ts"

const probe = createProbe()

it("claim: nothing that one run leaves is found by the next in the same process", async () => {
  const leaving = [
    "leak = 1",
    "this.leak = 1",
    "lib.left = 1",
    "lib.console.left = 1",
    "Symbol.for('left').left = 1",
    "lib.vec3(1, 2, 3).constructor.left = 1",
    "[].constructor.left = 1",
    "(() => {}).constructor.left = 1",
    "host.record.left = 1",
  ]
  await probe.runner.run(request(raw(leaving.map(l => `try { ${l} } catch {}`).join("\n"))))
  const found = await probe.ask(
    "leak",
    "lib.left",
    "lib.console.left",
    "lib.Vec3.left",
    "Array.left",
    "(() => {}).constructor.left",
    "host.record.left",
  )
  expect(Object.values(found).filter(kind => kind !== "undefined" && kind !== "closed")).toEqual([])
})

it("claim: nothing of a run goes on after it, promise jobs included", async () => {
  const late = await probe.runner.run(
    request(
      raw(
        "host.record(0, { a: 1 }); (async () => { for (let i = 0; i < 50; i++) await null; host.record(1, { a: 2 }) })()",
      ),
    ),
  )
  expect(late.problem?.code).toBe("late-call")
  expect(late.recordings[0]!.rows).toBe(1)
  const next = await probe.runner.run(request(await compiled("record(0, { b: 1 })")))
  expect(next.recordings[0]!.series.map(s => s.name)).toEqual(["b"])
})

it("claim: a run gives the same bits in a used process as in a new one", async () => {
  const fresh = createNodeRunner({ fresh: true })
  const program = await compiled(fallingKey)
  const used = (await probe.runner.run(request(program))).recordings.map(bitsOf)
  expect((await fresh.run(request(program))).recordings.map(bitsOf)).toEqual(used)
  await fresh.close()
})
