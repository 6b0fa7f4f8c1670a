import { describe, expect, it } from "vitest"
import { parseWorksheet } from "../../src/worksheet/index.ts"

/** A sound little worksheet; each case below spoils one line of it. */
const sound = `---
title: A sinker
id: sinker
version: 1
parameters:
  height: { label: drop height, unit: m, value: 2, range: [1, 4], vary: true }
---
A sinker falls: $\\vec p_2 = \\vec p_1 + \\vec F\\,\\Delta t$.

\`\`\`ts cell drop
let r = vec3(0, height, 0)
let p = vec3(0, 0, 0)
const dt = 0.001
for (let i = 0; i < 10; i++) {
  const F = /* blank force: the net force */ vec3(0, -9.81, 0) /* end blank */
  // blank update: Update the momentum.
  p = p + F * dt
  // starter
  // p = ...
  // end blank
  record(i * dt, { sinker: { position: r, momentum: p } })
}
\`\`\`

\`\`\`yaml check path
cell: drop
compare: sinker.position
points: 4
\`\`\`

\`\`\`yaml question guess
ask: Which is larger?
kind: choice
choices: { a: this, b: that }
answer: a
points: 1
\`\`\`
`
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split("\n").length

const problemsOf = (text: string) => parseWorksheet(text, "sinker.md").problems

describe("a sound worksheet", () => {
  const result = parseWorksheet(sound, "sinker.md")
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const { worksheet } = result
  it("has no problems", () => expect(result.problems).toEqual([]))
  it("keeps answers apart from what the student sees", () => {
    expect(worksheet.answers).toEqual({ force: "vec3(0, -9.81, 0)", update: "  p = p + F * dt" })
    expect(JSON.stringify(worksheet.sheet)).not.toContain("p + F * dt")
    expect(JSON.stringify(worksheet.sheet)).not.toContain("vec3(0, -9.81, 0)")
    expect(JSON.stringify(worksheet.sheet)).not.toContain('"answer"')
  })
  it("takes a cell apart without losing or adding a line", () => {
    const cell = worksheet.sheet.cells[0]!
    const text = cell.segments
      .map(s => (s.kind === "given" ? s.text : (worksheet.answers[s.name] ?? "")))
      .join("")
    expect(text).toBe(`let r = vec3(0, height, 0)
let p = vec3(0, 0, 0)
const dt = 0.001
for (let i = 0; i < 10; i++) {
  const F = vec3(0, -9.81, 0)
  p = p + F * dt
  record(i * dt, { sinker: { position: r, momentum: p } })
}`)
    expect(cell.segments.filter(s => s.kind === "blank")).toMatchObject([
      { name: "force", inline: true, prompt: "the net force", starter: "" },
      { name: "update", inline: false, prompt: "Update the momentum.", starter: "  // p = ..." },
    ])
  })
  it("sets equations with MathML for screen readers", () => {
    const prose = worksheet.sheet.blocks[0]!
    expect(prose.kind === "prose" && prose.html).toContain("<math")
  })
  it("reads the same with CRLF and a byte-order mark", () => {
    const other = parseWorksheet("\uFEFF" + sound.replaceAll("\n", "\r\n"), "sinker.md")
    expect(other.ok && other.worksheet).toEqual(worksheet)
  })
})

describe("the digest of a task", () => {
  const digest = (text: string): string => {
    const result = parseWorksheet(text, "sinker.md")
    if (!result.ok) throw new Error(JSON.stringify(result.problems))
    return result.worksheet.sheet.digest
  }
  it("does not change with prose, answers, keys or checks", () => {
    expect(digest(sound.replace("A sinker falls", "A sinker is let go"))).toBe(digest(sound))
    expect(digest(sound.replace("  p = p + F * dt", "  p = F * dt + p"))).toBe(digest(sound))
    expect(digest(sound.replace("answer: a", "answer: b"))).toBe(digest(sound))
    expect(digest(sound.replace("points: 4", "points: 5"))).toBe(digest(sound))
  })
  it("changes with given lines, parameters, version and blank names", () => {
    const all = [
      sound,
      sound.replace("const dt = 0.001", "const dt = 0.002"),
      sound.replace("value: 2", "value: 3"),
      sound.replace("version: 1", "version: 2"),
      sound.replace("blank update", "blank step"),
    ].map(digest)
    expect(new Set(all).size).toBe(all.length)
  })
})

