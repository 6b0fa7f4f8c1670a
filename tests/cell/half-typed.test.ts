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

describe("what paper and other keyboards have is told with the key to type", () => {
  const cases: readonly (readonly [formula: string, found: string, todo: string])[] = [
    ["height - 0.5 · 9.81 · t", "sign-of-paper: ·", "For a product write the * sign"],
    ["height × t", "sign-of-paper: ×", "For a product write the * sign"],
    ["height − t", "sign-of-paper: −", "For minus write the - sign"],
    ["height ÷ t", "sign-of-paper: ÷", "write the / sign"],
    ["height - t²", "sign-of-paper: ²", "write t * t, or t ** 2"],
    ["height - (t + t)³", "sign-of-paper: ³", "write ** and the number"],
    ["height - t³", "sign-of-paper: ³", "t ** 3"],
    ["p₂ + height", "sign-of-paper: p₂", "at full size: p2."],
    ["½ * height", "sign-of-paper: ½", "Write 0.5"],
    ["√t", "sign-of-paper: √", "Math.sqrt"],
    ["height - 2t", "sign-missing: 2t", "2 * t."],
    ["height - 9.81 t", "sign-missing: 9.81 t", "9.81 * t."],
    ["height - mass t", "sign-missing: mass t", "mass * t."],
    ["t·t", "a program", ""],
  ]
  it.each(cases)("%s", async (formula, found, todo) => {
    const all = await told("lamp-key", { formula: `yFormula = ${formula}` })
    const first = all.read[0]
    expect(first ? short(all, first) : "a program").toBe(found === "a program" ? found : `formula: ${found}`)
    expect(first?.todo ?? "").toContain(todo)
  })
  it("a raised dot within a name, and the letter π", async () => {
    const dotted = await told("buoy", { restore: "F = -k·y * ey" })
    expect(dotted.kinds.map(one => one.todo)).toEqual(["For a product write the * sign: k * y."])
    const pi = await told("slipway", { hold: "along = -π * Nslope" })
    expect(pi.kinds.map(one => one.todo)).toEqual(["Did you mean Math.PI?"])
  })
  it("a misspelt word of the language is no factor", async () => {
    expect(await firstRead("lamp-key", { update: "cosnt v = p / mass" })).toBe("update: cannot-understand: v")
  })
})

describe("a comma in a number", () => {
  it.each([
    ["yFormula = height - 0,5 * 9.81 * t * t", "formula: decimal-comma: 0,5"],
    ["yFormula = height - (0,5) * 9.81 * t * t", "formula: decimal-comma: 0,5"],
    ["if (t > 0,1) {\n  yFormula = height\n}", "formula: decimal-comma: 0,1"],
    ["const half = 0,5\nyFormula = half * t", "formula: decimal-comma: 0,5"],
  ])("%s", async (formula, found) => {
    const all = await told("lamp-key", { formula })
    const first = [...all.read, ...all.kinds][0]!
    expect(short(all, first)).toBe(found)
    expect(first.todo).toMatch(/^Write the number with a point: 0\.[15]\.$/)
  })
  it("among the values of a call it is offered as a reading", async () => {
    const [found] = (await told("lamp-key", { formula: "yFormula = vec3(0,5, 0, 0).x" })).kinds
    expect(found).toMatchObject({
      code: "wrong-argument-count",
      todo: "If 0,5 is one number, write it with a point: 0.5.",
    })
  })
})

describe("what is worked out and lost is remarked, and runs", () => {
  const cases: readonly Case[] = [
    ["lamp-key", { formula: "yFormula == height - t" }, "formula: no-effect: yFormula == height - t"],
    ["tumble", { start: "v === vC" }, "start: no-effect: v === vC"],
    ["lamp-key", { formula: "height - t * t" }, "formula: no-effect: height - t * t"],
    ["lamp-key", { formula: "yFormula = height, t" }, "formula: no-effect: t"],
    ["lamp-key", { formula: "yFormula = (height, t)" }, "formula: no-effect: height"],
    ["tumble", { start: "return ball * vC, v" }, "start: no-effect: ball * vC"],
  ]
  it.each(cases)("%s, %j", async (id, texts, found) => {
    const all = await told(id, texts)
    expect(all.read).toEqual([])
    expect(all.kinds.map(one => short(all, one))).toEqual([found])
  })
  it("but nothing that does something, or stands where a list of steps is at home", async () => {
    const update = [
      "p = p + Fnet * dt, r = r + (p / mass) * dt",
      "for (let i = 0, j = 0; i < 2; i++, j++) console.log(i, j)",
      "n > 5 && console.log(n)",
      "magnitude(p)",
    ].join("\n")
    const all = await told("lamp-key", { update })
    expect([...all.read, ...all.kinds]).toEqual([])
  })
})

describe("a line that breaks off before a line with its own = sign", () => {
  const cases: readonly Case[] = [
    ["lamp-key", { update: "p =\nr = r + (p / mass) * dt" }, "update: something-missing: ="],
    ["lamp-key", { update: "p += // the impulse\n\nr = r" }, "update: something-missing: +="],
    ["lamp-key", { update: "const v =\nr = r" }, "update: something-missing: ="],
    // the line that follows is a given one
    ["lamp-key", { update: "p = p + Fnet * dt\nr =" }, "update: something-missing: ="],
    ["lamp-key", { update: "p = p + Fnet * dt\nr = r +" }, "update: something-missing: +"],
    ["lamp-key", { formula: "yFormula = height -" }, "formula: blank-reaches-out: -"],
    ["lamp-key", { update: "p =\n  r = r" }, "a program"],
    ["lamp-key", { update: "const a = (p =\n r)\nlet b\nb = p = a" }, "a program"],
  ]
  it.each(cases)("%s, %j", async (id, texts, found) => {
    expect(await firstRead(id, texts)).toBe(found)
  })
})

describe("a name that a given line makes as well", () => {
  it("is told in the blank, also where the given line comes behind it", async () => {
    expect(await firstRead("slipway", { friction: "const vNew = p / mass" })).toBe(
      "friction: declared-twice: vNew",
    )
    expect(await firstRead("slipway", { friction: "const N = 3" })).toBe("friction: declared-twice: N")
  })
})
