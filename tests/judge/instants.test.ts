import { describe, expect, it } from "vitest"
import { instantsOf } from "../../src/judge/rules/instants.ts"
import type { Track } from "../../src/judge/track.ts"

const trackOf = (rows: readonly (readonly [t: number, force: number])[]): Track => ({
  times: Float64Array.from(rows, row => row[0]),
  values: Float64Array.from(rows, row => row[1]),
  dim: 1,
  slopes: new Float64Array(rows.length),
  corners: new Uint8Array(rows.length),
})

describe("the end of a contact", () => {
  const whole = Array.from({ length: 501 }, (_, i): [number, number] => [
    i / 100,
    i > 100 && i < 180 ? Math.sin((Math.PI * (i - 100)) / 80) : 0,
  ])

  it("is the first instant without force", () => {
    expect(instantsOf("contact ends", trackOf(whole))[0]).toBeCloseTo(1.8, 12)
    expect(instantsOf("contact begins", trackOf(whole))).toEqual([1.01])
  })

  it("stays where it is when a packed motion keeps of the time without force only its end", () => {
    const packed = whole.filter((_, i) => i <= 179 || i === 500)
    expect(instantsOf("contact ends", trackOf(packed))[0]).toBeCloseTo(1.8, 12)
  })
})
