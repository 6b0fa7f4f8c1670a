import { Decimal } from "decimal.js"
import { describe, expect, it } from "vitest"
import { math } from "../../src/physics/index.ts"

/*
 * Every function that the standard lets engines round as they like, against values of 60 digits (npm decimal.js 10):
 * within one unit of the last place. Arguments are seeded; each function has its ranges, with the hard ends among them.
 */
const Exact = Decimal.clone({ precision: 80, minE: -9e15, maxE: 9e15 })

/** The number itself to its last bit: decimal.js takes a number's shortest text otherwise. */
function exact(x: number): Decimal {
  const view = new DataView(new ArrayBuffer(8))
  view.setFloat64(0, Math.abs(x))
  const exponent = view.getInt32(0) >> 20
  const fraction = (BigInt(view.getInt32(0) & 0xfffff) << 32n) | BigInt(view.getUint32(4))
  const mantissa = exponent === 0 ? fraction : fraction | (1n << 52n)
  const value = new Exact(mantissa.toString()).times(new Exact(2).pow(Math.max(exponent, 1) - 1075))
  return x < 0 ? value.negated() : value
}

/** The distance of a result from the exact value, in units of its last place. */
function unitsOff(got: number, want: Decimal): number {
  const size = Math.abs(want.toNumber())
  const estimate = Math.max(-1022, Math.floor(Math.log2(size)))
  const exponent = estimate > -1022 && 2 ** estimate > size ? estimate - 1 : estimate
  const unit = new Exact(2).pow(exponent - 52)
  return exact(got).minus(want).div(unit).abs().toNumber()
}

let seed = 1
function random(): number {
  seed = (Math.imul(seed, 1664525) + 1013904223) | 0
  return (seed >>> 0) / 2 ** 32
}

type One = (x: number) => number
type Name = { [K in keyof typeof math]: (typeof math)[K] extends One ? K : never }[keyof typeof math]

const one = new Exact(1)
const cases: readonly [Name, (x: Decimal) => Decimal, readonly (readonly [number, number])[]][] = [
  [
    "sin",
    x => x.sin(),
    [
      [-1, 1],
      [-40, 40],
      [1e5, 1e6],
    ],
  ],
  [
    "cos",
    x => x.cos(),
    [
      [-1, 1],
      [-40, 40],
      [1e5, 1e6],
    ],
  ],
  [
    "tan",
    x => x.tan(),
    [
      [-1, 1],
      [-40, 40],
    ],
  ],
  ["asin", x => x.asin(), [[-1, 1]]],
  ["acos", x => x.acos(), [[-1, 1]]],
  [
    "atan",
    x => x.atan(),
    [
      [-3, 3],
      [-100, 100],
    ],
  ],
  [
    "exp",
    x => x.exp(),
    [
      [-1, 1],
      [-700, 700],
      [-744, -709],
    ],
  ],
  [
    "expm1",
    x => x.exp().minus(1),
    [
      [-1, 1],
      [-40, 40],
      [-1e-5, 1e-5],
    ],
  ],
  [
    "log",
    x => x.ln(),
    [
      [0, 3],
      [0, 1e9],
      [0, 1e-300],
    ],
  ],
  [
    "log1p",
    x => x.plus(1).ln(),
    [
      [-1, 1],
      [0, 1e5],
      [-1e-5, 1e-5],
    ],
  ],
  [
    "log2",
    x => x.log(2),
    [
      [0, 3],
      [0, 1e9],
    ],
  ],
  [
    "log10",
    x => x.log(10),
    [
      [0, 3],
      [0, 1e9],
    ],
  ],
  [
    "sinh",
    x => x.sinh(),
    [
      [-1, 1],
      [-30, 30],
      [-700, 700],
    ],
  ],
  [
    "cosh",
    x => x.cosh(),
    [
      [-1, 1],
      [-30, 30],
      [-700, 700],
    ],
  ],
  [
    "tanh",
    x => one.minus(new Exact(2).div(x.times(2).exp().plus(1))),
    [
      [-1, 1],
      [-21, 21],
    ],
  ],
  [
    "asinh",
    x =>
      x
        .abs()
        .plus(x.times(x).plus(1).sqrt())
        .ln()
        .times(x.isNegative() ? -1 : 1),
    [
      [-3, 3],
      [-1e6, 1e6],
      [1e9, 1e300],
    ],
  ],
  [
    "acosh",
    x => x.plus(x.times(x).minus(1).sqrt()).ln(),
    [
      [1, 1.1],
      [1, 10],
      [1e9, 1e300],
    ],
  ],
  [
    "atanh",
    x => one.plus(x).div(one.minus(x)).ln().div(2),
    [
      [-1, 1],
      [-0.1, 0.1],
    ],
  ],
  [
    "cbrt",
    x => x.cbrt(),
    [
      [-10, 10],
      [0, 1e300],
      [0, 1e-310],
    ],
  ],
]

