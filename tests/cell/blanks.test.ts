import { describe, expect, it } from "vitest"
import {
  assembleProgram,
  type CellSource,
  checkBlanks,
  compile,
  type Program,
  placeOf,
  type Segment,
} from "../../src/cell/index.ts"
import { run, strip } from "./run.ts"

const given = (text: string): Segment => ({ kind: "given", text })
const blank = (name: string, inline = false, starter = ""): Segment => ({
  kind: "blank",
  name,
  prompt: "",
  inline,
  starter,
})
const source = (...segments: Segment[]): CellSource => ({ name: "drop", line: 1, segments })
const filled = (cell: CellSource, answers: Record<string, string>): Program =>
  assembleProgram([cell], answers, [], "dt")

const lines = source(given("let x = 1\n"), blank("step", false, "// your lines"), given("console.log(x)\n"))
const inline = source(
  given("const m = 2, g = 3\nconst F = m * "),
  blank("net", true),
  given(" * 10\nconsole.log(F)\n"),
)

describe("a program is assembled from given lines and answers", () => {
  it("whole-line blanks stand on lines of their own, the starter where there is no answer", () => {
    expect(filled(lines, { step: "x = 2" }).text).toBe("let x = 1\nx = 2\nconsole.log(x)\n")
    expect(filled(lines, {}).text).toBe("let x = 1\n// your lines\nconsole.log(x)\n")
    expect(filled(lines, { step: "" }).text).toBe("let x = 1\n\nconsole.log(x)\n")
  })
  it("blanks next to given text that brings its own line ends come out the same", () => {
    const other = source(given("let x = 1"), blank("step"), given("\nconsole.log(x)\n"))
    expect(filled(other, { step: "x = 2" }).text).toBe("let x = 1\nx = 2\nconsole.log(x)\n")
  })
  it("line ends become line feeds and a byte-order mark goes", () => {
    expect(filled(lines, { step: "\uFEFFx = 2\r\nx = 3\rx = 4" }).text).toContain("x = 2\nx = 3\nx = 4\n")
  })
  it("names like those of objects are no answers", () => {
    const odd = source(given("let x = 1\n"), blank("constructor"), given("x\n"))
    expect(filled(odd, {}).text).toBe("let x = 1\n\nx\n")
  })
  it("an offset is named as cell, blank, line and column within its cell", () => {
    const two = assembleProgram(
      [source(given("let a = 1\n")), { ...lines, name: "second" }],
      { step: "x = 2" },
      [],
      "dt",
    )
    const at = two.text.indexOf("x = 2")
    expect(placeOf(two, at, at + 1)).toEqual({
      cell: "second",
      blank: "step",
      line: 2,
      column: 1,
      endLine: 2,
      endColumn: 2,
    })
    expect(placeOf(two, 4, 5)).toEqual({ cell: "drop", line: 1, column: 5, endLine: 1, endColumn: 6 })
  })
})

