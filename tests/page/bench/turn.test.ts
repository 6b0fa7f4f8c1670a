import { describe, expect, it } from "vitest"
import { hasDepth, sceneBox, seenExtent } from "../../../src/page/bench/box.ts"
import { nearness, toSpot, type View, viewOf } from "../../../src/page/bench/framing.ts"
import { planeOutline, roomOf } from "../../../src/page/bench/room.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import {
  bearingWords,
  boxFaces,
  firstBearing,
  fromAbove,
  fromSide,
  seenAs,
  type Turn,
  turnedBy,
  turnOf,
} from "../../../src/page/bench/turn.ts"
import type { Triple } from "../../../src/page/bench/vectors.ts"
import { projectile, swing } from "../bench-fixture/recordings.ts"

const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const bearings = [-170, -90, -35, 0, 12, 30, 100, 180].flatMap(azimuth =>
  [-10, 0, 20, 55, 90].map(elevation => ({ azimuth, elevation })),
)
const flat: View = viewOf({ left: -2, right: 2, bottom: -2, top: 2 }, 400, 400, {
  left: 0,
  right: 0,
  top: 0,
  bottom: 0,
})
const seenFrom = (turn: Turn, about: Triple = [0, 0, 0]): View => ({ ...flat, turned: { turn, about } })

describe("a turned picture is a parallel projection to scale", () => {
  it.each(bearings)("$azimuth, $elevation: its axes are orthonormal and right-handed", bearing => {
    const [right, up, out] = turnOf(bearing)
    for (const [a, b, c] of [
      [right, up, out],
      [up, out, right],
    ] as const) {
      expect(dot(a, a)).toBeCloseTo(1, 12)
      expect(dot(a, b)).toBeCloseTo(0, 12)
      for (const k of [0, 1, 2] as const) expect(cross(a, b)[k]).toBeCloseTo(c[k], 12)
    }
  })

  it("keeps the vertical upright in the picture", () => {
    for (const bearing of bearings) expect(turnOf(bearing)[0][1]).toBe(0)
  })

  it("keeps every length, whatever the turn: what is seen and what lies along the sight add as squares", () => {
    const vector: Triple = [0.3, -1.2, 2.5]
    for (const bearing of bearings)
      expect(Math.hypot(...seenAs(turnOf(bearing), vector))).toBeCloseTo(Math.hypot(...vector), 12)
  })

  it("is the side view from the front, and the plan from above", () => {
    expect(toSpot(seenFrom(turnOf(fromSide)), 1, 0.5, 7)).toEqual(toSpot(flat, 1, 0.5, 7))
    const [x, y] = toSpot(seenFrom(turnOf(fromAbove)), 1, 9, 0.5)
    const [fx, fy] = toSpot(flat, 1, -0.5, 0)
    expect(x).toBeCloseTo(fx, 9)
    expect(y).toBeCloseTo(fy, 9)
  })

  it("is not the same picture from two sides: depth moves what stands behind", () => {
    const [near] = toSpot(seenFrom(turnOf(firstBearing)), 0, 0, 1)
    const [far] = toSpot(seenFrom(turnOf(firstBearing)), 0, 0, -1)
    expect(far - near).toBeGreaterThan(50)
  })

  it("knows what is nearer to the eye", () => {
    const view = seenFrom(turnOf(firstBearing))
    expect(nearness(view, 0, 0, 1)).toBeGreaterThan(nearness(view, 0, 0, -1))
  })
})

describe("turning", () => {
  it("goes round and stays the right way up", () => {
    expect(turnedBy({ azimuth: 170, elevation: 80 }, 20, 20)).toEqual({ azimuth: -170, elevation: 90 })
    expect(turnedBy({ azimuth: -170, elevation: 0 }, -20, -40)).toEqual({ azimuth: 170, elevation: -10 })
  })

  it("is said in words", () => {
    expect(bearingWords(fromSide)).toBe("seen from the front, level")
    expect(bearingWords(fromAbove)).toBe("seen from above")
    expect(bearingWords({ azimuth: -40, elevation: -5 })).toBe(
      "seen from 40° to the left, 5° below the horizontal",
    )
  })
})

describe("the room of a motion", () => {
  const study = studyOf(swing("swing"))
  const box = sceneBox(study, null, null)

  it("holds every recorded place, and a scene's wall near by", () => {
    const { data, rows, width } = study.recording
    for (let row = 0; row < rows; row += 7)
      for (const k of [0, 1, 2] as const) {
        const value = data[row * width + 1 + k] as number
        expect(value >= box.low[k] && value <= box.high[k]).toBe(true)
      }
    const wall = { kind: "plane", point: [1.4, 0], normal: [-1, 0], label: "" } as const
    expect(sceneBox(study, { cell: "swing", bodies: [], fixtures: [wall] }, null).high[0]).toBeCloseTo(1.4, 9)
    const far = { ...wall, point: [40, 0] } as const
    expect(sceneBox(study, { cell: "swing", bodies: [], fixtures: [far] }, null).high[0]).toBeLessThan(1.2)
  })

  it("fits its frame from every side", () => {
    for (const bearing of bearings) {
      const turn = turnOf(bearing)
      const extent = seenExtent(box, turn)
      const middle = [0, 1, 2].map(k => ((box.low[k] as number) + (box.high[k] as number)) / 2)
      for (let corner = 0; corner < 8; corner++) {
        const at = [0, 1, 2].map(
          k => ((corner >> k) & 1 ? (box.high[k] as number) : (box.low[k] as number)) - (middle[k] as number),
        ) as unknown as Triple
        const [right, up] = seenAs(turn, at)
        expect(Math.abs(right)).toBeLessThanOrEqual(extent.right + 1e-9)
        expect(Math.abs(up)).toBeLessThanOrEqual(extent.top + 1e-9)
      }
    }
  })

  it("numbers an axis only where it is long enough in the picture", () => {
    const about: Triple = [0, 0, 0]
    const tall = { low: box.low, high: [box.high[0], 0, box.high[2]] as const }
    const named = (bearing: typeof fromSide) =>
      roomOf(seenFrom(turnOf(bearing), about), tall)
        .axes.filter(axis => axis.ticks.length > 0)
        .map(axis => axis.name)
    expect(named(fromAbove)).toEqual(["x", "z"])
    expect(named(fromSide)).not.toContain("z")
    expect(named(firstBearing)).toEqual(["x", "z", "y"])
  })

  it("cuts a plane to the room, and leaves out one that does not meet it", () => {
    const view = seenFrom(turnOf(firstBearing))
    const plane = (y: number) =>
      planeOutline(view, box, { kind: "plane", point: [0, y], normal: [0, 1], label: "" })
    expect(plane((box.low[1] + box.high[1]) / 2)?.d.split("L")).toHaveLength(4)
    expect(plane(box.high[1] + 5)).toBeNull()
  })

  it("is offered only for a motion that leaves the plane x, y", () => {
    expect(hasDepth(study)).toBe(true)
    expect(hasDepth(studyOf(projectile("throw")))).toBe(false)
  })
})

describe("a box in space", () => {
  it("shows three faces, from the side one", () => {
    expect(boxFaces(turnOf(firstBearing), 10, 20)).toHaveLength(3)
    expect(boxFaces(turnOf(fromSide), 10, 20)).toEqual([
      "M-10.00 20.00L10.00 20.00L10.00 -20.00L-10.00 -20.00Z",
    ])
  })
})
