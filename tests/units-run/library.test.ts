import { describe, expect, it } from "vitest"
import {
  libraryConstants,
  librarySignatures,
  mathSignatures,
  methodSignatures,
} from "../../src/cell/units-run/index.ts"
import * as physics from "../../src/physics/index.ts"

const isClass = (value: unknown): boolean => typeof value === "function" && /^class\b/.test(String(value))

describe("the table of what functions take and give", () => {
  it("has an entry for each public function of the library, and no other", () => {
    const functions = Object.entries(physics).filter(
      ([, value]) => typeof value === "function" && !isClass(value),
    )
    expect([...librarySignatures.keys()].sort()).toEqual(functions.map(([name]) => name).sort())
  })
  it("has the unit of each constant", () => {
    const numbers = Object.entries(physics).filter(([, value]) => typeof value === "number")
    expect([...libraryConstants.keys()].sort()).toEqual(numbers.map(([name]) => name).sort())
    expect(numbers.length).toBeGreaterThan(3)
  })
  it("has an entry for each method of a vector", () => {
    const methods = Object.getOwnPropertyNames(physics.Vec3.prototype).filter(name => name !== "constructor")
    expect([...methodSignatures.keys()].sort()).toEqual(methods.sort())
  })
  it("has as many parameters as the function takes", () => {
    const functions = physics as unknown as Record<string, { length: number }>
    for (const [name, { parameters }] of librarySignatures)
      if (!parameters.some(one => one.rest))
        expect(functions[name]!.length, name).toBeLessThanOrEqual(parameters.length)
  })
  it("has an entry for each function of mathematics but the powers and what has no use in mechanics", () => {
    const left = Object.getOwnPropertyNames(physics.math)
      .filter(name => typeof (physics.math as unknown as Record<string, unknown>)[name] === "function")
      .filter(name => !mathSignatures.has(name))
    expect(left.sort()).toEqual(expect.arrayContaining([]))
    for (const name of left)
      expect(["pow", "imul", "clz32", "f16round", "sumPrecise", "random"]).toContain(name)
  })
})
