import { describe, expect, it } from "vitest"
import { type Comparison, compareLadders } from "../../src/judge/compare.ts"
import { extentOf } from "../../src/judge/extent.ts"
import {
  bounce,
  fall,
  halvings,
  ladder,
  type Method,
  methods,
  type Scene,
  strut,
  withDrag,
} from "./steppers.ts"

/** As the judge goes about it: shorter steps, down to 1/32, while the verdict hangs. */
function judge(student: Scene, method: Method, reference: Scene, path: string): Comparison {
  const theirs = ladder(reference, "momentum first", path)
  const extent = extentOf(theirs.tracks[0]!, path)
  const factors = [...halvings]
  for (;;) {
    const found = compareLadders(ladder(student, method, path, factors), theirs, extent)
    const finer = factors[factors.length - 1]! / 2
    if (found.outcome !== "undecided" || finer < 1 / 32) return found
    factors.push(finer)
  }
}

const scenes: Record<string, Scene> = {
  "free fall": fall,
  "fall with drag": withDrag(0.5),
  "bounce on a spring floor": bounce(),
  "two masses on a stiff strut, thrown on a rough floor": strut(),
}

describe("right means: goes to the same limit as the step shrinks", () => {
  for (const [name, scene] of Object.entries(scenes)) {
    for (const method of methods) {
      for (const path of ["body0.position", "body0.momentum"]) {
        it(`${name}: ${method} passes by its ${path.slice(6)}`, () => {
          expect(judge(scene, method, scene, path).outcome).toBe("same limit")
        })
      }
    }
  }

  it("though at the given step a right answer may lie further off than a wrong one", () => {
    const theirs = ladder(strut(), "momentum first")
    const extent = extentOf(theirs.tracks[0]!, "body0.position")
    const right = compareLadders(ladder(strut(), "explicit Euler"), theirs, extent)
    const wrong = compareLadders(ladder(strut(0.5), "momentum first"), theirs, extent)
    expect(right.distanceAsGiven).toBeGreaterThan(wrong.distanceAsGiven)
    expect(wrong.outcome).toBe("apart")
  })
})

describe("wrong means: a distance stays", () => {
  const wrong: Record<string, [Scene, Scene]> = {
    "half the drag": [withDrag(0.25), withDrag(0.5)],
    "1 % less weight": [{ ...fall, force: () => [0, -0.25 * 9.71] }, fall],
    "weight turned": [{ ...fall, force: () => [0, 0.25 * 9.81] }, fall],
    "a floor of half its stiffness": [bounce(1000), bounce()],
    "a floor of 90 % of its stiffness": [bounce(1800), bounce()],
    "a strut on a floor of half its stiffness": [strut(0.5), strut()],
  }
  for (const [name, [mine, theirs]] of Object.entries(wrong)) {
    for (const method of methods) {
      it(`${name}: ${method} is refused`, () => {
        const found = judge(mine, method, theirs, "body0.position")
        expect(found.outcome).not.toBe("same limit")
        expect(found.departsAt).not.toBeNull()
      })
    }
  }
})
