import { describe, expect, it } from "vitest"
import { levelDomain } from "../../../src/page/bench/draw-plot.ts"
import { nearestRow, plotModel } from "../../../src/page/bench/plot-model.ts"
import { mainQuantity, quantitiesOf } from "../../../src/page/bench/quantities.ts"
import { plotCsv } from "../../../src/page/bench/save.ts"
import { recordingFor } from "../../../src/page/bench/series.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import { bounce, projectile, record, slide } from "../bench-fixture/recordings.ts"

const of = (recording: Parameters<typeof studyOf>[0], units = {}) => {
  const study = studyOf(recording)
  return { study, quantities: quantitiesOf(study, units, body => body) }
}

describe("quantities to plot", () => {
  it("are everything recorded, with units, and velocity where momentum and motion give a mass", () => {
    const { quantities } = of(slide("cell"))
    const unit = Object.fromEntries(quantities.map(q => [q.id, q.unit]))
    expect(unit).toMatchObject({
      t: "s",
      "crate.position.x": "m",
      "crate.momentum.size": "kg m/s",
      "crate.forces.friction.x": "N",
      "crate.netForce.x": "N",
      "crate.velocity.x": "m/s",
      "crate.kineticEnergy": "J",
    })
    expect(quantities.find(q => q.id === "crate.velocity.x")?.read(0)).toBeCloseTo(3, 9)
    expect(quantities.find(q => q.id === "crate.kineticEnergy")?.read(0)).toBeCloseTo(54, 9)
  })

  it("have no unit that nobody stated, and the stated one where the units run found it", () => {
    const recording = record("cell", ["a.position", "bill!"], [[0, 1, 2, 3, 4]])
    expect(of(recording).quantities.find(q => q.id === "bill")?.unit).toBe("")
    expect(of(recording, { bill: "W" }).quantities.find(q => q.id === "bill")?.unit).toBe("W")
  })

  it("the first plot shows the coordinate that moves most", () => {
    const main = (r: Parameters<typeof studyOf>[0]) => mainQuantity(of(r).study, of(r).quantities)?.id
    expect(main(bounce("cell"))).toBe("buoy.position.y")
    expect(main(slide("cell"))).toBe("crate.position.x")
  })
})

describe("a plot", () => {
  it("labels its axes with names and units", () => {
    const { study, quantities } = of(slide("cell"))
    const wish = (...y: string[]) => plotModel(study, quantities, { x: "t", y, caption: "" }, 500)
    expect(wish("crate.position.x")?.yLabel).toBe("position of crate, x (m)")
    expect(wish("crate.momentum.x", "crate.momentum.y")?.yLabel).toBe("momentum of crate (kg\u00a0m/s)")
    expect(wish("crate.momentum.x", "crate.position.x")?.yLabel).toBe(
      "momentum of crate (kg\u00a0m/s); position of crate (m)",
    )
    expect(wish("crate.position.x")?.xLabel).toBe("time (s)")
  })

  it("tells lines of one ink apart by their strokes, and leaves long dashes to the reference", () => {
    const { study, quantities } = of(slide("cell"))
    const model = plotModel(
      study,
      quantities,
      { x: "t", y: ["crate.momentum.x", "crate.momentum.y"], caption: "" },
      500,
    )
    const dashes = model?.lines.map(l => l.dash) ?? []
    expect(new Set(dashes).size).toBe(2)
    for (const dash of dashes) expect(dash).not.toMatch(/^9/)
  })

  it("says which names are not recorded, and draws the others", () => {
    const { study, quantities } = of(slide("cell"))
    const model = plotModel(
      study,
      quantities,
      { x: "t", y: ["crate.position.x", "crate.colour"], caption: "" },
      500,
    )
    expect(model?.missing).toEqual(["crate.colour"])
    expect(plotModel(study, quantities, { x: "t", y: ["crate.colour"], caption: "" }, 500)).toBeNull()
  })

  it("finds the row under a press, over time and along a path", () => {
    const { study, quantities } = of(projectile("cell"))
    const toPx = { x: (v: number) => v * 100, y: (v: number) => -v * 100 }
    const over = plotModel(study, quantities, { x: "t", y: ["weight.position.y"], caption: "" }, 500)
    const path = plotModel(
      study,
      quantities,
      { x: "weight.position.x", y: ["weight.position.y"], caption: "" },
      500,
    )
    if (!over || !path) throw new Error("plots")
    expect(nearestRow(study, over, 50, 9999, toPx)).toBe(50)
    const x = path.x.read(77) * 100
    const y = -(path.lines[0]?.quantity.read(77) ?? 0) * 100
    expect(nearestRow(study, path, x, y, toPx)).toBe(77)
  })
})

describe("the recording for the cell in view", () => {
  const [one, two, none] = [slide("b"), slide("d"), { ...slide("c"), rows: 0 }]
  const cells = ["a", "b", "c", "d", "e"]

  it("is its own, else the next one further down, else the last above", () => {
    const shown = (cell: string) => recordingFor([one, none, two], cells, cell)?.cell
    expect([..."abcde"].map(shown)).toEqual(["b", "b", "d", "d", "d"])
    expect(recordingFor([], cells, "a")).toBeNull()
    expect(recordingFor([none], cells, "a")).toBeNull()
  })
})

describe("a plot saved as CSV", () => {
  it("holds every recorded row in full precision, with names and units", () => {
    const { study, quantities } = of(slide("cell"))
    const model = plotModel(
      study,
      quantities,
      { x: "t", y: ["crate.position.x", "crate.momentum.x"], caption: "" },
      500,
    )
    if (!model) throw new Error("a plot")
    const lines = plotCsv(model, study.recording.rows).trimEnd().split("\n")
    expect(lines[0]).toBe("t [s],crate.position.x [m],crate.momentum.x [kg m/s]")
    expect(lines).toHaveLength(study.recording.rows + 1)
    const [t, x, p] = (lines[101] ?? "").split(",").map(Number)
    const at = 100 * study.recording.width
    expect([t, x, p]).toEqual([
      study.recording.data[at],
      study.recording.data[at + 1],
      study.recording.data[at + 4],
    ])
  })
})

describe("the axis of a plot", () => {
  const domain = (values: readonly number[]) => {
    const study = studyOf(
      record(
        "c",
        ["a!"],
        values.map((value, k) => [k, value]),
      ),
    )
    const model = plotModel(
      study,
      quantitiesOf(study, {}, b => b),
      { x: "t", y: ["a"], caption: "" },
      300,
    )
    if (!model) throw new Error("no plot")
    return levelDomain(model, null, null).domain
  }
  it("stands around values that stay the same, rather than going into their rounding", () => {
    expect(domain([4, 4, 4 + 1e-14])).toEqual([0, 1.5 * (4 + 1e-14)])
    expect(domain([-2, -2])).toEqual([-3, 0])
    expect(domain([0, 0])).toEqual([-1, 1])
  })
  it("is left to the values where they change", () => expect(domain([4, 4.001])).toBeUndefined())
})
