import { describe, expect, it } from "vitest"
import type { Motion } from "../../src/report/contract.ts"
import { figureKey, overlay } from "../../src/report/figure.ts"
import { axisNumber, ticksOf } from "../../src/report/ticks.ts"
import { fall, subject } from "../support/marked.ts"

const follows = subject.sheet.checks.find(check => check.name === "follows")!
const reference = [fall(1)]
/** Points of the line of a kind, in pixels. */
const lineOf = (svg: string, kind: string): [x: number, y: number][] =>
  (new RegExp(`<polyline class="${kind}[^"]*" points="([^"]*)"`).exec(svg)?.[1] ?? "")
    .split(" ")
    .filter(Boolean)
    .map(point => point.split(",").map(Number) as [number, number])

describe("the overlay of an answer and the reference", () => {
  it("lays equal motions on each other", () => {
    const svg = overlay(follows, [fall(1)], reference, null)
    expect(lineOf(svg, "own")).toEqual(lineOf(svg, "reference"))
    expect(lineOf(svg, "own")).toHaveLength(60)
    expect(svg).not.toContain("parting")
  })
  it("draws y upwards, on the scale of its ticks", () => {
    const svg = overlay(follows, [fall(1)], reference, null)
    const points = lineOf(svg, "own")
    const tick = (value: string): number =>
      Number(new RegExp(`y="([\\d.]+)" text-anchor="end">${value}<`).exec(svg)![1]) - 4
    expect(points[0]![1]).toBeLessThan(points.at(-1)![1])
    const perMetre = (tick("0") - tick("5")) / 5
    expect(points.at(-1)![1] - points[0]![1]).toBeCloseTo(perMetre * 4.905 * 1.3 ** 2, 0)
  })
  it("draws what moves and leaves out what does not", () => {
    const svg = overlay(follows, [fall(1)], reference, null)
    expect(svg).toContain("key.position.y in m")
    expect(svg).not.toContain("key.position.x")
  })
  it("marks the instant of departure at its time", () => {
    const svg = overlay(follows, [fall(2)], reference, 0.65)
    const [, x] = /class="parting" x1="([\d.]+)"/.exec(svg)!
    const [first, last] = [lineOf(svg, "reference")[0]![0], lineOf(svg, "reference").at(-1)![0]]
    expect(Number(x)).toBeCloseTo((first + last) / 2, 0)
    expect(svg).toContain("They part at 0.65 s.")
  })
  it("keeps the reference readable beside a motion that runs away, and says that it goes on", () => {
    const svg = overlay(follows, [fall(1e9)], reference, 0)
    const ys = lineOf(svg, "reference").map(([, y]) => y)
    expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(20)
    expect(svg).toContain("goes on outside the picture")
    expect(overlay(follows, [fall(1)], reference, null)).not.toContain("outside the picture")
  })
  it("says so where nothing was recorded, and draws nothing where nothing is known", () => {
    expect(overlay(follows, [], reference, null)).toContain("Nothing was recorded by this answer.")
    expect(overlay(follows, [], [], null)).toBe("")
  })
  it("names no reference where it is kept back", () => {
    const svg = overlay(follows, [fall(2)], [], null)
    expect(svg).not.toContain("reference")
    expect(lineOf(svg, "own")).toHaveLength(60)
  })
  it("does not call a count a time", () => {
    const counted = (motion: Motion): Motion => ({ ...motion, ofTime: false })
    const svg = overlay(follows, [counted(fall(2))], [counted(fall(1))], 1)
    expect(svg).toContain("They part at record 1.")
    expect(svg).not.toContain("t in s")
  })
  it("is the same picture for checks that read the same, and none for those that read nothing", () => {
    expect(figureKey(follows)).toBe(figureKey({ ...follows, name: "other" }))
    expect(figureKey({ ...follows, rule: { kind: "units" } })).toBeNull()
  })
})

describe("the ticks of an axis", () => {
  it.each([
    [0, 1.3, 5, [0, 0.5, 1]],
    [-14.1, 8, 4, [-10, 0]],
    [0, 1e-9, 4, [0, 5e-10, 1e-9]],
    [3, 3, 4, [3]],
  ])("from %d to %d are round", (low, high, wanted, ticks) => {
    const found = ticksOf(low, high, wanted)
    expect(found).toHaveLength(ticks.length)
    for (const [i, tick] of ticks.entries()) expect(found[i]).toBeCloseTo(tick, 12)
  })
  it.each([
    [0, "0"],
    [-2.5, "−2.5"],
    [2.4e7, "2.4 · 10⁷"],
    [-5e-10, "−5 · 10⁻¹⁰"],
    [0.30000000000000004, "0.3"],
  ])("say %d as %s", (value, text) => expect(axisNumber(value)).toBe(text))
})
