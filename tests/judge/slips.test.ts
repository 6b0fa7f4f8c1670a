import { describe, expect, it } from "vitest"
import { catalogue } from "../../src/judge/slips/catalogue.ts"
import { slipPrograms } from "../../src/judge/slips/programs.ts"
import { parseWorksheet, type Worksheet } from "../../src/worksheet/index.ts"

/** A worksheet of one blank; the names before it have the units that tell the slips what is what. */
function sheet(answer: string, slips = ""): Worksheet {
  const text = `---
title: A test
id: test
version: 1
timeStep: dt
parameters:
  mass: { label: mass, unit: kg, value: 2, range: [1, 3] }
  mu: { label: coefficient of friction, unit: "1", value: 0.3, range: [0.1, 0.5] }
  angle: { label: angle, unit: rad, value: 0.3, range: [0.1, 0.5] }
---

\`\`\`ts cell motion
const g: Vec3<'N/kg'> = vec3(0, -9.81, 0)
const k: Scalar<'N/m'> = 100
const c: Scalar<'N s/m'> = 3
const restLength: Scalar<'m'> = 0.5
const dt: Scalar<'s'> = 0.001
let r: Vec3<'m'> = vec3(0, 1, 0)
let p: Vec3<'kg m/s'> = vec3(1, 0, 0)
let r2: Vec3<'m'> = vec3(0, 2, 0)
let p2: Vec3<'kg m/s'> = vec3(0, 0, 0)
let t: Scalar<'s'> = 0
const Fg: Vec3<'N'> = mass * g
const normal: Scalar<'N'> = 20
const n: Vec3<'1'> = vec3(0, 1, 0)
let F: Vec3<'N'> = vec3(0, 0, 0)
let push: Scalar<'N'> = 0
let torque: Vec3<'N m'> = vec3(0, 0, 0)
// blank it: what is asked
${answer}
// end blank
record(t, { a: { position: r, momentum: p, forces: { net: F } }, b: { position: r2, momentum: p2 } })
\`\`\`

\`\`\`yaml check moves
cell: motion
compare: a.position
points: 1
${slips}
\`\`\`
`
  const result = parseWorksheet(text, "test.md")
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.worksheet
}

const made = (answer: string, slips = "") =>
  slipPrograms(sheet(answer, slips)).map(({ slip, answers }) => ({
    slip,
    text: answers.it!.replace(/\s+/g, " ").trim(),
  }))

const update = "p = p + F * dt\nr = r + (p / mass) * dt"