describe("what is wrong with a worksheet is told with its line and the nearest known word", () => {
  const cases: [name: string, spoil: (text: string) => string, code: string, near: string, todo: RegExp][] = [
    ["unknown key of a check", t => t.replace("compare:", "comapre:"), "unknown-key", "comapre", /compare/],
    [
      "unknown key of the front matter",
      t => t.replace("title:", "titel: x\ntitle:"),
      "unknown-key",
      "titel",
      /title/,
    ],
    ["unknown key of a parameter", t => t.replace("label:", "lable:"), "unknown-key", "lable", /label/],
    ["missing title", t => t.replace("title: A sinker\n", ""), "missing-key", "id: sinker", /title/],
    ["unknown kind", t => t.replace("yaml check", "yaml chekc"), "unknown-kind", "yaml chekc", /check/],
    ["wrong language", t => t.replace("ts cell", "yaml cell"), "unknown-kind", "yaml cell", /ts cell drop/],
    [
      "duplicate check",
      t => t + "\n```yaml check path\ncell: drop\ncompare: sinker.position\npoints: 1\n```\n",
      "duplicate-name",
      "@@last",
      /own/,
    ],
    [
      "check and question of one name",
      t => t.replace("question guess", "question path"),
      "duplicate-name",
      "question path",
      /own/,
    ],
    [
      "duplicate blank",
      t => t.replace("blank update", "blank force"),
      "duplicate-name",
      "blank force: Update",
      /own/,
    ],
    [
      "duplicate key",
      t => t.replace("points: 4", "points: 4\npoints: 5"),
      "duplicate-name",
      "points: 5",
      /one/,
    ],
    [
      "blank without an end",
      t => t.replace("  // end blank\n", ""),
      "blank-without-end",
      "// blank update",
      /end blank/,
    ],
    [
      "inline blank without an end",
      t => t.replace(" /* end blank */", ""),
      "blank-without-end",
      "/* blank force",
      /end blank/,
    ],
    [
      "end without a blank",
      t => t.replace("  // blank update: Update the momentum.\n", ""),
      "end-without-blank",
      "// end blank",
      /blank/,
    ],
    ["blank without a name", t => t.replace("blank update:", "blank :"), "blank-name", "blank :", /NAME/],
    [
      "check of a cell that is not there",
      t => t.replace("cell: drop\ncompare", "cell: dorp\ncompare"),
      "unknown-cell",
      "```yaml check path",
      /drop/,
    ],
    [
      "check without a rule",
      t => t.replace("compare: sinker.position\n", ""),
      "check-rule",
      "cell: drop\npoints",
      /compare/,
    ],
    [
      "check with two rules",
      t => t.replace("points: 4", "rests: sinker\nfrom: 1\npoints: 4"),
      "check-rule",
      "rests:",
      /exactly one/,
    ],
    [
      "key without effect",
      t => t.replace("points: 4", "above: 1\npoints: 4"),
      "key-without-effect",
      "above",
      /Take it out/,
    ],
    [
      "points that are text",
      t => t.replace("points: 4", "points: four"),
      "wrong-value",
      "points: four",
      /number/,
    ],
    [
      "answer that is no choice",
      t => t.replace("answer: a", "answer: c"),
      "question-answer",
      "answer: c",
      /a/,
    ],
    ["range upside down", t => t.replace("[1, 4]", "[4, 1]"), "parameter", "height", /smaller/],
    ["value outside its range", t => t.replace("value: 2", "value: 9"), "parameter", "height", /range/],
    ["unit that is none", t => t.replace("unit: m,", "unit: metr,"), "unknown-unit", "height: {", /m/],
    [
      "equation that cannot be set",
      t => t.replace("\\Delta t$", "\\Delta t\\frac{$"),
      "equation",
      "A sinker falls",
      /TeX/,
    ],
    ["front matter missing", t => t.replace("---\n", ""), "front-matter-missing", "@@first", /---/],
    [
      "a bracket left open",
      t => t.replace("kind: choice", "kind: [choice"),
      "yaml-syntax",
      "@@any",
      /Close|same column/,
    ],
    [
      "a second colon in a text",
      t => t.replace("points: 4", "points: 4\nhint: Look: the sign's turned"),
      "yaml-syntax",
      "hint: Look",
      /in quotes: hint: "Look: the sign's turned"/,
    ],
    [
      "a text that begins with a sign of YAML's own",
      t => t.replace("ask: Which", "ask: @Which"),
      "yaml-syntax",
      "ask: @",
      /in quotes: ask: '@Which is larger\?'/,
    ],
    [
      "a text that goes on after its quotes",
      t => t.replace("ask: Which is larger?", 'ask: "Which" is larger?'),
      "yaml-syntax",
      'ask: "Which"',
      /in quotes: ask: '"Which" is larger\?'/,
    ],
    [
      "a text that begins with a star",
      t => t.replace("ask: Which", "ask: *Which"),
      "yaml-syntax",
      "ask: *",
      /quotes/,
    ],
    [
      "an indent by tab",
      t => t.replace("parameters:\n  height", "parameters:\n\theight"),
      "yaml-syntax",
      "@@any",
      /spaces/,
    ],
    [
      "a comma that parts a text",
      t => t.replace("{ a: this, b: that }", "{ a: this, of course, b: that }"),
      "wrong-value",
      "choices",
      /holds a comma in quotes/,
    ],
    [
      "fence never closed",
      t => t + "\n```yaml plot p\ncell: drop\ny: [sinker.position.y]\n",
      "fence-without-end",
      "```yaml plot",
      /Close/,
    ],
    ["no cell at all", () => "---\ntitle: A\nid: a\nversion: 1\n---\nProse.\n", "no-cell", "@@any", /cell/],
  ]
  it.each(cases)("%s", (_, spoil, code, near, todo) => {
    const text = spoil(sound)
    expect(text).not.toBe(sound)
    const problems = problemsOf(text)
    const problem = problems.find(p => p.code === code)
    expect(problem, JSON.stringify(problems)).toBeDefined()
    expect(problem!.todo).toMatch(todo)
    expect(problem!.where?.file).toBe("sinker.md")
    if (!near.startsWith("@@")) expect(problem!.where?.line).toBe(lineOf(text, near))
    if (near === "@@last")
      expect(problem!.where?.line).toBe(text.slice(0, text.lastIndexOf("```yaml check")).split("\n").length)
  })
})
