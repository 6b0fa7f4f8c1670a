import { describe, expect, it } from "vitest"
import { placeLabels } from "../../../src/page/bench/labels.ts"

const near = (text: string, x: number, y: number) => ({ text, x, y, halfWidth: 8, halfHeight: 8 })

/** Whether two placed texts cover each other, at the mean width of a letter. */
const covers = (a: { text: string; x: number; y: number }, b: typeof a) =>
  a.x < b.x + b.text.length * 6.4 && b.x < a.x + a.text.length * 6.4 && Math.abs(a.y - b.y) < 14

const field = { left: 0, top: 0, right: 400, bottom: 300 }

describe("labels of bodies", () => {
  it("stand at the upper right of a body that is alone", () => {
    const [placed] = placeLabels([near("buoy", 100, 100)], field)
    expect(placed?.x).toBeGreaterThan(108)
    expect(placed?.y).toBeLessThan(100)
  })

  it("keep clear of what does not move, such as a hatched wall", () => {
    const wall = { left: 104, right: 126, top: 0, bottom: 300 }
    const [placed] = placeLabels([near("fender", 100, 100)], field, [wall])
    if (!placed) throw new Error("no label")
    expect(placed.x + placed.text.length * 6.4 <= wall.left || placed.x >= wall.right).toBe(true)
  })

  it("do not cover each other when bodies come close, in any direction", () => {
    for (let angle = 0; angle < 6.3; angle += 0.3) {
      const [x, y] = [200 + 18 * Math.cos(angle), 150 + 18 * Math.sin(angle)]
      const [a, b] = placeLabels([near("Earth", 200, 150), near("Moon", x, y)], field)
      if (!a || !b) throw new Error("two labels")
      expect(covers(a, b)).toBe(false)
    }
  })

  it("stay inside the picture", () => {
    const [placed] = placeLabels([near("side of the boat", 395, 4)], field)
    expect((placed?.x ?? 0) + 16 * 6.4).toBeLessThanOrEqual(400)
    expect(placed?.y).toBeGreaterThan(8)
  })
})
