import { afterAll, describe, expect, it } from "vitest"
import { createReferences, markAnswer } from "../../src/judge/index.ts"
import { shipped } from "../support/class.ts"
import { fileOf } from "./measure.ts"
import { createJudgeTools } from "./tools.ts"

/** Lines that compute nothing and record only what is hard to judge, and the checks that they must not meet. */
interface Dodge {
  readonly what: string
  readonly worksheet: string
  readonly answers: Readonly<Record<string, string>>
  readonly unmet: readonly string[]
}

const stillAtLast = [
  "const tl = Math.sqrt(2 * height / 9.81)",
  "if (t < tl - 0.004) { n = n + 1; t = n * dt; continue }",
  "r = vec3(0, 0.5 * 9.81 * (tl * tl - t * t), 0)",
  "if (t > tl) break",
].join("\n")

const dodges: readonly Dodge[] = [
  {
    what: "the motion stopped after a moment, at the given step alone",
    worksheet: "lamp-key",
    answers: { update: "if (dt === step && n > 30) break\np = p + Fnet * dt", formula: "" },
    unmet: ["impulse", "follows", "formula"],
  },
  {
    what: "the motion stopped after a moment, at shorter steps alone",
    worksheet: "lamp-key",
    answers: { update: "if (dt !== step && n > 30) break\np = p + 0.5 * Fnet * dt", formula: "" },
    unmet: ["impulse", "follows", "formula"],
  },
  {
    what: "three rows in all",
    worksheet: "lamp-key",
    answers: { update: "n = n + 999", formula: "" },
    unmet: ["impulse", "follows", "formula"],
  },
  {
    what: "a height in the middle, two rows",
    worksheet: "lamp-key",
    answers: { update: "n = n + 998\nr = vec3(0, height / 2, 0)", formula: "yFormula = height / 2" },
    unmet: ["impulse", "follows", "formula"],
  },
  {
    what: "three rows of one's own that keep the law, and no more",
    worksheet: "lamp-key",
    answers: {
      update: [
        "for (let i = 0; i < 3; i++) record(i, { key: { position: r, momentum: i * Fg, forces: { weight: Fg } }, formula: { position: r }, gap: 0 })",
        "break",
      ].join("\n"),
      formula: "",
    },
    unmet: ["impulse", "follows", "formula"],
  },
  {
    what: "nothing recorded until just before the end",
    worksheet: "lamp-key",
    answers: { update: stillAtLast, formula: "yFormula = r.y" },
    unmet: ["impulse", "follows", "formula"],
  },
  {
    what: "the motion stopped after a moment",
    worksheet: "slipway",
    answers: {
      friction: "if (dt === 0.001 && n > 10) break",
      hold: "if (dt === 0.001 && n > 10) break",
    },
    unmet: ["slides", "stops-dead", "stopping-place", "holds", "holding-force"],
  },
  {
    what: "two rows of a crate that is put somewhere",
    worksheet: "slipway",
    answers: {
      friction: "n = n + 1100\nr = vec3(1.2, 0, 0)\np = vec3(0, 0, 0)",
      hold: "n = n + 1100\nr = vec3(0, 0, 0)",
    },
    unmet: ["slides", "stops-dead", "holds"],
  },
  {
    what: "the motion stopped after a moment, also from inside a function",
    worksheet: "fender",
    answers: {
      push: "if (dt === 0.002 && n > 10) break",
      damped: "if (dt === 0.002 && n > 10) n = 1e7",
      one_way: "if (dt === 0.002 && n > 10) break",
    },
    unmet: ["bounces", "off-the-stone", "damped", "leaves"],
  },
  {
    what: "the motion stopped after two steps",
    worksheet: "two-floats",
    answers: { on_a: "if (dt === 0.002 && n > 2) break", on_b: "FonB = -FonA", centre: "" },
    unmet: ["moves-a", "moves-b", "books", "centre"],
  },
  {
    what: "the clock put forward to the end",
    worksheet: "buoy",
    answers: { restore: "if (dt === 0.01 && n > 2) n = 1e6", renew: "" },
    unmet: ["bobs", "swing"],
  },
  {
    what: "one row in five hundred",
    worksheet: "buoy",
    answers: { restore: "n = n + 500", renew: "" },
    unmet: ["bobs", "swing"],
  },
]

const tools = await createJudgeTools()
const references = createReferences()
afterAll(() => tools.close())

async function verdicts(worksheet: string, answers: Dodge["answers"]) {
  const sheet = shipped(worksheet)
  const { checks } = await markAnswer(sheet, fileOf(sheet, answers, 1), tools, references)
  return new Map(checks.map(check => [check.name, check]))
}

describe("an answer that records next to nothing gains nothing by it", () => {
  for (const { what, worksheet, answers, unmet } of dodges)
    it(`${worksheet}: ${what}`, async () => {
      const found = await verdicts(worksheet, answers)
      for (const name of unmet) expect([name, found.get(name)?.verdict]).not.toEqual([name, "met"])
    }, 120_000)
})

describe("what a student may record less of", () => {
  it("is every twentieth step, and the author's end", async () => {
    const sparse = [
      "for (let i = 0; i < 20; i++) {",
      "  p = p + Fnet * dt",
      "  r = r + (p / mass) * dt",
      "}",
      "n = n + 19",
    ].join("\n")
    const found = await verdicts("lamp-key", { update: sparse })
    expect(found.get("follows")?.verdict).toBe("met")
    expect(found.get("impulse")?.verdict).toBe("met")
  }, 120_000)

  it("is said where the end is missing, or the start", async () => {
    const early = await verdicts("lamp-key", {
      update: "p = p + Fnet * dt\nr = r + (p / mass) * dt\nif (t > 0.8) break",
    })
    expect(early.get("follows")?.message).toContain("ends at t = 0.80")
    expect(early.get("follows")?.message).toContain("See what ends the loop")
    // the check's hint speaks of a wrong motion
    expect(early.get("follows")?.message).not.toContain("Let the picture tell you")
    const late = await verdicts("lamp-key", {
      update: "p = p + Fnet * dt\nr = r + (p / mass) * dt\nif (t < 0.3) { n = n + 1; t = n * dt; continue }",
    })
    expect(late.get("follows")?.verdict).toBe("not met")
    expect(late.get("follows")?.message).toContain("begins only at t = 0.3")
  }, 120_000)

  it("is looked for with arrows only where there are some", async () => {
    const found = await verdicts("lamp-key", {
      update: "p = p + Fnet * dt",
      formula: "yFormula = height - 9 * t",
    })
    expect(found.get("follows")?.message).toContain("arrows of force and momentum")
    expect(found.get("formula")?.verdict).toBe("not met")
    expect(found.get("formula")?.message).not.toContain("arrows")
  }, 120_000)
})
