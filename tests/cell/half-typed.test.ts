import { describe, expect, it } from "vitest"
import { looseBracket } from "../../src/cell/brackets.ts"
import { short, told } from "./told.ts"

type Case = readonly [id: string, texts: Readonly<Record<string, string>>, found: string]

const firstRead = async (id: string, texts: Readonly<Record<string, string>>): Promise<string> => {
  const all = await told(id, texts)
  return all.read[0] ? short(all, all.read[0]) : "a program"
}

describe("a bracket without its partner is told in the student's own line", () => {
  const cases: readonly Case[] = [
    [
      "slipway",
      { friction: "if (magnitude(p) > 0) {\n  Ffriction = -mu * N * unit(p)" },
      "friction: bracket-not-closed: {",
    ],
    ["slipway", { friction: "Ffriction = -mu * N * unit(p))" }, "friction: bracket-not-opened: )"],
    ["slipway", { friction: "Ffriction = -mu * N * unit(p]" }, "friction: bracket-not-closed: ("],
    ["lamp-key", { update: "p = p + Fnet * dt)\nr = r + (p / mass) * dt" }, "update: bracket-not-opened: )"],
    ["lamp-key", { update: "p = p + (Fnet * dt" }, "update: bracket-not-closed: ("],
    [
      "lamp-key",
      { update: "p = p + Fnet * dt\nr = r + (p / mass) * dt\n}" },
      "update: bracket-not-opened: }",
    ],
    ["buoy", { restore: "F = -k * y * ey }" }, "restore: bracket-not-opened: }"],
    [
      "tumble",
      { normal: "if (squeeze > 0) {\n  N = deckStiffness * squeeze\n} else {\n  N = 0" },
      "normal: bracket-not-closed: {",
    ],
    // brackets in texts and remarks are letters
    [
      "lamp-key",
      { update: `// a smile :)\nconsole.log("}", \`(\${t}\`)\np = p + Fnet * dt)` },
      "update: bracket-not-opened: )",
    ],
    // the first fault of the parser stands in another blank
    [
      "lamp-key",
      { update: "p = p + Fnet dt", formula: "yFormula = height - (9.81 * t" },
      "formula: bracket-not-closed: (",
    ],
  ]
  it.each(cases)("%s, %j", async (id, texts, found) => {
    expect(await firstRead(id, texts)).toBe(found)
  })
})

describe("brackets are counted as the language reads them", () => {
  it.each([
    ["f(a)[1] + { b: 2 }.b", null],
    [`\`\${a + \`\${b}\`} )\``, null],
    ["a / b) / c", { kind: "closed", sign: ")", at: 5 }],
    ["x = /[)/]\\)/.test(s)", null],
    ["return /)/.test(s", { kind: "opened", sign: "(", at: 15 }],
    ["'it\\'s ('", null],
    ["f('oh", { kind: "text" }],
    [`\`\${a`, { kind: "opened", sign: "${", at: 1 }],
    ["/* ( */ (", { kind: "opened", sign: "(", at: 8 }],
    ["{ p = f * dt) }", { kind: "closed", sign: ")", at: 12 }],
    ["{ p = (f * dt }", { kind: "opened", sign: "(", at: 6 }],
  ])("%s", (text, loose) => {
    expect(looseBracket(text)).toEqual(loose)
  })
})
