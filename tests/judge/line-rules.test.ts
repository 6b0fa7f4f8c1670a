import { describe, expect, it } from "vitest"
import { assembleProgram } from "../../src/cell/index.ts"
import { lookAt } from "../../src/judge/look.ts"
import { applyRule } from "../../src/judge/rules/index.ts"
import type { CheckRule, StudentSheet } from "../../src/worksheet/contract.ts"
import { checkOf } from "./check-of.ts"

const given = (text: string) => ({ kind: "given", text }) as const
const cell = {
  name: "cell",
  line: 1,
  segments: [
    given(
      "const dt: Scalar<'s'> = 0.1\nlet r: Vec3<'m'> = vec3(0, 0, 0)\nlet p: Vec3<'kg m/s'> = vec3(1, 0, 0)\nconst F: Vec3<'N'> = vec3(1, 0, 0)\nconst m: Scalar<'kg'> = 2\nconst angle = Math.atan2(1, 2)\n",
    ),
    { kind: "blank", name: "update", prompt: "", inline: false, starter: "" },
    given("\nrecord(0, { key: { position: r, momentum: p } })"),
  ],
} as const

const judge = (rule: CheckRule, answer: string) => {
  const looked = lookAt({ parameters: [] as StudentSheet["parameters"] } as StudentSheet)(
    assembleProgram([cell], { update: answer }, [], "dt"),
  )
  const none = { factors: [1], runs: [[]] }
  return applyRule({ check: checkOf(rule), student: none, reference: none, looked })
}

describe("avoids: a thing that the student's lines do without", () => {
  const avoids = (...names: string[]): CheckRule => ({ kind: "avoids", names })
  const plain = "p = p + F * dt\nr = r + (p / m) * dt"
  it("is met by lines that do without it, and not by lines that call it", () => {
    expect(judge(avoids("rungeKutta4"), plain).met).toBe(true)
    const found = judge(avoids("rungeKutta4", "velocityVerlet"), "r = rungeKutta4(p)\np = p")
    expect(found.met).toBe(false)
    expect(found.wrong).toContain("“rungeKutta4”")
    expect(found.wrong).not.toContain("velocityVerlet")
  })
  it("is not misled by comments and texts", () => {
    expect(judge(avoids("rungeKutta4"), `// no rungeKutta4 here\n${plain}`).met).toBe(true)
    expect(
      judge(avoids("rungeKutta4"), `/* rungeKutta4(p) */\n${plain}\nconsole.log("rungeKutta4")`).met,
    ).toBe(true)
  })
  it("is not misled by another name for it", () => {
    expect(judge(avoids("rungeKutta4"), `const step = rungeKutta4\n${plain}`).met).toBe(false)
    expect(judge(avoids("Math.atan2"), "const q = Math.atan2(1, 2)").met).toBe(false)
    expect(judge(avoids("Math.atan2"), "const M = Math\nconst q = M.atan2(1, 2)").met).toBe(false)
    expect(judge(avoids("Math.atan2"), "const { atan2 } = Math\nconst q = atan2(1, 2)").met).toBe(false)
    expect(judge(avoids("Math.atan2"), 'const q = Math["atan2"](1, 2)').met).toBe(false)
    expect(judge(avoids("Math.atan2"), "const q = Math.sin(1)").met).toBe(true)
  })
  it("is met by the student's own function of that name", () => {
    expect(
      judge(avoids("rungeKutta4"), `function rungeKutta4(x) { return x }\nr = rungeKutta4(r)\n${plain}`).met,
    ).toBe(true)
  })
  it("does not look at given lines", () => expect(judge(avoids("Math.atan2"), plain).met).toBe(true))
})

describe("uses: a thing that the student's lines must name", () => {
  const uses = (...names: string[]): CheckRule => ({ kind: "uses", names })
  it("is met by lines that name all of it: a function, a method, a loop", () => {
    expect(judge(uses("cross"), "const L = cross(r, p)").met).toBe(true)
    expect(judge(uses("cross"), "const L = r.cross(p)").met).toBe(true)
    expect(judge(uses("for", "dot"), "for (let i = 0; i < 3; i++) console.log(dot(r, p))").met).toBe(true)
  })
  it("is not met by its mention in a comment or a text, nor by a given line", () => {
    expect(judge(uses("cross"), "// cross(r, p)\nconst L = 'cross'").met).toBe(false)
    expect(judge(uses("Math.atan2"), "const q = 1").met).toBe(false)
    expect(judge(uses("for"), "const format = 1").met).toBe(false)
  })
})

describe("units: agree", () => {
  const units: CheckRule = { kind: "units" }
  it("is met by lines whose units fit", () =>
    expect(judge(units, "p = p + F * dt\nr = r + (p / m) * dt").met).toBe(true))
  it("is not met when a force is added to a momentum; the line is named", () => {
    const found = judge(units, "p = p + F\nr = r + (p / m) * dt")
    expect(found.met).toBe(false)
    expect(found.wrong).toMatch(/^In line \d+ of “cell”: /)
  })
  it("is not met where nobody could look", () => {
    const none = { factors: [1], runs: [[]] }
    expect(applyRule({ check: checkOf(units), student: none, reference: none }).met).toBe(false)
  })
})
