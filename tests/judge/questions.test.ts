import { describe, expect, it } from "vitest"
import { readNumberAnswer } from "../../src/judge/number-answer.ts"
import { markQuestions } from "../../src/judge/questions.ts"
import { fileOf } from "../judging/measure.ts"
import { shipped } from "../support/class.ts"

describe("a number as people write it", () => {
  const cases: [string | number, string, number][] = [
    ["0.9101", "m", 0.9101],
    ["0,9101 m", "m", 0.9101],
    ["91.01 cm", "m", 0.9101],
    ["910.1mm", "m", 0.9101],
    ["9.101e-1", "m", 0.9101],
    ["9,101·10^-1 m", "m", 0.9101],
    ["9.101 × 10⁻¹ m", "m", 0.9101],
    ["\u22122.5", "1", -2.5],
    ["+2.5", "1", 2.5],
    ["20 000", "N", 20000],
    [".5", "1", 0.5],
    ["36 km/h", "m/s", 10],
    ["1 N s", "kg m/s", 1],
    ["80 %", "1", 0.8],
    [9.81, "m/s", 9.81],
  ]
  for (const [given, unit, value] of cases) {
    it(`“${given}” for ${unit}`, () => {
      const read = readNumberAnswer(given, unit)
      expect(read.ok && read.value).toBeCloseTo(value, 12)
    })
  }
  const refused: [string | null, string, string][] = [
    [null, "m", "empty"],
    ["  ", "m", "empty"],
    ["about one", "m", "no number"],
    ["1 kg", "m", "wrong quantity"],
    ["1 furlong", "m", "unit"],
  ]
  for (const [given, unit, why] of refused) {
    it(`“${given}” for ${unit} is refused: ${why}`, () => {
      expect(readNumberAnswer(given, unit)).toEqual({ ok: false, why })
    })
  }
})

describe("significant figures of a number as it is typed (common practice; ISO 80000-1:2009, annex B, from memory)", () => {
  const cases: [string | number, number, number][] = [
    ["9.8", 2, 2],
    ["9.80", 3, 3],
    ["0.0098", 2, 2],
    ["0.00980", 3, 3],
    ["1500", 2, 4],
    ["1500.", 4, 4],
    ["1.50e3", 3, 3],
    ["1,50·10³ m", 3, 3],
    ["20 000", 1, 5],
    ["100", 1, 3],
    ["0", 1, 1],
    ["0.00", 1, 2],
    [9.8, 2, 2],
  ]
  for (const [given, least, most] of cases)
    it(`“${given}” has ${least === most ? least : `${least} to ${most}`}`, () => {
      const read = readNumberAnswer(given, "m")
      const plain = readNumberAnswer(given, "1")
      expect((read.ok && read.figures) || (plain.ok && plain.figures)).toEqual({ least, most })
    })
})

describe("a question for a number with figures", () => {
  const asked = (answer: number, figures: number | null, unit = "m/s", tolerance = 0.01) => {
    const worksheet = shipped("slipway")
    const name = "speed"
    const question = {
      name,
      kind: "number" as const,
      ask: "",
      askHtml: "",
      choices: [],
      unit,
      points: 1,
    }
    const sheet = { ...worksheet.sheet, questions: [question] }
    const keys = [{ name, answer, tolerance, figures, why: "" }]
    return (given: string | number) =>
      markQuestions(
        { ...worksheet, sheet, keys },
        { ...fileOf(worksheet, {}, 1), questions: { [name]: given } },
      )[0]!
  }
  it("is met with as many as are asked for, or one more, in any unit", () => {
    const speed = asked(9.81, 2)
    for (const given of ["9.8", "9.81", "9.8 m/s", "35 km/h", 9.8]) expect(speed(given).verdict).toBe("met")
  })
  it("is not met with fewer, and the zero that is missing is spoken of", () => {
    expect(asked(9.81, 2)("10").verdict).toBe("not met")
    expect(asked(9.81, 2, "m/s", 0.05)("1e1").message).toContain("1 significant figure,")
    expect(asked(2, 2)("2").message).toContain("A zero at the end counts")
    expect(asked(2, 2)("2.0").verdict).toBe("met")
  })
  it("is not met with far more than are asked for", () => {
    const found = asked(9.81, 2)("9.8100")
    expect(found.verdict).toBe("not met")
    expect(found.message).toContain("5 significant figures, and 2 are asked for")
  })
  it("takes an answer that is rounded to the figures asked for as right", () => {
    expect(asked(0.154, 1)("0.2").verdict).toBe("met")
    expect(asked(0.154, 1)("0.3").verdict).toBe("not met")
    expect(asked(0.154, null)("0.2").verdict).toBe("not met")
  })
  it("says nothing of figures where none are asked for", () => {
    expect(asked(9.81, null)("9.810000").message).toBe("The number is right.")
  })
  it("takes any unit of the same quantity, whatever it is made of", () => {
    const cases: [number, string, string][] = [
      [1500, "J", "1.5 kJ"],
      [1500, "J", "1500 N m"],
      [1500, "J", "1500 kg m^2/s^2"],
      [1500, "J", "1500 W s"],
      [2.5, "kg m/s", "2500 g m/s"],
      [2.5, "kg m/s", "2.5 N s"],
      [Math.PI / 2, "rad", "90 °"],
      [9.81, "N/kg", "9.81 m/s²"],
      [0.5, "h", "30 min"],
    ]
    for (const [answer, unit, given] of cases) {
      expect(`${given}: ${asked(answer, null, unit)(given).verdict}`).toBe(`${given}: met`)
      expect(asked(answer * 1.2, null, unit)(given).verdict).toBe("not met")
    }
  })
})

describe("questions", () => {
  const worksheet = shipped("slipway")
  const mark = (questions: Record<string, string | number | null>) =>
    markQuestions(worksheet, { ...fileOf(worksheet, {}, 1), questions })
  const one = (name: string, value: string | number | null) =>
    mark({ [name]: value }).find(r => r.name === name)!

  it("are met by the key and by any number within the relative tolerance", () => {
    expect(
      mark(Object.fromEntries(worksheet.keys.map(k => [k.name, k.answer]))).every(r => r.verdict === "met"),
    ).toBe(true)
    expect(one("distance", "0.92 m").verdict).toBe("not met")
    expect(one("distance", "0.914 m").verdict).toBe("met")
  })
  it("say what kind of miss it is, never the answer", () => {
    expect(one("distance", "-0.9101").message).toContain("sign")
    expect(one("distance", "910").message).toContain("power of ten")
    expect(one("distance", "0.91 kg").message).toContain("another quantity")
    expect(one("distance", "").message).toContain("not answered")
    for (const given of ["1", "0.5", "-3", "x"]) expect(one("distance", given).message).not.toContain("0.91")
  })
  it("leave short text to the teacher: no line, no points", () => {
    expect(mark({}).some(r => r.name === "tremble")).toBe(false)
  })
})
