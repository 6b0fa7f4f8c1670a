import { signal } from "@preact/signals"
import { afterAll, describe, expect, it } from "vitest"
import { unitsRun } from "../../src/cell/units-run/index.ts"
import type { BenchHand } from "../../src/page/bench/contract.ts"
import { besideLines, type Found } from "../../src/page/lines/beside.ts"
import { lineFigure } from "../../src/page/lines/figures.ts"
import { lookAfter, openLooking, type ShownRun } from "../../src/page/lines/looking.ts"
import { variableOf } from "../../src/page/lines/variable.ts"
import type { Runner, RunRequest } from "../../src/run/contract.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { compiled, request } from "../run/support/program.ts"
import { handClock } from "./fixtures/clock.ts"

const runner = createNodeRunner()
afterAll(() => runner.close())

const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("\u2212", "-")
const figure = (...given: Parameters<typeof lineFigure>) => plain(lineFigure(...given))

describe("a figure beside a line", () => {
  it("has four significant digits, and a vector's parts the same place", () => {
    expect(figure(0.430123, "m", false)).toBe("0.4301 m")
    expect(figure([-799.21, 0, 3.1402], "kg m/s", false)).toBe("(-799.2, 0, 3.1) kg m/s")
    expect(figure([1, 1e-9, 0], "m", false)).toBe("(1.000, 0.000, 0) m")
    expect(figure([3.84e8, 0, -1.2e7], "m", false)).toBe("(3.840, 0, -0.120) × 10⁸ m")
    expect(figure(6.02e-7, "J", false)).toBe("6.020 × 10⁻⁷ J")
  })
  it("keeps a short decimal as it was typed where the line is passed once, and counters whole", () => {
    expect(figure(0.4, "m", true)).toBe("0.4 m")
    expect(figure([0.8, 0, 0], "m", true)).toBe("(0.8, 0, 0) m")
    expect(figure(13, "", false)).toBe("13")
    expect(figure([0, 0, 0], "N", false)).toBe("(0, 0, 0) N")
  })
  it("says what is no ordinary number", () => {
    expect(figure(Number.NaN, "", false)).toBe("not a number")
    expect(figure([Number.POSITIVE_INFINITY, 0, 0], "m", false)).toBe("(beyond all bounds, 0, 0) m")
    expect(figure(true, "", false)).toBe("true")
  })
})

const text = [
  "const k: Scalar<'N/m'> = 20",
  "const dt: Scalar<'s'> = 0.1",
  "let t: Scalar<'s'> = 0",
  "let x: Vec3<'m'> = vec3(1, 0, 0)",
  "function pull(at: Vec3<'m'>): Vec3<'N'> {",
  "  const push = -k * at",
  "  return push",
  "}",
  "for (let n = 0; n < 5; n++) {",
  "  let F: Vec3<'N'> = vec3(0, 0, 0)",
  "  if (n > 2) F = pull(x)",
  "  x = x + vec3(1, 0, 0)",
  "  t += dt",
  "  record(t, { F })",
  "}",
].join("\n")

async function find(): Promise<Found> {
  const program = await compiled(text)
  const { lines } = await runner.run(request(program, { lines: { cell: "drop", from: 0, to: 9 } }))
  return { compiled: program, values: lines!, units: unitsRun(program.program, []).lines }
}

