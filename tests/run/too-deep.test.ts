import { afterAll, describe, expect, it } from "vitest"
import type { RunOutcome } from "../../src/run/contract.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { isOverflow } from "../../src/run/overflow.ts"
import { compiled, request } from "./support/program.ts"

const runner = createNodeRunner({ workers: 1 })
afterAll(() => runner.close())

/** The same program four times in turn: the engine compiles it anew in between, and its calls take less room. */
async function fourTimes(...cells: readonly string[]): Promise<RunOutcome[]> {
  const program = await compiled(...cells)
  return Promise.all(Array.from({ length: 4 }, () => runner.run(request(program))))
}

const again = "for (let i = 0; i < 120; i++) f(0)\nrecord(0, { first })"

/** Each finds out how deep it can call itself, and records it. */
const shapes: Readonly<Record<string, string>> = {
  catch: `function f(n) { try { return f(n + 1) } catch (e) { return n } }
const first = f(0)
${again}`,
  "catch without a name": `function f(n) { try { return f(n + 1) } catch { return n } }
const first = f(0)
${again}`,
  "catch that takes the error apart": `function f(n) { try { return f(n + 1) } catch ({ message, name = "" }) { return n } }
const first = f(0)
${again}`,
  "finally with return": `function f(n) { try { return f(n + 1) } finally { return n > depth ? (depth = n) : depth } }
let depth = 0
const first = f(0)
${again}`,
  "catch inside a generator": `function* g(n) { try { yield* g(n + 1) } catch (e) { yield n } }
function f(n) { for (const depth of g(n)) return depth }
const first = f(0)
${again}`,
  "catch inside a getter": `const o = { n: 0, get deeper() { this.n++; try { return this.deeper } catch (e) { return this.n } } }
function f() { o.n = 0; return o.deeper }
const first = f(0)
${again}`,
  "an arrow with a value": `let first = 0
const f = n => { first = n; try { f(n + 1) } finally { while (true) break } }
try { f(0) } catch (e) { first += 1 }
record(0, { first })`,
  "an async function": `let first = 0
async function f(n) { first = n; f(n + 1) }
f(0)
record(0, { first })`,
  "an async arrow": `let first = 0
const f = async n => (first = n, f(n + 1))
f(0)
record(0, { first })`,
  "no catch, but a record on the way": `function f(n) { record(n, { n }); console.log(n); f(n + 1) }
f(0)`,
}

describe("how deep a program can call itself is never told: the run ends, and the same way each time", () => {
  it.each(Object.entries(shapes))("%s", async (_, text) => {
    const outcomes = await fourTimes(text)
    for (const { problem, recordings, output, turns } of outcomes) {
      expect(problem).toMatchObject({ code: "too-deep", where: { cell: "drop", line: 1, column: 1 } })
      expect({ recordings, output, turns }).toEqual({ recordings: [], output: [], turns: 0 })
    }
  })
  it("the cells before keep what they recorded and printed", async () => {
    const [outcome] = await fourTimes('record(0, { a: 1 })\nconsole.log("one")', shapes.catch!)
    expect(outcome!.problem).toMatchObject({ code: "too-deep", where: { cell: "cell2" } })
    expect(outcome!.recordings.map(one => [one.cell, one.rows])).toEqual([["drop", 1]])
    expect(outcome!.output).toEqual(["one"])
  })
  it("errors of other kinds are caught as ever", async () => {
    const [outcome] = await fourTimes(`const told = []
const f = (work) => { try { return work() } catch (e) { told.push(e.message); return -1 } finally { told.push("end") } }
f(() => { throw new RangeError("too far") })
f(() => null.x)
f(() => 3)
try { try { throw new Error("inner") } finally { told.push("finally") } } catch ({ message: words }) { told.push(words) }
const o = {}
for (const n of [1, 2]) { try { if (n === 1) continue; o.n = n; break } finally { told.push(n) } }
async function late() { throw new Error("late") }
late()
record(0, { n: told.length })
console.log(told.join(" | "))`)
    expect(outcome!.problem).toBeNull()
    expect(outcome!.output[0]).toMatch(/^too far \| end \| .+ \| end \| end \| finally \| inner \| 1 \| 2$/)
  })
  it("what a program throws itself is no overflow, and looking at it runs nothing", () => {
    const odd = Object.create(RangeError.prototype, {
      message: {
        get() {
          throw new Error("looked at")
        },
      },
    })
    expect(
      [null, "x", new Error("Maximum call stack size exceeded"), new RangeError("x"), odd].some(isOverflow),
    ).toBe(false)
    const deep = (): number => deep() + 1
    let thrown: unknown
    try {
      deep()
    } catch (e) {
      thrown = e
    }
    expect(isOverflow(thrown)).toBe(true)
  })
})
