import { afterAll, describe, expect, it } from "vitest"
import type { Compiled } from "../../src/cell/contract.ts"
import type { LinesWish, LineValues } from "../../src/run/contract.ts"
import { lineKinds, mostLineBytes, rowsAtOnce } from "../../src/run/lines/contract.ts"
import { readLineValues } from "../../src/run/lines/read.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { bitsOf } from "./support/bits.ts"
import { compiled, fallingKey, request } from "./support/program.ts"

const runner = createNodeRunner()
afterAll(() => runner.close())

const everything: LinesWish = { cell: "drop", from: 0, to: 1000 }

async function look(program: Compiled, lines: LinesWish = everything): Promise<LineValues> {
  const outcome = await runner.run(request(program, { lines }))
  if (!outcome.lines) throw new Error(outcome.problem?.text ?? "no values")
  return outcome.lines
}

/** What each line shows at a row: the text before its sign of assignment, and the value as text. */
function shown({ program, sites }: Compiled, values: LineValues, row: number): Record<string, string> {
  const out: Record<string, string> = {}
  values.sites.forEach((site, place) => {
    const at = (row - values.from) * values.sites.length + place
    const { from, to } = sites[site]!
    const line = program.text.slice(0, from).split("\n").length
    const name = `${line} ${program.text
      .slice(from, to)
      .split(/[:=+\-*/]/)[0]!
      .trim()}`
    const kind = values.kinds[at]
    const n = values.numbers.subarray(3 * at, 3 * at + 3)
    if (kind === lineKinds.number) out[name] = String(n[0])
    else if (kind === lineKinds.vector) out[name] = `(${n.join(", ")})`
    else if (kind === lineKinds.true || kind === lineKinds.false) out[name] = String(kind === lineKinds.true)
  })
  return out
}

