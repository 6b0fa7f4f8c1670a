import { describe, expect, it } from "vitest"
import { Vec3, vec3 } from "../../src/physics/vec3.ts"
import { createRecorder } from "../../src/run/record.ts"
import { RunStop } from "../../src/run/stop.ts"

const recorder = (max = 1e6, cells = ["drop", "slide"]) => createRecorder(cells, max, Vec3.prototype)

function stopOf(act: () => void): { code: string; text: string; todo: string } {
  try {
    act()
  } catch (thrown) {
    if (thrown instanceof RunStop) return thrown.problem
    throw thrown
  }
  throw new Error("nothing was thrown")
}

describe("the recording store", () => {
  it("keeps nested quantities as dotted names, vectors as three columns, numbers as one, time first", () => {
    const r = recorder()
    r.record(0, { key: { position: vec3(1, 2, 3), forces: { weight: vec3(4, 5, 6) } }, energy: 7 })
    r.record(0.5, { key: { position: vec3(8, 9, 10), forces: { weight: vec3(11, 12, 13) } }, energy: 14 })
    expect(r.recordings()).toEqual([
      {
        cell: "drop",
        series: [
          { name: "key.position", kind: "vector", column: 1 },
          { name: "key.forces.weight", kind: "vector", column: 4 },
          { name: "energy", kind: "scalar", column: 7 },
        ],
        rows: 2,
        width: 8,
        data: new Float64Array([0, 1, 2, 3, 4, 5, 6, 7, 0.5, 8, 9, 10, 11, 12, 13, 14]),
      },
    ])
  })

  it("keeps every bit of many rows over the borders of its chunks", () => {
    const r = recorder(1e7)
    const rows = 20_000
    for (let i = 0; i < rows; i++) r.record(i, { a: i / 3, v: vec3(i, -0, i * 1e-300) })
    const [recording] = r.recordings()
    expect(recording!.rows).toBe(rows)
    for (let i = 0; i < rows; i++) {
      const row = recording!.data.subarray(i * 5, i * 5 + 5)
      if (![i, i / 3, i, -0, i * 1e-300].every((value, c) => Object.is(row[c], value)))
        throw new Error(`row ${i} is ${row}`)
    }
  })

  it("keeps cells apart, by document order, and gives no recording to a cell without records", () => {
    const r = recorder(1e6, ["a", "b", "c"])
    r.enterCell(0)
    r.record(5, { x: 1 })
    r.enterCell(2)
    r.record(0, { y: vec3(0, 0, 0) })
    expect(r.recordings().map(recording => [recording.cell, recording.rows])).toEqual([
      ["a", 1],
      ["c", 1],
    ])
    expect(stopOf(() => r.enterCell(1)).code).toBe("program-damaged")
    expect(stopOf(() => r.enterCell(3)).code).toBe("program-damaged")
    expect(stopOf(() => r.enterCell(0.5)).code).toBe("program-damaged")
  })

  it("takes the names of a later record in any order", () => {
    const r = recorder()
    r.record(0, { a: 1, b: { c: 2, d: vec3(3, 4, 5) } })
    r.record(1, { b: { d: vec3(8, 9, 10), c: 7 }, a: 6 })
    expect([...r.recordings()[0]!.data]).toEqual([0, 1, 2, 3, 4, 5, 1, 6, 7, 8, 9, 10])
  })

  it.each([
    ["a name that is new", { a: 1, b: 2, c: 3 }, '"c"'],
    ["a name that is missing", { a: 1 }, '"b"'],
    ["a vector where a number was", { a: 1, b: vec3(0, 0, 0) }, '"b" is a vector'],
    ["a group where a number was", { a: 1, b: { c: 2 } }, '"b.c"'],
  ])("refuses %s and names it with the time", (_, later, named) => {
    const r = recorder()
    r.record(0, { a: 1, b: 2 })
    const problem = stopOf(() => r.record(0.25, later))
    expect(problem.code).toBe("record-shape")
    expect(problem.text).toContain(named)
    expect(problem.text).toContain("t = 0.25 s")
    expect(r.recordings()[0]!.rows).toBe(1)
  })

  it.each([
    ["NaN in a number", { a: Number.NaN, v: vec3(0, 0, 0) }, '"a" is NaN'],
    ["infinity in a number", { a: -Infinity, v: vec3(0, 0, 0) }, '"a" is -Infinity'],
    ["NaN in a vector", { a: 1, v: new Vec3(0, Number.NaN, 1) }, '"v" is (0, NaN, 1)'],
  ])("refuses %s, in the first row and later, naming quantity and time", (_, bad, named) => {
    const first = stopOf(() => recorder().record(0.5, bad))
    const r = recorder()
    r.record(0, { a: 1, v: vec3(0, 0, 0) })
    const later = stopOf(() => r.record(0.5, bad))
    for (const problem of [first, later]) {
      expect(problem.code).toBe("record-value")
      expect(problem.text).toContain(named)
      expect(problem.text).toContain("t = 0.5 s")
    }
  })

  it("refuses a time that is none or not finite, or that runs backwards in one cell; standing still is allowed", () => {
    const r = recorder()
    r.record(1, { a: 1 })
    r.record(1, { a: 2 })
    expect(stopOf(() => r.record(0.5, { a: 3 })).text).toMatch(/backwards: t = 0.5 s .* after t = 1 s/)
    expect(stopOf(() => r.record(0.5, { a: 3 })).todo).toContain("second cell")
    expect(stopOf(() => r.record(Number.NaN, { a: 3 })).code).toBe("record-time")
    expect(stopOf(() => r.record(Infinity, { a: 3 })).code).toBe("record-time")
    expect(stopOf(() => r.record({ valueOf: () => 2 }, { a: 3 })).code).toBe("record-time")
    r.enterCell(1)
    r.record(0, { a: 1 })
    expect(r.recordings().map(recording => recording.rows)).toEqual([2, 1])
  })

  it("refuses more numbers than the limit and keeps what it has", () => {
    const r = recorder(10)
    for (let i = 0; i < 5; i++) r.record(i, { a: i })
    const problem = stopOf(() => r.record(5, { a: 5 }))
    expect(problem.code).toBe("recorded-too-much")
    expect(r.recordings()[0]!.rows).toBe(5)
  })

  it.each<[string, unknown, string]>([
    ["nothing", undefined, "undefined"],
    ["a number", 3, "3"],
    ["a bare vector", vec3(1, 2, 3), "bare vector"],
    ["no quantity", {}, "no quantity"],
    ["an empty group", { a: {} }, '"a"'],
    ["a text", { a: "1" }, '"a" is a text'],
    ["a list", { a: [1, 2, 3] }, '"a"'],
    ["null", { a: null }, '"a" is null'],
    ["a function", { a: () => 1 }, '"a" is a function'],
    ["a text in a vector", { a: new Vec3("1" as unknown as number, 0, 0) }, '"a.x" is a text'],
    ["a name with a dot", { "a.b": 1 }, "a.b"],
    ["a name with a picture", { "🚀": 1 }, "🚀"],
    ["a name written from right to left by a mark", { "a\u202eb": 1 }, "name"],
    ["the name __proto__", JSON.parse('{"__proto__": 1}'), "__proto__"],
    ["the name constructor", { constructor: 1 }, "constructor"],
    ["an empty name", { "": 1 }, '""'],
  ])("refuses %s in words", (_, quantities, named) => {
    const problem = stopOf(() => recorder().record(0, quantities))
    expect(problem.code).toMatch(/^record-(shape|value)$/)
    expect(problem.text).toContain(named)
    expect(problem.text.length).toBeLessThan(300)
    expect(problem.todo.length).toBeGreaterThan(20)
  })

  it("stays small under a name of a million letters, ten thousand names, and groups without end", () => {
    expect(stopOf(() => recorder().record(0, { ["a".repeat(1e6)]: 1 })).text.length).toBeLessThan(200)
    const many = Object.fromEntries(Array.from({ length: 10_000 }, (_, i) => [`q${i}`, i]))
    expect(stopOf(() => recorder().record(0, many)).code).toBe("record-shape")
    const endless: Record<string, unknown> = {}
    endless.again = endless
    expect(stopOf(() => recorder().record(0, endless)).text).toContain("deep")
  })

  it("reads an object that answers differently each time, and keeps only finite numbers of it", () => {
    let asked = 0
    const sly = {
      get a() {
        asked++
        return asked > 3 ? "no" : asked
      },
    }
    const r = recorder()
    r.record(0, sly)
    expect(() => {
      for (let i = 1; i < 9; i++) r.record(i, sly)
    }).toThrow()
    for (const { data } of r.recordings()) expect(data.every(Number.isFinite)).toBe(true)
  })

  it("keeps no part of a row whose reading failed or called record again", () => {
    const r = recorder()
    r.record(0, { a: 1, b: 1 })
    const failing = {
      a: 2,
      get b(): number {
        throw new Error("no")
      },
    }
    expect(() => r.record(1, failing)).toThrow("no")
    const nesting = {
      a: 2,
      get b(): number {
        r.record(1, { a: 3, b: 3 })
        return 2
      },
    }
    expect(stopOf(() => r.record(1, nesting)).text).toContain("record was called again")
    r.record(2, { a: 4, b: 4 })
    expect([...r.recordings()[0]!.data]).toEqual([0, 1, 1, 2, 4, 4])
  })

  it("reads proxies by what they answer, and refuses a vector that is only dressed as one where it is no number", () => {
    const dressed = new Proxy(vec3(1, 2, 3), { get: () => "4" })
    expect(stopOf(() => recorder().record(0, { a: dressed })).code).toBe("record-value")
    const r = recorder()
    r.record(0, new Proxy({ a: 1 }, {}))
    expect([...r.recordings()[0]!.data]).toEqual([0, 1])
  })
})
