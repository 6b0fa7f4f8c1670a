import { describe, expect, it } from "vitest"
import { distanceOf } from "../../../src/page/bench/compare.ts"
import { inSentence, studyOf } from "../../../src/page/bench/study.ts"
import { direction, describe as tell } from "../../../src/page/bench/words.ts"
import type { Recording } from "../../../src/run/contract.ts"
import { bounce, crowd, projectile, record, slide } from "../bench-fixture/recordings.ts"

const plain = { label: (body: string) => `the ${body}`, distances: [], departures: [] }
const words = (recording: Recording) => tell(studyOf(recording), plain).join(" ").replaceAll("\u00a0", " ")

describe("the motion in words", () => {
  it("tells start, highest point and end of a throw", () => {
    const text = words(projectile("cell", 9, 0.001))
    expect(text).toContain(
      "The weight starts at x = 0 m, y = 3.00 m, with momentum 3.60 kg m/s up and to the right.",
    )
    // closed form: 3 m + (9 · 0.8)²/(2 g) = 5.642 m at 0.734 s
    expect(text).toMatch(/highest at 0\.73\d s, at y = 5\.64 m/)
    expect(text).toMatch(/At the end it is at x = \d\.\d\d m/)
  })

  it("has no up and down along y when the scene is seen from above", () => {
    const above = tell(studyOf(projectile("cell", 9, 0.001)), { ...plain, view: "top" })
      .join(" ")
      .replaceAll("\u00a0", " ")
    expect(above).toContain("momentum 3.60 kg m/s towards +x and +y.")
    expect(above).toMatch(/turns back along y at 0\.73\d s, at y = 5\.64 m/)
    expect(above).not.toMatch(/highest|\bup\b|down|right|left/)
    expect(direction(0, -1, 1, "top")).toBe("towards \u2212y and up")
  })

  it("calls no turn the highest place of a thing that starts higher", () => {
    expect(words(bounce("cell"))).toMatch(/turns back along y \d times/)
    expect(words(bounce("cell"))).not.toContain("highest")
  })

  it("gives a label that is a letter no article", () => {
    const look = { shape: "disc", width: 0.1, height: 0.1 } as const
    const bodies = [
      { ...look, body: "A", label: "A" },
      { ...look, body: "boat", label: "boat" },
    ]
    const scene = { cell: "cell", bodies, fixtures: [] }
    expect(["A", "boat", "pad"].map(body => inSentence(scene, body))).toEqual([
      "body A",
      "the boat",
      "body pad",
    ])
  })

  it("tells each push with its time and greatest force", () => {
    expect(words(bounce("cell"))).toMatch(
      /The force deck acts 3 times: from 0\.55\d s to 0\.7\d\d s \(at most \d+ N\)/,
    )
  })

  it("tells rest", () => {
    expect(words(slide("cell"))).toMatch(/comes to rest at 0\.87\d s at x = 1\.31 m/)
  })

  it("tells when time stands still, when a position is not a number, and when nothing moves", () => {
    const rows = (t: (k: number) => number, x: (k: number) => number) =>
      record(
        "cell",
        ["a.position"],
        Array.from({ length: 5 }, (_, k) => [t(k), x(k), 0, 0]),
      )
    expect(
      words(
        rows(
          () => 0,
          k => k,
        ),
      ),
    ).toContain("Time stands still, so rows stand in for seconds here.")
    expect(
      words(
        rows(
          k => k,
          k => (k > 2 ? Number.NaN : k),
        ),
      ),
    ).toContain("From 3 s on its position is not a number.")
    expect(
      words(
        rows(
          k => k,
          () => 2,
        ),
      ),
    ).toContain("It stays there throughout.")
  })

  it("tells the first of many bodies only, and how many there are", () => {
    const text = words(crowd("cell", 20, 300))
    expect(text).toContain("20 bodies move; the first 3 are told one by one.")
    expect(text).not.toContain("float4")
  })

  it("changes when a recorded number is changed", () => {
    const recording = projectile("cell")
    const data = recording.data.slice()
    data[2] = 2.5
    expect(words({ ...recording, data })).not.toBe(words(recording))
    expect(words({ ...recording, data })).toContain("y = 2.50 m")
  })

  it("a force that is only rounding beside the others is zero throughout", () => {
    const rows = Array.from({ length: 20 }, (_, k) => [k, k, 0, 0, 0, -8, 0, 0, k > 4 ? 2.5e-12 : 0, 0])
    const recording = record("cell", ["a.position", "a.forces.weight", "a.forces.stick"], rows)
    expect(words(recording)).toContain("The force stick on the a is zero throughout.")
  })

  it("tells the departure of the body that was looked at, and of no other", () => {
    const distances = ["formula", "formulaTwo"].map(body => ({ body, greatest: 0.1, at: 1, atEnd: 0.1 }))
    const departures = [{ instant: 0.5, of: ["formulaTwo.position"] }]
    const told = tell(studyOf(projectile("cell")), { ...plain, distances, departures }).slice(-2)
    expect(told[0]).toContain("is never further than")
    expect(told[1]).toContain("leaves the reference motion")
  })

  it("a thinned reference is compared at its own rows, where the straight line between them does not count", () => {
    const own = studyOf(projectile("cell", 9, 0.001))
    const { recording } = own
    const rows = Array.from({ length: recording.rows }, (_, row) =>
      Array.from(recording.data.slice(row * recording.width, (row + 1) * recording.width)),
    )
    const names = ["weight.position", "weight.momentum", "weight.forces.gravity", "weight.forces.drag"]
    const thinned = studyOf(
      record(
        "cell",
        names,
        rows.filter((_, row) => row % 50 === 0),
      ),
    )
    const [a, b] = [own.bodies[0]!, thinned.bodies[0]!]
    expect(distanceOf({ ...own, body: a }, { ...thinned, body: b })?.greatest).toBe(0)
  })

  it("a motion nearer to the reference than rounding tells follows it", () => {
    // the throw is some 8 m wide
    const near = (greatest: number) =>
      tell(studyOf(projectile("cell")), {
        ...plain,
        distances: [{ body: "weight", greatest, at: 1, atEnd: 0 }],
      }).at(-1)
    expect(near(3e-5)).toBe("The weight follows the reference motion.")
    expect(near(3e-3)).toContain("never further than")
  })

  it("says how far the motion is from the reference, and when it left it", () => {
    const [own, other] = [studyOf(projectile("cell", 9, 0.01, 0.004)), studyOf(projectile("cell"))]
    const [a, b] = [own.bodies[0], other.bodies[0]]
    if (!a || !b) throw new Error("no body")
    const found = distanceOf({ ...own, body: a }, { ...other, body: b })
    if (!found) throw new Error("no distance")
    const left = tell(own, {
      ...plain,
      distances: [found],
      departures: [{ instant: 0.37, of: ["weight.position"] }],
    }).at(-1)
    expect(left?.replaceAll("\u00a0", " ")).toMatch(
      /leaves the reference motion at 0\.37 s; at the end it is 0\.\d+ m away/,
    )
    const same = distanceOf({ ...own, body: a }, { ...own, body: a })
    expect(same).toEqual({ body: "weight", greatest: 0, at: 0, atEnd: 0 })
  })

  it("names directions as one would point", () => {
    expect(direction(0, -2, 0)).toBe("down")
    expect(direction(-3, 3, 0)).toBe("up and to the left")
    expect(direction(0, 0, -1)).toBe("into the page")
    expect(direction(1, 0.01, 0)).toBe("to the right")
    expect(direction(0, 0, 0)).toBe("")
  })
})