describe("a blank keeps to itself", () => {
  const fits: [CellSource, Record<string, string>][] = [
    [lines, { step: "x = 2\nif (x > 1) { x = 3 } // done" }],
    [lines, { step: "/* nothing */" }],
    [lines, { step: `function f(a) { return [a, \`\${a}\`] }\nx = f(1)[0]` }],
    [source(given("const F =\n"), blank("b"), given("F\n")), { b: "2 * 3 // N" }],
    [source(given("const o = {\n"), blank("b"), given("}\n")), { b: "a: 1,\nb: 2," }],
    [source(given("if (1 > 0)\n"), blank("b"), given("let y\n")), { b: "x = 2;" }],
    [source(given("f(1,\n"), blank("b"), given(")\n")), { b: "2, 3" }],
    [inline, { net: "(g + 1)" }],
    [inline, { net: "g" }],
    [inline, { net: "magnitude(vec3(1, 2, 3))" }],
    [inline, { net: " g /* N */ " }],
  ]
  it.each(fits)("%# accepted", (cell, answers) => expect(checkBlanks(filled(cell, answers))).toEqual([]))

  const over: [string, CellSource, Record<string, string>][] = [
    ["a sum in a product", inline, { net: "g + 1" }],
    ["brackets that close others", source(given("f("), blank("b", true), given(")\n")), { b: "1) + (2" }],
    ["braces that close others", source(given("if (a) {\n"), blank("b"), given("}\n")), { b: "} else {" }],
    ["a template's brace", source(given("f(`${"), blank("b", true), given("}`)\n")), { b: "1} ${2" }],
    ["a remark over the rest of the line", inline, { net: "g // " }],
    [
      "a statement that runs on into the next line",
      source(given("let x = 1\n"), blank("b"), given("(f)\n")),
      { b: "x = f" },
    ],
    ["an operator at the end", lines, { step: "x = 2 +" }],
    ["else to a given if", source(given("if (a) { x }\n"), blank("b"), given("y\n")), { b: "else { z }" }],
    [
      "letters that join a given word",
      source(given("let x = 1\nx"), blank("b", true), given("\n")),
      { b: "y" },
    ],
    [
      "a second loop",
      source(given("while ("), blank("b", true), given(") { x }\n")),
      { b: "a) y; while (b" },
    ],
    ["a second function", source(given("const f = "), blank("b", true), given("\n")), { b: "1, g = 2" }],
  ]
  it.each(over)("%s is told", (_, cell, answers) => {
    const [problem] = checkBlanks(filled(cell, answers))
    expect(problem).toMatchObject({
      code: "blank-reaches-out",
      where: { cell: "drop", blank: Object.keys(answers)[0] },
    })
  })
  it("a text or a remark without an end cannot hide what follows: it is no program", async () => {
    for (const step of ['x = "abc', "x = `abc", "/* x"]) {
      const result = await compile(filled(lines, { step }), strip)
      expect(result).toMatchObject({
        ok: false,
        problems: [{ code: "text-not-closed", where: { blank: "step" } }],
      })
    }
  })
  it("a cell or a blank may leave out the ; at its end", async () => {
    const cells = [
      source(given("const a = 1 // one\n/* end */")),
      { ...source(given("const b = a\n// last")), name: "second" },
    ]
    const result = await compile(assembleProgram(cells, {}, [], "dt"), strip)
    expect(result.ok).toBe(true)
    const cell = source(given("let x = 1\n"), blank("b"), given(";[1].map(y => y)\n"))
    expect(checkBlanks(filled(cell, { b: "x = 2" }))).toEqual([])
  })
  it("a cell is whole by itself", async () => {
    const cells = [source(given("if (true) {\n")), { ...source(given("}\n")), name: "second" }]
    const result = await compile(assembleProgram(cells, {}, [], "dt"), strip)
    expect(result).toMatchObject({
      ok: false,
      problems: [{ code: "cell-not-whole", where: { cell: "drop" } }],
    })
  })
})

describe("an empty inline blank", () => {
  it("stops the run when it is reached, and not before", async () => {
    const result = await compile(filled(inline, {}), strip)
    if (!result.ok) throw new Error(JSON.stringify(result))
    for (const trace of [false, true]) {
      const { error } = run(result.compiled, { trace })
      expect(error).toMatchObject({ problem: { code: "empty-blank" } })
      const { from, to } = result.compiled.sites[(error as { site: number }).site]!
      expect([from, to]).toEqual([
        result.compiled.program.blanks[0]!.from,
        result.compiled.program.blanks[0]!.to,
      ])
    }
  })
  it("leaves the places of what follows as they are", async () => {
    const cell = source(given("const F = "), blank("net", true), given("\nlet y = 3 4\n"))
    const result = await compile(filled(cell, {}), strip)
    expect(result).toMatchObject({ ok: false, problems: [{ where: { line: 2, column: 11 } }] })
  })
  it("is named when nothing can be made of the line without it", async () => {
    const cell = source(given("const a = 1 "), blank("sign", true), given(" 2\n"))
    const result = await compile(filled(cell, {}), strip)
    expect(result).toMatchObject({ ok: false, problems: [{ code: "empty-blank", where: { blank: "sign" } }] })
  })
})