describe("what stands beside the lines of a listing", () => {
  it("is each name that a line sets, at its line, with its unit", async () => {
    const beside = besideLines(await find(), "drop", 1)
    expect(beside.map(one => plain(`${one.line} ${one.name} ${one.figure}`))).toEqual([
      "1 k 20 N/m",
      "2 dt 0.1 s",
      "3 t 0 s",
      "4 x (1, 0, 0) m",
      "6 push ",
      "9 n 2",
      "10 F (0, 0, 0) N",
      "11 F ",
      "12 x (3, 0, 0) m",
      "13 t 0.2000 s",
    ])
  })
  it("is nothing beside the lines of another cell's listing", async () =>
    expect(besideLines(await find(), "other", 1)).toEqual([]))
  it("changes with the values, and with nothing else", async () => {
    const found = await find()
    const before = besideLines(found, "drop", 3)
    const numbers = found.values.numbers.map(n => 2 * n)
    const after = besideLines({ ...found, values: { ...found.values, numbers } }, "drop", 3)
    expect(plain(before.find(one => one.line === 12)!.figure)).toBe("(5, 0, 0) m")
    expect(plain(after.find(one => one.line === 12)!.figure)).toBe("(10, 0, 0) m")
  })
})

describe("a variable that was sent to a plot", () => {
  it("is at each row what the last of its lines set in that turn", async () => {
    const found = await find()
    const F = variableOf(found, "drop//F")!
    expect([F.name, F.unit, F.kind, F.rows]).toEqual(["F", "N", "vector", 5])
    expect([0, 1, 2, 3, 4].map(row => F.read(row, 0))).toEqual([0, 0, 0, -80, -100])
    const push = variableOf(found, "drop/pull/push")!
    expect(push.name).toBe("push in pull")
    expect([2, 3].map(row => push.read(row, 0))).toEqual([Number.NaN, -80])
  })
  it("is none where the program has no such name", async () =>
    expect(variableOf(await find(), "drop//lost")).toBeNull())
})

describe("the second look at a run", () => {
  async function open(rows = 5) {
    const program = await compiled(text)
    const asked: RunRequest[] = []
    const spy: Runner = {
      run: one => {
        asked.push(one)
        return runner.run(one)
      },
      stop() {},
      async close() {},
    }
    const { recordings } = await runner.run(request(program))
    const run: ShownRun = { compiled: program, parameters: {}, seed: 1, recordings }
    const shown = signal<ShownRun | null>(run)
    const clock = handClock()
    const looking = openLooking({
      shown,
      clock,
      runner: () => spy,
      units: async ({ compiled: one }) => unitsRun(one.program, []).lines,
    })
    const row = signal(0)
    const hand: BenchHand = { cell: "drop", rows, row, time: signal(""), step() {} }
    looking.hand.value = hand
    const settle = async () => {
      await clock.pass(lookAfter + 1)
      for (let k = 0; k < 100 && !looking.current.value; k++) await new Promise(done => setTimeout(done, 10))
    }
    return { asked, shown, run, looking, clock, row, settle }
  }

  it("is not taken until values are wanted or a variable is sent", async () => {
    const { asked, looking, settle } = await open()
    await settle()
    expect(asked).toEqual([])
    looking.wanted.value = true
    await settle()
    expect(asked.map(one => one.lines)).toEqual([{ cell: "drop", from: 0, to: 5 }])
    expect(looking.current.value).toBe(true)
  })
  it("is taken anew for a new run, and until then its values are known to be old", async () => {
    const { asked, looking, shown, run, settle } = await open()
    looking.wanted.value = true
    await settle()
    shown.value = { ...run, parameters: { height: 2 } }
    expect(looking.current.value).toBe(false)
    await settle()
    expect(looking.current.value).toBe(true)
    expect(asked.map(one => one.parameters)).toEqual([{}, { height: 2 }])
    looking.close()
  })
  it("finds the variables that were sent, of the whole run, without values being shown", async () => {
    const { asked, looking, clock } = await open()
    looking.send("drop//F")
    await clock.pass(lookAfter + 1)
    for (let k = 0; k < 100 && !looking.variables.value[0]?.sought; k++)
      await new Promise(done => setTimeout(done, 10))
    expect(asked).toHaveLength(1)
    expect(asked[0]!.lines!.only).toHaveLength(2)
    expect(looking.variables.value.map(one => one.variable?.read(4, 0))).toEqual([-100])
    looking.drop("drop//F")
    expect(looking.variables.value).toEqual([])
  })
})
