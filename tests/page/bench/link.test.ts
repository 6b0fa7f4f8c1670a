import { describe, expect, it } from "vitest"
import { toX, toY, viewOf } from "../../../src/page/bench/framing.ts"
import { linkPicture, sagOf } from "../../../src/page/bench/link.ts"
import { hatchedBoxes } from "../../../src/page/bench/plane.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import { pinched } from "../../../src/page/bench/touch.ts"
import { record } from "../bench-fixture/recordings.ts"

const margins = { left: 40, right: 10, top: 20, bottom: 20 }
const view = viewOf({ left: -2, right: 2, bottom: -2, top: 2 }, 500, 400, margins)
/** a weight that comes from 0.6 m below a hook to 1 m below it, and beyond */
const study = studyOf(
  record(
    "c",
    ["weight.position"],
    [
      [0, 0, -0.6, 0],
      [1, 0, -1, 0],
      [2, 0.8, -0.6, 0],
    ],
  ),
)
const rope = { kind: "rope", from: [0, 0], to: "weight", length: 1, label: "rope" } as const
const at = (row: number) => ({ row, part: 0 })
const heights = (d: string) => [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(m => Number(m[2]))

/** Length of a parabola of this span and sag, by many chords. */
function arc(span: number, sag: number): number {
  let length = 0
  const n = 2000
  const y = (u: number) => 4 * sag * u * (1 - u)
  for (let k = 0; k < n; k++) length += Math.hypot(span / n, y((k + 1) / n) - y(k / n))
  return length
}

describe("a rope", () => {
  it("is straight where its ends are its length apart, and marked as slack where they are nearer", () => {
    expect(linkPicture(rope, study, at(1), view, "side")).toMatchObject({ slack: false })
    expect(linkPicture(rope, study, at(2), view, "side")).toMatchObject({ slack: false })
    expect(linkPicture(rope, study, at(0), view, "side")).toMatchObject({ slack: true })
  })
  it("hangs below both ends while it is slack, and lies in a bow when seen from above", () => {
    const long = { ...rope, length: 1.6 }
    const side = linkPicture(long, study, at(2), view, "side")!
    expect(Math.max(...heights(side.d))).toBeGreaterThan(toY(view, -0.6) + 10)
    const top = linkPicture(long, study, at(2), view, "top")!
    expect(top.d).not.toBe(side.d)
  })
  it("has about its own length when drawn slack", () => {
    for (const span of [0.95, 0.8, 0.6]) expect(Math.abs(arc(span, sagOf(1, span)) - 1)).toBeLessThan(0.05)
    expect(sagOf(1, 1)).toBe(0)
    expect(sagOf(1, 2)).toBe(0)
  })
  it("is not drawn to a body that is not recorded", () =>
    expect(linkPicture({ ...rope, to: "lost" }, study, at(0), view, "side")).toBeNull())
})

it("a strut is a rod between its ends at any distance", () => {
  const strut = { kind: "strut", from: [0, 0], to: "weight", label: "" } as const
  const { d, to } = linkPicture(strut, study, at(2), view, "side")!
  expect(d).toMatch(/Z$/)
  expect(to[0]).toBeCloseTo(toX(view, 0.8), 9)
})

describe("two fingers on a picture", () => {
  it("bring it nearer about what lies between them", () => {
    const from = [
      [100, 100],
      [200, 100],
    ] as const
    const near = pinched(view, from, [
      [50, 100],
      [250, 100],
    ])
    expect(near.scale).toBeCloseTo(2 * view.scale, 9)
    const under = (v: typeof view, px: number) => v.centre[0] + (px - toX(v, v.centre[0])) / v.scale
    expect(under(near, 150)).toBeCloseTo(under(view, 150), 9)
  })
  it("move it along with them", () => {
    const moved = pinched(
      view,
      [
        [100, 100],
        [200, 100],
      ],
      [
        [130, 80],
        [230, 80],
      ],
    )
    expect(moved.scale).toBeCloseTo(view.scale, 9)
    expect(toX(moved, 0) - toX(view, 0)).toBeCloseTo(30, 9)
    expect(toY(moved, 0) - toY(view, 0)).toBeCloseTo(-20, 9)
  })
})

it("a wall's hatching is kept clear of names along its whole length", () => {
  const wall = { kind: "plane", point: [0, 0], normal: [1, 0], label: "quay" } as const
  const boxes = hatchedBoxes({ cell: "c", bodies: [], fixtures: [wall] }, view)
  const x = toX(view, 0)
  for (let y = margins.top + 6; y < 380; y += 20)
    expect(boxes.some(b => b.left < x - 4 && b.right > x - 5 && b.top <= y + 6 && b.bottom >= y - 6)).toBe(
      true,
    )
})
