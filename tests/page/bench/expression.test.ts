import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { quantityFor, readExpression } from "../../../src/page/bench/expression.ts"
import { quantitiesOf } from "../../../src/page/bench/quantities.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import { projectile, record } from "../bench-fixture/recordings.ts"

const recording = projectile("throw", 9, 0.01, 0.004)
const quantities = quantitiesOf(studyOf(recording), {}, body => body)
const constants = [
  { name: "mass", value: 0.4, unit: "kg" },
  { name: "share", value: 0.5, unit: "1" },
  { name: "width", value: 3, unit: "mm" },
]
const read = (text: string) => readExpression(text, quantities, constants)
const value = (text: string, row = 10) => {
  const found = read(text)
  if (!found.ok) throw new Error(found.why)
  return found.quantity.read(row)
}
const unit = (text: string) => {
  const found = read(text)
  if (!found.ok) throw new Error(found.why)
  return found.quantity.unit
}
const why = (text: string) => {
  const found = read(text)
  return found.ok ? "" : found.why
}
const at = (column: number, row = 10) => recording.data[row * recording.width + column]!

describe("an expression of what is recorded", () => {
  it("is what the README gives as an example", () => {
    const [, example] = /expressions such as `([^`]+)`/.exec(readFileSync("README.md", "utf8")) ?? []
    expect(unit((example ?? "").replace("key.", "weight."))).toBe("J")
  })
  it("reads names, numbers and signs with the usual precedence", () => {
    expect(value("1 + 2 * 3 ^ 2")).toBe(19)
    expect(value("-2 ^ 2")).toBe(-4)
    expect(value("2 ^ 3 ^ 2")).toBe(512)
    expect(value("(1 + 2) * 3 - 4 / 8 / 2")).toBe(8.75)
    expect(value("2 ^ -1")).toBe(0.5)
    expect(value("1.5e2 \u2212 .5 × 2 · 3")).toBe(147)
    expect(value("t")).toBe(at(0))
    expect(value("weight.position.y")).toBe(at(2))
  })
  it("adds and scales vectors, and takes components and magnitudes", () => {
    expect(value("(weight.forces.gravity + weight.forces.drag).y")).toBe(at(8) + at(11))
    expect(value("magnitude(weight.momentum)")).toBe(Math.hypot(at(4), at(5), at(6)))
    expect(value("|weight.momentum / 2|")).toBeCloseTo(Math.hypot(at(4), at(5)) / 2, 12)
    expect(value("(weight.momentum * 2).x - 2 * weight.momentum.x")).toBe(0)
  })
  it("names parameters", () => {
    const kinetic = (at(4) ** 2 + at(5) ** 2) / (2 * 0.4)
    expect(value("magnitude(weight.momentum)^2 / (2 * mass)")).toBeCloseTo(kinetic, 12)
    expect(value("share * 4")).toBe(2)
  })
  it("works out the unit, in coherent units", () => {
    expect(unit("weight.momentum.y / mass")).toBe("m/s")
    expect(unit("magnitude(weight.momentum)^2 / (2 * mass)")).toBe("J")
    expect(unit("weight.momentum.y / weight.momentum.x")).toBe("")
    expect(unit("weight.position.y ^ 0.5")).toBe("m^(1/2)")
    expect(unit("t * weight.forces.drag.x")).toBe("kg m/s")
    expect(value("weight.position.y + width")).toBeCloseTo(at(2) + 0.003, 12)
    expect(unit("weight.position.y + width")).toBe("m")
  })
  it("has no unit where one of its parts has none that is known", () => {
    const plain = record(
      "c",
      ["a!"],
      [
        [0, 1],
        [1, 2],
      ],
    )
    const found = readExpression(
      "a * 2 + 1",
      quantitiesOf(studyOf(plain), {}, body => body),
      [],
    )
    expect(found).toMatchObject({ ok: true, quantity: { unit: "" } })
  })
  it.each([
    ["weight.position.y + t", "m and s cannot be added"],
    ["weight.position.y - 1", "m and a pure number cannot be subtracted"],
    ["weight.momentum + 1", "A vector and a number cannot be added"],
    ["weight.momentum * weight.momentum", "Two vectors cannot be multiplied"],
    ["1 / weight.momentum", "divided by a vector"],
    ["weight.momentum", "This is a vector"],
    ["weight.momentum ^ 2", "A vector has no powers"],
    ["2 ^ t", "needs a plain number after ^"],
    ["wieght.position.y", "Did you mean weight.position.y?"],
    ["position.y", "Did you mean weight.position.y?"],
    ["(1 + 2", "A “)” is missing at the end"],
    ["1 +", "Something is missing at the end"],
    ["1 2", "“2” cannot stand here"],
    ["sin(t)", "magnitude( ) is the only function"],
    ["t; alert(1)", "“;” has no meaning here"],
    ["", "Nothing is typed"],
    ["(weight.position).w", "Vectors have .x, .y and .z"],
    ["(".repeat(100), "nested too deep"],
    ["1+".repeat(400), "longer than 300"],
  ])("refuses %j in words", (text, words) => expect(why(text)).toContain(words))
  it("reaches nothing but what is recorded", () => {
    for (const text of [
      "constructor",
      "__proto__",
      "t.constructor",
      "weight.position.constructor",
      "toString",
    ])
      expect(read(text).ok).toBe(false)
  })
  it("is asked for only where no quantity has that very name", () => {
    expect(quantityFor("weight.position.y", quantities, constants)?.label).toBe("position of weight, y")
    expect(quantityFor("weight.position.y * 2", quantities, constants)?.label).toBe("weight.position.y * 2")
    expect(quantityFor("lost", quantities, constants)).toBeNull()
  })
})
