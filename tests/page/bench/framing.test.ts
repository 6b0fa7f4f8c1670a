import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  axisTicks,
  motionExtent,
  pan,
  scaleBar,
  seen,
  toWorld,
  toX,
  toY,
  viewOf,
  zoom,
} from "../../../src/page/bench/framing.ts"
import { bodiesOf } from "../../../src/page/bench/series.ts"
import { projectile, record } from "../bench-fixture/recordings.ts"

const margins = { left: 40, right: 10, top: 20, bottom: 30 }
const side = fc.double({ min: -1e4, max: 1e4, noNaN: true })
const length = fc.double({ min: 1e-3, max: 1e4, noNaN: true })

describe("framing of a motion", () => {
  it("finds where the bodies ever are, and passes over what is not a number", () => {
    const recording = record(
      "cell",
      ["a.position"],
      [
        [0, 1, 2, 0],
        [1, Number.NaN, 900, 0],
        [2, -3, 5, 0],
      ],
    )
    expect(motionExtent(recording, bodiesOf(recording))).toEqual({ left: -3, right: 1, bottom: 2, top: 5 })
    const none = record("cell", ["a.position"], [[0, Number.NaN, 0, 0]])
    expect(motionExtent(none, bodiesOf(none))).toBeNull()
  })

  it("keeps the whole extent between the margins at one scale both ways", () => {
    fc.assert(
      fc.property(side, side, length, length, (left, bottom, wide, high) => {
        const extent = { left, right: left + wide, bottom, top: bottom + high }
        const view = viewOf(extent, 500, 300, margins)
        const slack = 1e-6
        expect(toX(view, extent.left)).toBeGreaterThan(margins.left - slack)
        expect(toX(view, extent.right)).toBeLessThan(500 - margins.right + slack)
        expect(toY(view, extent.top)).toBeGreaterThan(margins.top - slack)
        expect(toY(view, extent.bottom)).toBeLessThan(300 - margins.bottom + slack)
        const across = (toX(view, extent.right) - toX(view, extent.left)) / wide
        const up = (toY(view, extent.bottom) - toY(view, extent.top)) / high
        expect(across / up).toBeCloseTo(1, 6)
      }),
      { seed: 11 },
    )
  })

  it("gives a single point room, and every px its world point back", () => {
    const view = viewOf({ left: 2, right: 2, bottom: 7, top: 7 }, 500, 300, margins)
    expect(view.scale).toBe(250)
    expect(toWorld(view, toX(view, 2.3), toY(view, 6.9)).map(v => Number(v.toFixed(9)))).toEqual([2.3, 6.9])
  })

  it("zooms about a point that keeps its place, and pans by px", () => {
    const view = viewOf({ left: 0, right: 4, bottom: 0, top: 2 }, 500, 300, margins)
    const near = zoom(view, 3, [1, 0.5])
    expect(toX(near, 1)).toBeCloseTo(toX(view, 1), 9)
    expect(toY(near, 0.5)).toBeCloseTo(toY(view, 0.5), 9)
    expect(near.scale).toBeCloseTo(3 * view.scale, 9)
    expect(toX(pan(view, 25, -8), 1)).toBeCloseTo(toX(view, 1) + 25, 9)
    expect(toY(pan(view, 25, -8), 1)).toBeCloseTo(toY(view, 1) - 8, 9)
  })

  it("ticks both axes at one step, inside the field, and has a scale bar of a tenth to a quarter", () => {
    const recording = projectile("cell")
    const extent = motionExtent(recording, bodiesOf(recording))
    if (!extent) throw new Error("a projectile has an extent")
    for (const width of [300, 600, 1200]) {
      const view = viewOf(extent, width, width * 0.6, margins)
      const ticks = axisTicks(view)
      const field = seen(view)
      for (const x of ticks.x) expect(x).toBeGreaterThanOrEqual(field.left - 1e-9)
      for (const y of ticks.y) expect(y).toBeLessThanOrEqual(field.top + 1e-9)
      expect((ticks.x[1] ?? 0) - (ticks.x[0] ?? 0)).toBeCloseTo(ticks.step, 9)
      expect((ticks.y[1] ?? 0) - (ticks.y[0] ?? 0)).toBeCloseTo(ticks.step, 9)
      expect(ticks.step * view.scale).toBeGreaterThan(63)
      const part = scaleBar(view) / (field.right - field.left)
      expect(part).toBeGreaterThan(0.0999)
      expect(part).toBeLessThan(0.26)
    }
  })
})
