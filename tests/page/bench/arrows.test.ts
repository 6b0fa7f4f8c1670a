import { describe, expect, it } from "vitest"
import { arrowOf, arrowPaths, scaleFor } from "../../../src/page/bench/arrows.ts"
import { viewOf } from "../../../src/page/bench/framing.ts"
import { springEnds } from "../../../src/page/bench/picture.ts"
import { planePicture } from "../../../src/page/bench/plane.ts"
import { springPath } from "../../../src/page/bench/spring.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import { momentAt } from "../../../src/page/bench/timeline.ts"
import { arrowScales, arrowsOf, netForceAt, velocityAt } from "../../../src/page/bench/vectors.ts"
import { bounce, helix, projectile, slide } from "../bench-fixture/recordings.ts"

const scale = { value: 10, px: 40 }
const all = { forces: true, net: true, velocity: true, momentum: true }

describe("arrows", () => {
  it("are as long as their scale says, with y upwards", () => {
    const arrow = arrowOf("force", "F", [100, 50], [3, 4, 0], scale, 500)
    expect(arrow?.to).toEqual([112, 34])
    expect(arrow?.size).toBe(5)
  })

  it("are drawn broken, never shortened in silence, when they are too long", () => {
    const arrow = arrowOf("force", "F", [0, 0], [1000, 0, 0], scale, 120)
    expect(arrow).toMatchObject({ to: [120, 0], broken: true })
    if (!arrow) throw new Error("an arrow")
    expect(arrowPaths(arrow).shaft).not.toBe(arrowPaths({ ...arrow, broken: false }).shaft)
  })

  it("keep the part along the line of sight, out of the page and into it", () => {
    expect(arrowOf("force", "F", [0, 0], [0, 0, 7], scale, 120)).toMatchObject({ depth: 7, to: [0, 0] })
    expect(arrowOf("force", "F", [0, 0], [1, 0, -7], scale, 120)?.depth).toBe(-7)
    expect(arrowOf("force", "F", [0, 0], [5, 0, 1e-9], scale, 120)?.depth).toBe(0)
  })

  it("are not drawn for nothing, nor for what is not a number", () => {
    expect(arrowOf("force", "F", [0, 0], [0, 0, 0], scale, 120)).toBeNull()
    expect(arrowOf("force", "F", [0, 0], [Number.NaN, 1, 0], scale, 120)).toBeNull()
  })

  it("differ in shape and not in ink alone: double shaft for momentum, open head for velocity", () => {
    const paths = (kind: "force" | "velocity" | "momentum") => {
      const arrow = arrowOf(kind, "v", [0, 0], [10, 0, 0], scale, 120)
      if (!arrow) throw new Error("an arrow")
      return arrowPaths(arrow)
    }
    expect(paths("momentum").shaft.match(/M/g)).toHaveLength(2)
    expect(paths("force").shaft.match(/M/g)).toHaveLength(1)
    expect(paths("velocity").headOpen).toBe(true)
    expect(paths("force").head.endsWith("Z")).toBe(true)
  })

  it("have one round scale for a whole recording", () => {
    const chosen = scaleFor(37, 70)
    expect(chosen?.value).toBe(20)
    expect(((chosen?.px ?? 0) / 20) * 37).toBeCloseTo(70, 9)
    expect(scaleFor(0, 70)).toBeNull()
    const { force } = arrowScales(studyOf(bounce("cell")), 70)
    const weight = (2 * 9.81 * (force?.px ?? 0)) / (force?.value ?? 1)
    expect(weight).toBeGreaterThan(12)
  })

  it("show what is recorded: weight, and the change of position over a step", () => {
    const study = studyOf(projectile("cell"))
    const [body] = study.bodies
    if (!body) throw new Error("a body")
    const [vx, vy] = velocityAt(study, body, 20)
    expect(vx).toBeCloseTo(5.4, 9)
    expect(vy).toBeCloseTo(7.2 - 9.81 * 0.2, 9)
    expect(netForceAt(study, body, 20)[1]).toBeCloseTo(-9.81 * 0.4, 9)
    const scales = arrowScales(study, 70)
    const names = arrowsOf(study, body, 20, [0, 0], scales, all, 200).map(a => a.kind)
    expect(names.sort()).toEqual(["force", "momentum", "net", "velocity"])
  })

  it("change when the recording is changed", () => {
    const recording = projectile("cell")
    const data = recording.data.slice()
    data[20 * recording.width + 8] = 5
    const tips = [recording, { ...recording, data }].map(r => {
      const study = studyOf(r)
      const [body] = study.bodies
      if (!body) throw new Error("a body")
      return arrowsOf(study, body, 20, [0, 0], { force: scale, velocity: null, momentum: null }, all, 200)[0]
        ?.to
    })
    expect(tips[0]?.[1]).toBeGreaterThan(0)
    expect(tips[1]?.[1]).toBeLessThan(0)
  })

  it("of a motion across the page have dots and crosses", () => {
    const study = studyOf(helix("cell"))
    const [body] = study.bodies
    if (!body) throw new Error("a body")
    const depths = [100, 300].map(
      row => arrowsOf(study, body, row, [0, 0], arrowScales(study, 70), all, 200)[0]?.depth,
    )
    expect(Math.sign(depths[0] ?? 0)).toBe(-Math.sign(depths[1] ?? 0))
  })
})