describe("the values of lines", () => {
  it("are those of the turn in which record made the row, below the call too", async () => {
    const program = await compiled(
      "let t = 0\nlet p = 1\nwhile (t < 3) {\n  p = p * 2\n  record(t, { p })\n  t = t + 1\n}\nconst after = p",
    )
    const values = await look(program)
    expect(values.rows).toBe(3)
    expect(shown(program, values, 0)).toEqual({ "1 t": "0", "2 p": "1", "4 p": "2", "6 t": "1" })
    expect(shown(program, values, 1)).toEqual({ "1 t": "0", "2 p": "1", "4 p": "4", "6 t": "2" })
    expect(shown(program, values, 2)).toMatchObject({ "4 p": "8", "6 t": "3", "8 after": "8" })
  })

  it("are left out where the line was passed by in that turn", async () => {
    const program = await compiled(
      "let push = 0\nfor (let n = 0; n < 4; n++) {\n  if (n % 2 === 1) {\n    push = n * 10\n  }\n  record(n, { push })\n}",
    )
    const values = await look(program)
    expect(shown(program, values, 0)["4 push"]).toBeUndefined()
    expect(shown(program, values, 1)["4 push"]).toBe("10")
    expect(shown(program, values, 2)["4 push"]).toBeUndefined()
    expect(shown(program, values, 3)["4 push"]).toBe("30")
  })

  it("in loops inside loops are those of the turn that the call of record stands in", async () => {
    const program = await compiled(
      [
        "let t = 0",
        "for (let i = 0; i < 2; i++) {",
        "  const outer = 100 + i",
        "  for (let j = 0; j < 3; j++) {",
        "    const inner = 10 * i + j",
        "    let sum = 0",
        "    for (let k = 0; k <= j; k++) { sum += k }",
        "    t = t + 1",
        "    record(t, { inner })",
        "  }",
        "}",
      ].join("\n"),
    )
    const values = await look(program)
    expect(values.rows).toBe(6)
    expect(shown(program, values, 1)).toMatchObject({ "3 outer": "100", "5 inner": "1", "7 sum": "1" })
    expect(shown(program, values, 5)).toMatchObject({ "3 outer": "101", "5 inner": "12", "7 sum": "3" })
    // the last row of the first outer turn knows nothing of the second
    expect(shown(program, values, 2)).toMatchObject({ "3 outer": "100", "5 inner": "2" })
  })

  it("reach into functions that the turn calls, and into other cells where they stand still", async () => {
    const program = await compiled(
      "const k = 5\nfor (let n = 0; n < 3; n++) { const early = n; record(n, { early }) }\nfunction force(x: number): number {\n  const stretch = x - 1\n  return -k * stretch\n}",
      "let x = 2\nlet t = 0\nwhile (t < 3) {\n  const F = force(x)\n  x = x + 1\n  t += 1\n  record(t, { F })\n}",
    )
    const values = await look(program, { ...everything, cell: "cell2" })
    expect(shown(program, values, 1)).toMatchObject({
      "1 k": "5",
      "4 stretch": "2",
      "11 F": "-10",
      "13 t": "2",
    })
    expect(shown(program, values, 1)["2 early"]).toBeUndefined()
  })

  it("of a record in a function of its own, or outside of loops, are those since the row before", async () => {
    const program = await compiled(
      "let t = 0\nlet a = 0\nfunction keep() { record(t, { a }) }\nwhile (t < 2) {\n  a = a + 5\n  keep()\n  t = t + 1\n}",
    )
    const values = await look(program)
    expect(shown(program, values, 0)["5 a"]).toBe("5")
    expect(shown(program, values, 1)["5 a"]).toBe("10")
    const straight = await compiled("let a = vec3(1, 2, 3)\nrecord(0, { a })\na = 2 * a\nrecord(1, { a })")
    const rows = await look(straight)
    expect(shown(straight, rows, 0)).toEqual({ "1 a": "(1, 2, 3)" })
    expect(shown(straight, rows, 1)).toEqual({ "1 a": "(1, 2, 3)", "3 a": "(2, 4, 6)" })
  })

  it("hold numbers, vectors and yes or no, exactly; nothing for what is none of these", async () => {
    const program = await compiled(
      'const v = vec3(0.1, 0.2, 0.3)\nconst yes = 1 < 2\nconst no = !yes\nconst word = "a"\nconst list = [1]\nconst far = 1 / 3\nrecord(0, { far })',
    )
    expect(shown(program, await look(program), 0)).toEqual({
      "1 v": "(0.1, 0.2, 0.3)",
      "2 yes": "true",
      "3 no": "false",
      "6 far": String(1 / 3),
    })
  })

  it("leave the recording as it is without them, bit for bit", async () => {
    const program = await compiled(fallingKey)
    const plain = await runner.run(request(program))
    const looked = await runner.run(request(program, { lines: everything }))
    expect(bitsOf(looked.recordings[0]!)).toBe(bitsOf(plain.recordings[0]!))
    expect(plain.lines).toBeUndefined()
  })

  it("are kept until the program fails", async () => {
    const program = await compiled(
      "let t = 0\nwhile (t < 9) {\n  const left = 2 - t\n  if (left < 0) missing = 1\n  record(t, { left })\n  t = t + 1\n}",
    )
    const outcome = await runner.run(request(program, { lines: everything }))
    expect(outcome.problem).not.toBeNull()
    expect(shown(program, outcome.lines!, 2)["3 left"]).toBe("0")
    expect(outcome.lines!.rows).toBe(3)
  })

  it("are only those of the rows and lines that are asked for, and never more than fit", async () => {
    const program = await compiled(fallingKey)
    const some = await look(program, { cell: "drop", from: 500, to: 520 })
    expect([some.from, some.rows]).toEqual([500, 20])
    const all = await look(program)
    expect(shown(program, some, 510)).toEqual(shown(program, all, 510))
    const [first] = all.sites
    const one = await look(program, { ...everything, only: [first!] })
    expect(one.sites).toEqual([first])
    expect(rowsAtOnce(20) * 20 * 25).toBeLessThanOrEqual(mostLineBytes)
    const long = await compiled("let a = 0\nwhile (a < 200) {\n  a = a + 1\n  record(a, { a })\n}")
    expect((await look(long, { ...everything, from: 190, to: 1e9 })).rows).toBe(10)
  })

  it("from a place that lies are turned away", async () => {
    const good = {
      cell: "drop",
      from: 0,
      rows: 1,
      sites: [3],
      kinds: new Uint8Array([1]),
      numbers: new Float64Array(3),
    }
    expect(readLineValues(good, everything, 5)).toEqual(good)
    for (const bad of [
      { ...good, cell: "other" },
      { ...good, rows: 2 },
      { ...good, sites: [5] },
      { ...good, kinds: new Uint8Array([9]) },
      { ...good, numbers: new Float64Array(2) },
      null,
    ])
      expect(readLineValues(bad, everything, 5)).toBeNull()
  })
})
