import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { operators } from "../../src/cell/index.ts"
import { Vec3, vec3 } from "../../src/physics/index.ts"

const { add, subtract, multiply, divide, negate, power, mutable } = operators
const a = vec3(1, 2, 3)
const b = vec3(4, 5, 6)

function errorOf(work: () => unknown): { code: string; text: string; todo: string } {
  try {
    work()
  } catch (error) {
    return error as { code: string; text: string; todo: string }
  }
  throw new Error("Nothing was thrown")
}

fc.configureGlobal({ seed: 20240611 })

describe("operators on vectors", () => {
  it("add and subtract component by component", () => {
    expect(add(a, b)).toEqual(vec3(5, 7, 9))
    expect(subtract(b, a)).toEqual(vec3(3, 3, 3))
    expect(add(a, b)).toBeInstanceOf(Vec3)
  })
  it("multiply by a number from either side", () => {
    expect(multiply(2, a)).toEqual(vec3(2, 4, 6))
    expect(multiply(a, 2)).toEqual(vec3(2, 4, 6))
  })
  it("divide by a number", () => expect(divide(b, 2)).toEqual(vec3(2, 2.5, 3)))
  it("turn a vector round, zeros included", () => {
    const turned = negate(vec3(0, 1, -2)) as Vec3
    expect([turned.x, turned.y, turned.z]).toEqual([-0, -1, 2])
  })
  it("give the same bits as the methods of the library", () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, min: -1e100, max: 1e100 }), { minLength: 7, maxLength: 7 }),
        n => {
          const u = new Vec3(n[0]!, n[1]!, n[2]!)
          const v = new Vec3(n[3]!, n[4]!, n[5]!)
          const s = n[6]!
          expect(add(u, v)).toEqual(u.add(v))
          expect(subtract(u, v)).toEqual(u.subtract(v))
          expect(multiply(s, u)).toEqual(u.times(s))
          expect(negate(u)).toEqual(u.negated())
          if (s !== 0) expect(divide(u, s)).toEqual(u.over(s))
        },
      ),
    ))
  it("leave their operands as they were", () => {
    add(a, b)
    multiply(a, 3)
    expect(a).toEqual(vec3(1, 2, 3))
  })
})

describe("operators that make no sense on vectors say so in words of mechanics", () => {
  const cases: [string, string, () => unknown, RegExp][] = [
    [
      "number + vector",
      "number-and-vector",
      () => add(3, a),
      /A number and a vector cannot be added: 3 \+ \(1, 2, 3\)/,
    ],
    ["vector + number", "number-and-vector", () => add(a, 3), /\(1, 2, 3\) \+ 3/],
    ["vector - number", "number-and-vector", () => subtract(a, 3), /cannot be subtracted/],
    ["number - vector", "number-and-vector", () => subtract(3, a), /cannot be subtracted/],
    ["vector * vector", "vector-times-vector", () => multiply(a, b), /can mean two things/],
    ["vector / vector", "vector-over-vector", () => divide(a, b), /divided by a vector/],
    ["number / vector", "number-over-vector", () => divide(1, b), /1 cannot be divided by the vector/],
    ["vector / 0", "vector-over-zero", () => divide(a, 0), /divided by zero/],
    ["vector / -0", "vector-over-zero", () => divide(a, -0), /divided by zero/],
    ["vector ** number", "vector-power", () => power(a, 2), /raised to a power/],
    ["number ** vector", "vector-power", () => power(2, a), /exponent/],
    ["vector + undefined", "vector-and-other", () => add(a, undefined), /without a value/],
    ["undefined + vector", "vector-and-other", () => add(undefined, a), /without a value/],
    ["vector - text", "vector-and-other", () => subtract(a, "x"), /text "x"/],
    ["vector * null", "vector-and-other", () => multiply(a, null), /null/],
    ["list * vector", "vector-and-other", () => multiply([1, 2, 3], a), /a list/],
    ["vector / function", "vector-and-other", () => divide(a, () => 1), /a function/],
    ["bigint * vector", "vector-and-other", () => multiply(2n, a), /a bigint/],
    ["vector.x = …", "vector-component-set", () => mutable(a, "x"), /its x cannot be set/],
  ]
  it.each(cases)("%s", (_, code, work, text) => {
    const error = errorOf(work)
    expect(error).toMatchObject({
      code,
      text: expect.stringMatching(text),
      todo: expect.stringMatching(/\w/),
    })
  })
  it("names both products where a vector is multiplied by a vector", () =>
    expect(errorOf(() => multiply(a, b)).todo).toMatch(/dot.*cross/))
  it("refuse to compare vectors by size", () => {
    const compare = (x: unknown, y: unknown) => (x as number) < (y as number)
    expect(errorOf(() => compare(a, b)).code).toBe("vector-as-number")
  })
  it("compare vectors with === as any two objects", () => {
    const same: unknown = a
    expect(same === a).toBe(true)
    expect((vec3(1, 2, 3) as unknown) === a).toBe(false)
  })
})

describe("operators on everything else keep JavaScript's meaning exactly", () => {
  const value = fc.oneof(
    fc.double(),
    fc.integer(),
    fc.string(),
    fc.boolean(),
    fc.constant(null),
    fc.constant(undefined),
    fc.bigInt(),
    fc.constantFrom(
      [],
      [7],
      ["a"],
      {},
      { valueOf: () => 3 },
      { toString: () => "s" },
      new Number(2),
      Symbol("q"),
    ),
  )
  const outcome = (work: () => unknown): unknown => {
    try {
      const result = work()
      return [typeof result, Object.is(result, -0) ? "-0" : String(result)]
    } catch (error) {
      return (error as Error).name
    }
  }
  const pairs: [string, (x: unknown, y: unknown) => unknown, string][] = [
    ["+", add, "x + y"],
    ["-", subtract, "x - y"],
    ["*", multiply, "x * y"],
    ["/", divide, "x / y"],
    ["**", power, "x ** y"],
  ]
  it.each(pairs)("%s", (_, ours, source) => {
    const theirs = new Function("x", "y", `return ${source}`)
    fc.assert(
      fc.property(value, value, (x, y) => {
        // a bigint to the power of a huge bigint fills the memory in any engine
        fc.pre(!(source.includes("**") && typeof x === "bigint" && typeof y === "bigint" && y > 100n))
        expect(outcome(() => ours(x, y))).toEqual(outcome(() => theirs(x, y)))
      }),
      { numRuns: 400 },
    )
  })
  it("-x", () =>
    fc.assert(
      fc.property(value, x => {
        expect(outcome(() => negate(x))).toEqual(outcome(() => -(x as number)))
      }),
    ))
  it("joins a vector to a text as text", () => {
    expect(add("r = ", a)).toBe("r = (1, 2, 3)")
    expect(add(a, " m")).toBe("(1, 2, 3) m")
  })
})
