import { describe, expect, it } from "vitest"
import { packReference, settleReference, unpackReference } from "../../src/judge/pack.ts"
import { packedRows, thin } from "../../src/judge/thin.ts"
import { sample, trackOf } from "../../src/judge/track.ts"
import type { Check } from "../../src/worksheet/contract.ts"
import { bounce, fall, halvings, simulate } from "./steppers.ts"

const check: Check = {
  name: "moves",
  cell: "cell",
  rule: { kind: "compare", series: "body0.position", tolerance: null },
  points: 1,
  says: "",
  hint: "",
  slips: {},
  draws: 0,
}
const reference = {
  parameters: { height: 8 },
  factors: halvings,
  runs: halvings.map(factor => [simulate(bounce(), "momentum first", factor)]),
  slips: Array.from({ length: 20 }, (_, i) => ({
    slip: `slip-${i}`,
    blank: "b",
    hint: "Look at the sign.",
    recordings: [simulate({ ...fall, p: [i / 10, 0] }, "momentum first")],
  })),
}

describe("the packed form of a reference", () => {
  const json = JSON.stringify(packReference(reference, [check]))
  const back = unpackReference(JSON.parse(json))

  it("is JSON, under 300 kB with twenty slips, and holds only the series that checks read", () => {
    expect(json.length).toBeLessThan(300_000)
    for (const recordings of back.runs)
      expect(recordings[0]!.series.map(s => s.name)).toEqual(["body0.position"])
  })

  it("keeps the motion to less than a thousandth of its extent, contacts and turning points included", () => {
    const full = trackOf(reference.runs[0]![0], "body0.position")!
    const packed = trackOf(back.runs[0]![0], "body0.position")!
    expect(packed.times.length).toBeLessThanOrEqual(packedRows)
    const here = new Float64Array(3)
    let worst = 0
    for (let i = 0; i < full.times.length; i++) {
      sample(packed, full.times[i]!, here)
      worst = Math.max(worst, Math.abs(here[1]! - full.values[i * 3 + 1]!))
    }
    expect(worst / 0.52).toBeLessThan(1e-3)
    expect(Math.min(...packed.values.filter((_, i) => i % 3 === 1))).toBeCloseTo(
      Math.min(...full.values.filter((_, i) => i % 3 === 1)),
      5,
    )
  })

  it("unpacks to what packs to the same text again: browser and Node judge against the same numbers", () => {
    expect(JSON.stringify(packReference(back, [check]))).toBe(json)
    expect(settleReference(reference, [check])).toEqual(back)
  })

  it("keeps short recordings whole", () => {
    const short = simulate({ ...fall, until: 0.05 }, "momentum first")
    expect(thin(short, 400).rows).toBe(50)
  })

  it("refuses what is none", () => {
    for (const wrong of [null, 3, {}, { format: "other" }])
      expect(() => unpackReference(wrong)).toThrow(TypeError)
  })
})