describe("springs", () => {
  it("begin and end where they are fastened, with the same turns pressed and drawn", () => {
    const count = (to: number) => springPath([10, 20], [to, 20], 60).match(/L/g)?.length
    const path = springPath([10, 20], [90, 20], 60)
    expect(path.startsWith("M10 20")).toBe(true)
    expect(path.endsWith("L90 20")).toBe(true)
    expect(count(90)).toBe(count(30))
  })

  it("that push only stay at their rest length when the body has left", () => {
    const study = studyOf(bounce("cell"))
    const fixture = { kind: "spring", from: [0, -0.25], to: "buoy", restLength: 0.25, label: "deck" } as const
    const away = springEnds(fixture, study, momentAt(study.timeline, 0.2))
    expect(away?.to[1]).toBeCloseTo(0, 9)
    const pressed = springEnds(fixture, study, momentAt(study.timeline, 0.63))
    expect(pressed?.to[1]).toBeLessThan(-0.2)
    const fastened = springEnds({ ...fixture, label: "rope" }, study, momentAt(study.timeline, 0.2))
    expect(fastened?.to[1]).toBeGreaterThan(1)
  })
})

describe("planes", () => {
  const view = viewOf({ left: -2, right: 2, bottom: -1, top: 1 }, 500, 300, {
    left: 40,
    right: 10,
    top: 20,
    bottom: 30,
  })

  it("cross the whole picture and are hatched on the solid side", () => {
    const floor = planePicture(view, [0, 0], [0, 1])
    expect(floor?.surface).toMatch(/^M(490|40) 145L(490|40) 145$/)
    const strokes = floor?.hatching.match(/l-?[\d.]+ (-?[\d.]+)/g) ?? []
    expect(strokes.length).toBeGreaterThan(40)
    for (const stroke of strokes) expect(Number(stroke.split(" ")[1])).toBeGreaterThan(0)
    const ceiling = planePicture(view, [0, 0], [0, -1])
    expect(ceiling?.hatching).toMatch(/l-?[\d.]+ -/)
  })

  it("are left out when they do not cross it, or have no direction", () => {
    expect(planePicture(view, [0, 50], [0, 1])).toBeNull()
    expect(planePicture(view, [0, 0], [0, 0])).toBeNull()
  })
})

it("a slide's net force lies along its friction", () => {
  const study = studyOf(slide("cell"))
  const [body] = study.bodies
  if (!body) throw new Error("a body")
  const [x, y] = netForceAt(study, body, 100)
  expect(x).toBeCloseTo(-0.35 * 12 * 9.81, 9)
  expect(y).toBeCloseTo(0, 9)
})
