import fc from "fast-check"
import { describe, expect, it } from "vitest"
import type { Recording } from "../../src/run/contract.ts"
import { excerptOf } from "../../src/run/excerpt.ts"

const series = [
  { name: "key.position", kind: "vector" as const, column: 1 },
  { name: "gap", kind: "scalar" as const, column: 4 },
]
const width = 5
/** Row n at times[n] holds (n, 10 n, 100 n) and 1000 n; cut into chunks as the recorder does. */
function rowsAt(times: readonly number[], chunkRows: number) {
  const data = Float64Array.from(times.flatMap((t, n) => [t, n, 10 * n, 100 * n, 1000 * n]))
  const chunks: Float64Array[] = []
  for (let at = 0; at < data.length; at += chunkRows * width)
    chunks.push(data.subarray(at, at + chunkRows * width))
  return { cell: "fall", series, width, chunks }
}
const rowNumbers = ({ data, width: w, rows }: Recording): number[] =>
  Array.from({ length: rows }, (_, row) => data[row * w + 1]! / 1000)

describe("an excerpt of a recording", () => {
  it("holds the named series alone, and of the rows the last one at or before each time, and the very last", () => {
    const times = [0, 0.1, 0.2, 0.2, 0.3, 0.4, 0.5]
    const wish = { series: ["gap"], times: Float64Array.of(0, 0.2, 0.35) }
    const made = excerptOf(rowsAt(times, 3), wish)
    expect(made.series).toEqual([{ name: "gap", kind: "scalar", column: 1 }])
    expect(made.width).toBe(2)
    expect([...made.data]).toEqual([0, 0, 0.2, 3000, 0.3, 4000, 0.5, 6000])
  })
  it("finds the rows of times that were rounded to 32 bits", () => {
    const times = Array.from({ length: 3000 }, (_, n) => n * 0.001)
    const wanted = [1, 17, 700, 2048, 2999]
    const made = excerptOf(rowsAt(times, 256), {
      series: ["gap"],
      times: Float64Array.from(wanted, n => Math.fround(n * 0.001)),
    })
    expect(rowNumbers(made)).toEqual(wanted)
  })
  it("means a whole series by a component of it, and a group by its star; without times all rows come", () => {
    const names = (...wanted: string[]) =>
      excerptOf(rowsAt([0, 1], 1), { series: wanted }).series.map(({ name }) => name)
    expect(names("key.position.y")).toEqual(["key.position"])
    expect(names("key.*")).toEqual(["key.position"])
    expect(names("key.*", "gap")).toEqual(["key.position", "gap"])
    const made = excerptOf(rowsAt([0, 0.5, 1], 2), { series: ["gap"] })
    expect([...made.data]).toEqual([0, 0, 0.5, 1000, 1, 2000])
  })
  it.each([[["fog"]], [["gap", "fog"]], [["ke.*"]], [["gap.y"]], [[]]])(
    "tells what was recorded instead where %j is wanted and not all of it is there",
    series => {
      const made = excerptOf(rowsAt([0, 1], 1), { series })
      expect(made.series).toEqual([
        { name: "key.position", kind: "vector", column: 1 },
        { name: "gap", kind: "scalar", column: 4 },
      ])
      expect([...made.data]).toEqual([0, 0, 0, 0, 0, 1, 1, 10, 100, 1000])
    },
  )
  it("brings along a few of many others where one is missing, however many were recorded", () => {
    const series = Array.from({ length: 250 }, (_, i) => ({
      name: `q${i}`,
      kind: "scalar" as const,
      column: i + 1,
    }))
    const many = { cell: "c", series, width: 251, chunks: [new Float64Array(251)] }
    const names = excerptOf(many, { series: ["q200", "fog"] }).series.map(({ name }) => name)
    expect(names).toEqual([...Array.from({ length: 8 }, (_, i) => `q${i}`), "q200"])
  })
  it("is empty of a cell that recorded nothing", () => {
    expect(excerptOf(rowsAt([], 1), { series: ["gap"], times: Float64Array.of(0) }).rows).toBe(0)
  })
  it("is the same however the rows lie in chunks", () => {
    const ascending = fc
      .array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 30 })
      .map(all => all.map(n => n / 8).sort((a, b) => a - b))
    fc.assert(
      fc.property(ascending, ascending, fc.integer({ min: 1, max: 9 }), (times, wanted, chunk) => {
        const wish = { series: ["gap"], times: Float64Array.from(wanted) }
        const found = rowNumbers(excerptOf(rowsAt(times, chunk), wish))
        const expected = wanted.map(t => times.findLastIndex(time => time <= t)).filter(n => n >= 0)
        expect(found).toEqual([...new Set([...expected, times.length - 1])])
      }),
    )
  })
})
