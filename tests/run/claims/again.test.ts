import { expect, it } from "vitest"
import { pack, unpack } from "../../../src/run/node/columns.ts"
import { bitsOf } from "../support/bits.ts"
import { createProbe } from "../support/probe.ts"
import { compiled, fallingKey, raw, request } from "../support/program.ts"

const probe = createProbe()

/** Ways to leave a sign for the next call of the very same program; each line adds 1 if it finds one. */
const ways = [
  "try { if (typeof leak !== 'undefined') found++; leak = 1 } catch {}",
  "try { if (this?.leak) found++; this.leak = 1 } catch {}",
  "const t = (parts => parts)`a`; try { if (t.seen) found++; t.seen = 1 } catch {}",
  "const re = /a/g; if (re.lastIndex > 0) found++; re.exec('aa')",
  "class Kept { static n = 0 }; if (Kept.n > 0) found++; Kept.n = 1",
  "function named() {}; if (named.seen) found++; named.seen = 1",
  "try { const s = Symbol.for('left'); if (s.left) found++; s.left = 1 } catch {}",
  "try { if (lib.vec3.seen) found++; lib.vec3.seen = 1 } catch {}",
  "try { if (Vec3 && Vec3.seen) found++; Vec3.seen = 1 } catch {}",
  "try { if (host.rows.seen) found++; host.rows.seen = 1 } catch {}",
  "try { const f = (() => {}).constructor; if (f.seen) found++; f.seen = 1 } catch {}",
  "try { const e = new Error('x'); if (e.stack?.seen || Error.left) found++; Error.left = 1 } catch {}",
  "try { const v = host.rows('a:s').view; if (v.setFloat64.seen || v.left) found++; v.setFloat64.seen = 1; v.left = 1 } catch {}",
  "try { if (parameters.seen) found++; parameters.seen = 1 } catch {}",
  "try { if (arguments.callee.seen) found++; arguments.callee.seen = 1 } catch {}",
]

it("claim: a program that is run again finds nothing of its own earlier run, so it cannot tell a hidden draw by its turn", async () => {
  const program = raw(`let found = 0\n${ways.join("\n")}\nhost.record(0, { a: found })`)
  const heights = [2, 3, 4]
  for (const height of heights) {
    const outcome = await probe.runner.run(request(program, { parameters: { height } }))
    expect(outcome.problem).toBeNull()
    expect([...outcome.recordings[0]!.data]).toEqual([0, 0])
  }
})

it("claim: a program that is run again gives the bits of its first run", async () => {
  const program = await compiled(fallingKey)
  const first = (await probe.runner.run(request(program))).recordings.map(bitsOf)
  await probe.runner.run(request(program, { parameters: { height: 9 }, stepFactor: 0.5 }))
  expect((await probe.runner.run(request(program))).recordings.map(bitsOf)).toEqual(first)
})

it("claim: after a failure the program is loaded anew", async () => {
  const program = raw("if (parameters.height > 2) throw new Error('high'); host.record(0, { a: 1 })")
  const run = (height: number) => probe.runner.run(request(program, { parameters: { height } }))
  expect((await run(2)).problem).toBeNull()
  expect((await run(3)).problem?.code).toBe("program-error")
  expect((await run(2)).problem).toBeNull()
})

const outcomeOf = (data: Float64Array, rows: number, width: number) => ({
  kind: "outcome" as const,
  number: 1,
  tracing: false,
  worn: false,
  outcome: {
    recordings: [{ cell: "drop", series: [], rows, width, data }],
    problem: null,
    output: [],
    turns: 1,
    timeStepFound: false,
    milliseconds: 1,
  },
})

it("claim: what is left out on the way is put back bit for bit, minus zero included", () => {
  const data = Float64Array.of(0, 5, -0, 0, 1, 1, 5, -0, -0, 1, 2, 5, -0, 0, 1)
  const message = outcomeOf(data, 3, 5)
  expect(unpack(structuredClone(pack(message)), 100, 1)).toEqual(message)
})

it("claim: a child cannot make its parent lay out more than the run was allowed to record", () => {
  const flood = {
    ...outcomeOf(new Float64Array(0), 1e9, 3),
  }
  const packed = {
    cell: "drop",
    series: [],
    rows: 1e9,
    width: 3,
    still: [0, 1, 2],
    data: new Float64Array(0),
  }
  const read = unpack({ ...flood, outcome: { ...flood.outcome, recordings: [packed] } }, 1_000_000, 1)
  expect(read).toMatchObject({ outcome: { recordings: [null] } })
})

it("claim: a child cannot make its parent lay out many recordings where the program has one cell", () => {
  const small = { cell: "drop", series: [], rows: 100, width: 3, still: [0, 1, 2], data: new Float64Array(0) }
  const flood = outcomeOf(new Float64Array(0), 1, 3)
  const many = { ...flood, outcome: { ...flood.outcome, recordings: Array(100_000).fill(small) } }
  expect(unpack(many, 1_000_000, 1)).toBeNull()
  const one = { ...flood, outcome: { ...flood.outcome, recordings: [small] } }
  expect(unpack(one, 1_000_000, 1)).toMatchObject({ outcome: { recordings: [{ rows: 100 }] } })
})
