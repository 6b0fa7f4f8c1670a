import { describe, expect, it } from "vitest"
import { assembleProgram, knownNames, lower, operators } from "../../src/cell/index.ts"
import * as physics from "../../src/physics/index.ts"
import { createRecorder } from "../../src/run/record.ts"
import { cell } from "./run.ts"

const library: Record<string, unknown> = {
  ...(globalThis as object),
  ...physics,
  Math,
  Object,
  Infinity,
  NaN,
}

/** What is recorded, and the words with which it ends, by the run's own recorder. */
function recorded(cells: readonly string[], blind: boolean, limit: number) {
  const names = cells.map((_, i) => `cell ${i}`)
  const program = assembleProgram(
    cells.map((text, i) => cell(text, names[i])),
    {},
    [],
    "dt",
  )
  const result = lower(program, { trace: false, blind })
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const recorder = createRecorder(names, limit, physics.Vec3.prototype)
  const lib = Object.fromEntries([...knownNames].map(name => [name, library[name]]))
  let slow = 0
  const host = {
    ...operators,
    maxTurns: 1e6,
    done() {},
    timeStep: (x: number) => x,
    enterCell: recorder.enterCell,
    rows: recorder.rows,
    record(time: unknown, quantities: unknown) {
      slow++
      recorder.record(time, quantities)
    },
  }
  let words = ""
  try {
    new Function("lib", "parameters", "host", result.lowered.text)(lib, {}, host)
  } catch (thrown) {
    words = (thrown as { problem?: { text: string } }).problem?.text ?? String(thrown)
  }
  const recordings = recorder.recordings().map(r => ({ ...r, data: [...r.data] }))
  return { words, recordings, slow }
}

const loop = (n: number, body: string): string => `
let r = vec3(0, 0, 0), p = vec3(1, -0, 2), E = 0.1, t = 0
for (let i = 0; i < ${n}; i++) {
  r = r + p * 0.01
  E = E * 1.001
  t = i * 0.5
  ${body}
}`

const cases: [string, string[], number][] = [
  [
    "ten thousand rows, over several chunks",
    [loop(10_000, "record(t, { a: { position: r, momentum: p }, energy: E })")],
    1e9,
  ],
  [
    "a literal zero, an expression, a number only",
    [loop(50, "record(i, { a: 0, b: r + p, c: { d: -p, e: magnitude(r) } })")],
    1e9,
  ],
  ["one row", [loop(1, "record(t, { r })")], 1e9],
  ["the end of what may be kept", [loop(900, "record(t, { r, p })")], 4000],
  ["the end of what may be kept, at once", [loop(3, "record(t, { r, p })")], 8],
  ["NaN on the way", [loop(400, "record(t, { r, bad: i === 300 ? 0 / 0 : 1 })")], 1e9],
  ["an infinite time", [loop(400, "record(i === 300 ? 1 / 0 : t, { r })")], 1e9],
  [
    "numbers whose sum is too large, each fine",
    [loop(5, "record(t, { a: 1.7e308, b: 1.7e308 * 1 + 0 * i, c: r })")],
    1e9,
  ],
  ["time that runs back", [loop(400, "record(i === 300 ? 1 : t, { r })")], 1e9],
  ["two shapes in turn", [loop(20, "if (i % 2 === 0) record(t, { r, E }); else record(t, { E, r })")], 1e9],
  ["another name later", [loop(20, "if (i < 10) record(t, { r }); else record(t, { p })")], 1e9],
  ["another kind later", [loop(20, "if (i < 10) record(t, { r }); else record(t, { r: E })")], 1e9],
  [
    "two cells",
    [
      loop(300, "record(t, { r })"),
      "for (let i = 0; i < 300; i++) record(i, { r: p, E })",
      "record(1, { E })",
    ],
    1e9,
  ],
  [
    "two cells and the end of what may be kept",
    [loop(300, "record(t, { r })"), "for (let i = 0; i < 900; i++) record(i, { r: p, E })"],
    3000,
  ],
  [
    "a function that an earlier cell made",
    [
      "const keep = t => { record(t, { a: t * 2 }) }\nkeep(0); keep(1); keep(2)",
      "for (let i = 0; i < 9; i++) keep(i)",
    ],
    1e9,
  ],
  [
    "a record within a record",
    [loop(20, "record(t, { r, get E() { record(t, { r, E }); return 1 } })")],
    1e9,
  ],
  [
    "a record within a record of open rows",
    [
      "let o = { get E() { record(5, { E: 2 }); return 1 } }\nrecord(0, { E: 1 }); record(1, { E: 1 }); record(2, o)",
    ],
    1e9,
  ],
  [
    "a vector where a number was declared",
    ["const m: number = vec3(1, 2, 3)\nrecord(0, { m }); record(1, { m })".replace(": number", "")],
    1e9,
  ],
  ["a bare vector", [loop(3, "record(t, r)")], 1e9],
  ["nothing", [loop(3, "record(t, {})")], 1e9],
]

describe("records written out keep the same rows and end in the same words as calls of record", () => {
  it.each(cases)("%s", (_, cells, limit) => {
    const { slow, ...quick } = recorded(cells, false, limit)
    const { slow: all, ...called } = recorded(cells, true, limit)
    expect(quick).toEqual(called)
    expect(slow).toBeLessThanOrEqual(all)
  })
  it("most rows of a long motion do not call record at all", () => {
    expect(recorded(cases[0]![1], false, 1e9).slow).toBeLessThan(10)
    expect(recorded(cases[0]![1], true, 1e9).slow).toBe(10_000)
  })
})
