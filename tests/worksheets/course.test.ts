import { existsSync, readdirSync, readFileSync } from "node:fs"
import { afterAll, describe, expect, it } from "vitest"
import { knownNames } from "../../src/cell/index.ts"
import { closeRunner, readSheet, runSheet, shippedIds, textOf } from "./sheet-run.ts"

afterAll(closeRunner)

describe("the course", () => {
  it("is what lies in worksheets/, each with notes for the teacher", () => {
    const files = readdirSync("worksheets").filter(name => name.endsWith(".md"))
    expect(files.sort()).toEqual(shippedIds.map(id => `${id}.md`).sort())
    expect(readdirSync("worksheets/notes").sort()).toEqual(files)
  })
})

describe.each(shippedIds)("%s as teaching material", id => {
  const { sheet, answers, keys } = readSheet(id)
  const text = textOf(id)

  it("makes ten points", () => {
    const points = [...sheet.checks, ...sheet.questions].reduce((sum, item) => sum + item.points, 0)
    expect(points).toBe(10)
  })

  it("asks before the first cell and after the last, and every question says why", () => {
    const kinds = sheet.blocks.map(block => block.kind)
    expect(kinds.indexOf("question")).toBeLessThan(kinds.indexOf("cell"))
    expect(kinds.lastIndexOf("question")).toBeGreaterThan(kinds.lastIndexOf("cell"))
    for (const key of keys) expect(key.why.length, key.name).toBeGreaterThan(40)
  })

  it("has at least two checks, each with what it looks at and a hint that does not hold the answer", () => {
    expect(sheet.checks.length).toBeGreaterThanOrEqual(2)
    const lines = Object.values(answers).flatMap(linesOf)
    for (const check of sheet.checks) {
      expect(check.says.length, check.name).toBeGreaterThan(20)
      expect(check.hint.length, check.name).toBeGreaterThan(60)
      for (const line of lines)
        expect(`${check.hint} ${Object.values(check.slips).join(" ")}`).not.toContain(line)
    }
  })

  it("shows no answer of a blank in its given lines or its prose", () => {
    const given = sheet.cells
      .flatMap(cell => cell.segments)
      .map(s => (s.kind === "given" ? s.text : s.starter))
    const prose = sheet.blocks.map(block => (block.kind === "prose" ? block.html : ""))
    const shown = [...given, ...prose].join("\n")
    for (const line of Object.values(answers).flatMap(linesOf)) expect(shown).not.toContain(line)
  })

  it("has drawings that exist and are described", () => {
    const images = [...text.matchAll(/!\[([^\]]*)\]\(([^)]*)\)/g)]
    expect(images.length).toBeGreaterThan(0)
    for (const [, alt, source] of images) {
      expect(existsSync(`worksheets/${source}`), source).toBe(true)
      expect(alt!.length, source).toBeGreaterThan(80)
      const svg = readFileSync(`worksheets/${source}`, "utf8")
      expect(svg).toContain("prefers-color-scheme: dark")
      expect(svg).toContain("<title>")
    }
  })

  it("gives sources, warns where someone may try it, and keeps a calm voice", () => {
    expect(text).toContain("## Where the numbers come from")
    expect(text).not.toContain("from memory")
    expect(text).toMatch(/rules\s+of\s+(?:your|the)\s+school|school's\s+rules/)
    expect(
      text
        .replace(/```ts[\s\S]*?```/g, "")
        .replace(/!\[/g, "[")
        .replace(/!=/g, "")
        .replace(/\\!/g, ""),
    ).not.toContain("!")
  })

  it("says what one will learn, what one needs, and how long it takes; goes further; its notes help the teacher", () => {
    const minutes = Number(/\*\*You need:\*\*[\s\S]*?Allow about (\d+) minutes/.exec(text)?.[1])
    expect(minutes).toBeGreaterThanOrEqual(30)
    expect(minutes).toBeLessThanOrEqual(50)
    expect(text).toContain("## What you will learn\n")
    expect(text.split("## Going further\n")[1]!.split("\n## ")[0]!.match(/^- /gm)!.length).toBeGreaterThan(1)
    const notes = readFileSync(`worksheets/notes/${id}.md`, "utf8")
    expect(notes).toContain("students do not get this page")
    expect(notes).toContain(`**Time:** ${minutes} minutes`)
    expect(notes).toContain("**Before:**")
    expect(notes).toContain("## For real")
    // typical slips, what lies behind them, and a question to ask
    expect(notes.match(/^\|.*“[^”]+[?.]”.*\|$/gm)!.length).toBeGreaterThanOrEqual(4)
    const asksForWords = sheet.questions.some(question => question.kind === "text")
    expect(/open question|last question|plan and the defence/.test(notes)).toBe(asksForWords)
  })

  it("names in its prose only what its cells, its sliders or the library have", () => {
    const program = sheet.cells.flatMap(cell =>
      cell.segments.map(s => (s.kind === "given" ? s.text : s.starter)),
    )
    const known = new Set([
      ...program.flatMap(part => part.match(/[A-Za-z_]\w*/g) ?? []),
      ...sheet.parameters.map(parameter => parameter.name),
      ...knownNames,
      ...Object.getOwnPropertyNames(Math),
      ...["let", "const"],
    ])
    const prose = text.replace(/^```[\s\S]*?^```$/gm, "")
    const words = [...prose.matchAll(/`([^`\n]+)`/g)]
      .flatMap(([, code]) => code!.match(/(?<![\w.]|const )[A-Za-z_]\w*/g) ?? [])
      .filter(word => word.length > 1 && !known.has(word))
    expect(words).toEqual([])
  })

  it("has given lines that fit the column of a listing", () => {
    const lines = sheet.cells.flatMap(cell =>
      cell.segments.flatMap(s => (s.kind === "given" ? s.text : s.starter).split("\n")),
    )
    expect(lines.filter(line => line.length > 54)).toEqual([])
  })

  it("asks for numbers with a unit, and says so where figures count", () => {
    for (const question of sheet.questions.filter(q => q.kind === "number")) {
      const key = keys.find(k => k.name === question.name)!
      expect(question.unit).not.toBe("")
      expect(key.tolerance, question.name).toBeGreaterThan(0)
      if (key.figures !== null) expect(question.ask, question.name).toMatch(/significant\s+figures/)
    }
  })

  it("varies at least one parameter, and runs to its end with blanks empty and with blanks filled, at both ends of each range", async () => {
    expect(sheet.parameters.some(parameter => parameter.vary)).toBe(true)
    const ends = [0, 1].map(end => Object.fromEntries(sheet.parameters.map(p => [p.name, p.range[end]!])))
    for (const set of [{}, ...ends]) {
      expect((await runSheet(id, { set })).outcome.problem).toBeNull()
      expect((await runSheet(id, { set, answers: {} })).outcome.problem).toBeNull()
    }
  })

  it("records a thousand to a few thousand rows in all, with a time step that is found", async () => {
    const { outcome } = await runSheet(id)
    expect(outcome.timeStepFound).toBe(true)
    expect(outcome.turns).toBeLessThan(200_000)
    expect(outcome.recordings.map(recording => recording.cell)).toEqual(sheet.cells.map(cell => cell.name))
  })
})

/** The lines of an answer that carry it: no braces, no comments, no conditions (a starter may show those). */
function linesOf(answer: string): string[] {
  return answer
    .split("\n")
    .map(line => line.trim())
    .filter(line => line.length > 12 && !line.startsWith("//") && !line.startsWith("if ("))
}