/** The right answer, the slip, and what it makes of the answer. */
const cases: readonly [slip: string, right: string, wrong: string][] = [
  ["time-step-missing", update, "p = p + F r = r + (p / mass) * dt"],
  ["time-step-missing", "p = p.add(F.times(dt))", "p = p.add(F)"],
  ["sign-turned", update, "p = p - F * dt r = r + (p / mass) * dt"],
  ["force-missing", "F = Fg - c * p / mass", "F = Fg"],
  ["mass-missing", update, "p = p + F * dt r = r + (p) * dt"],
  ["momentum-overwritten", update, "p = F * dt r = r + (p / mass) * dt"],
  ["momentum-overwritten", "p += F * dt", "p = F * dt"],
  ["spring-without-rest-length", "F = -k * (r.y - restLength) * n", "F = -k * (r.y) * n"],
  ["spring-sign-turned", "F = -k * (r.y - restLength) * n", "F = k * (r.y - restLength) * n"],
  ["floor-pulls", "push = Math.max(0, k * (restLength - r.y))", "push = (k * (restLength - r.y))"],
  ["floor-pulls", "if (r.y < restLength) push = k * (restLength - r.y)", "push = k * (restLength - r.y)"],
  ["friction-along-velocity", "F = -mu * normal * unit(across(p, n))", "F = -mu * normal * unit(p)"],
  ["friction-with-motion", "F = -mu * normal * unit(p)", "F = mu * normal * unit(p)"],
  [
    "friction-without-contact",
    "if (r.y < restLength) { F = -mu * normal * unit(p) }",
    "{ F = -mu * normal * unit(p) }",
  ],
  ["friction-from-weight", "F = -mu * normal * unit(p)", "F = -mu * (mass * magnitude(g)) * unit(p)"],
  ["third-law-forgotten", "p = p + F * dt\np2 = p2 - F * dt", "p = p + F * dt p2 = p2 + F * dt"],
  ["second-body-forgotten", "p = p + F * dt\np2 = p2 - F * dt", "p = p + F * dt"],
  ["cross-product-turned", "torque = cross(r, F)", "torque = cross(F, r)"],
  ["cross-product-turned", "torque = r.cross(F)", "torque = (F).cross(r)"],
  ["only-last-force", "F = Fg - k * r", "F = -(k * r)"],
  ["only-last-force", "F = F + Fg", "F = Fg"],
  [
    "degrees-for-radians",
    "F = mass * 9.81 * Math.sin(angle) * n",
    "F = mass * 9.81 * Math.sin((angle) * 180 / Math.PI) * n",
  ],
  [
    "degrees-for-radians",
    "const a = angle * Math.PI / 180\nF = Math.sin(a) * Fg",
    "const a = angle F = Math.sin(a) * Fg",
  ],
  ["magnitude-for-vector", "F = -k * r.y * n", "F = -k * magnitude(r) * n"],
  ["magnitude-for-vector", "F = -c * magnitude(p) * p", "F = -c * magnitude(p) * vec3(magnitude(p), 0, 0)"],
  ["magnitude-for-vector", "F = k * unit(r)", "F = k * vec3(1, 0, 0)"],
  ["force-missing", "F = -c * p", "F = vec3(0, 0, 0)"],
  ["second-body-forgotten", "F = -Fg\np2 = p2 + F * dt", "F = vec3(0, 0, 0) p2 = p2 + F * dt"],
  ["mass-missing", "r = (mass * r + mass * r2) / (mass + mass)", "r = (r + r2) / 2"],
  ["factor-missing", "F = -0.5 * k * r", "F = -(k) * r"],
  ["factor-lost", "F = -k * r.y * n", "F = -(r.y) * n"],
  ["cross-product-turned", "torque = cross(r, F) + cross(r2, F)", "torque = cross(F, r) + cross(F, r2)"],
  [
    "update-outside-loop",
    "for (let i = 0; i < 9; i++) {\n  p = p + F * dt\n}",
    "for (let i = 0; i < 9; i++) { } p = p + F * dt",
  ],
]

describe("slips are rewritings of the author's answer over its syntax tree", () => {
  for (const [slip, right, wrong] of cases) {
    it(`${slip}: ${right.replace(/\n/g, "; ")} becomes ${wrong}`, () => {
      expect(
        made(right)
          .filter(program => program.slip === slip)
          .map(program => program.text),
      ).toContain(wrong)
    })
  }

  it("old-momentum only where the author has words for it", () => {
    const words = "slips: { old-momentum: Which momentum moves it? }"
    expect(made(update).some(({ slip }) => slip === "old-momentum")).toBe(false)
    expect(made(update, words)).toContainEqual({
      slip: "old-momentum",
      text: "r = r + (p / mass) * dt p = p + F * dt",
    })
  })

  it("never make the author's own answer, nor one text twice", () => {
    for (const [, right] of cases) {
      const texts = made(right).map(({ text }) => text)
      expect(texts).not.toContain(right.replace(/\s+/g, " ").trim())
      expect(new Set(texts).size).toBe(texts.length)
    }
  })

  it("have a name each, a hint for the student and a sentence for the teacher", () => {
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length)
    for (const { hint, teacher } of catalogue) {
      expect(hint.length).toBeGreaterThan(30)
      expect(teacher.length).toBeGreaterThan(20)
      expect(hint).not.toMatch(/[=*]|\bp \+/)
    }
  })
})