describe("math of the library is within one unit of the last place", () => {
  it.each(cases)("%s", (name, want, ranges) => {
    let worst = 0
    for (const [low, high] of ranges) {
      for (let i = 0; i < 100; i++) {
        const x = low + (high - low) * random()
        worst = Math.max(worst, unitsOff((math[name] as One)(x), want(exact(x))))
      }
    }
    expect(worst).toBeLessThanOrEqual(1)
    expect(worst).toBeGreaterThan(0.2)
  })
  it("pow", () => {
    for (let i = 0; i < 200; i++) {
      const [x, y] = [random() * 10 ** (6 * random() - 3), 40 * random() - 20]
      expect(unitsOff(math.pow(x, y), exact(x).pow(exact(y)))).toBeLessThanOrEqual(1)
    }
  })
  it("atan2 and hypot, of any sizes", () => {
    for (let i = 0; i < 200; i++) {
      const [x, y, z] = [0, 0, 0].map(() => (random() - 0.5) * 10 ** (12 * random() - 6)) as [
        number,
        number,
        number,
      ]
      const angle = exact(y).div(exact(x)).atan()
      const pi = Exact.acos(-1)
      const want = x > 0 ? angle : y > 0 ? angle.plus(pi) : angle.minus(pi)
      expect(unitsOff(math.atan2(y, x), want)).toBeLessThanOrEqual(1)
      const square = (v: number) => exact(v).times(exact(v))
      expect(
        unitsOff(math.hypot(x, y, z), square(x).plus(square(y)).plus(square(z)).sqrt()),
      ).toBeLessThanOrEqual(1)
    }
  })
  it("sine, cosine and tangent of very large angles, by the exact remainder", () => {
    const Wide = Decimal.clone({ precision: 400 })
    const turn = Wide.acos(-1).times(2)
    for (const x of [1e22, -1e22, 1647099.5, 123456789.125, 2 ** 60, 1e300, Number.MAX_VALUE]) {
      const rest = new Wide(Number.isInteger(x) ? BigInt(x).toString() : exact(x).toFixed()).mod(turn)
      for (const name of ["sin", "cos", "tan"] as const) {
        expect(
          unitsOff(math[name](x), new Exact(rest[name]().toString())),
          `${name}(${x})`,
        ).toBeLessThanOrEqual(1)
      }
    }
    // the touchstone of argument reduction: sin 10²² = −0.8522008497671888… (K. C. Ng, from memory)
    expect(math.sin(1e22)).toBe(-0.8522008497671888)
  })
  it("a value that is one unit off would be seen", () => {
    expect(unitsOff(1.0000000000000004, new Exact(1))).toBe(2)
    expect(unitsOff(5e-324, new Exact(0))).toBe(1)
  })
})

describe("math of the library has the shape and the corners of Math", () => {
  it("has every name of Math but random", () => {
    const names = Object.getOwnPropertyNames(Math).filter(name => name !== "random")
    const newer = ["f16round", "sumPrecise"]
    expect(Object.keys(math).sort()).toEqual(names.filter(name => !newer.includes(name)).sort())
    for (const name of ["E", "PI", "LN2", "LN10", "LOG2E", "LOG10E", "SQRT2", "SQRT1_2"] as const) {
      expect(math[name]).toBe(Math[name])
    }
  })
  const corners = [0, -0, 1, -1, 2, -2, 0.5, -0.5, 3, -3, 5e-324, -5e-324, 1e308, -1e308, 710, -746]
  const special = [...corners, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN]
  const near = (got: number, want: number) =>
    Object.is(got, want) || Math.abs(got - want) <= 2 * Number.EPSILON * Math.abs(want)
  it.each(cases.map(([name]) => name))("%s at zeros, infinities, NaN and the ends of its range", name => {
    for (const x of special) {
      const [got, want] = [(math[name] as One)(x), (Math[name] as One)(x)]
      expect(near(got, want), `${name}(${x}) = ${got}, ${want} wanted`).toBe(true)
    }
  })
  it.each(["pow", "atan2", "hypot"] as const)("%s at all pairs of them", name => {
    for (const x of special) {
      for (const y of special) {
        const [got, want] = [math[name](x, y), Math[name](x, y)]
        expect(near(got, want), `${name}(${x}, ${y}) = ${got}, ${want} wanted`).toBe(true)
      }
    }
  })
})
