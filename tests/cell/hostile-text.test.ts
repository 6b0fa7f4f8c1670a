import { describe, expect, it } from "vitest"
import { compile, lower } from "../../src/cell/index.ts"
import { program, strip } from "./run.ts"

/** A message with a place, or a program; never an exception. */
async function outcome(text: string): Promise<string> {
  const result = await compile(program(text), strip)
  if (result.ok) return "program"
  for (const problem of result.problems) {
    expect(problem.where?.line).toBeGreaterThan(0)
    expect(problem.text.length).toBeLessThan(400)
  }
  return result.problems[0]!.code
}

describe("bad input ends in a message or a result", () => {
  const line = "p = p + Fnet * dt // momentum\n"
  const cases: [string, string, string][] = [
    ["a cell of 1 MB of good lines", "let p = 1, Fnet = 2, dt = 3\n" + line.repeat(34_000), "program"],
    ["a cell of 1 MB of one line", `let a = "${"x".repeat(1_000_000)}"`, "program"],
    ["1 MB of nothing but digits", "1".repeat(1_000_000), "program"],
    ["1 MB of open quotes", '"\n'.repeat(500_000), "text-not-closed"],
    ["1 MB of remarks", "/**/".repeat(250_000), "cannot-understand"],
    ["1 MB of remarks on lines of their own", "// x\n".repeat(200_000), "cannot-understand"],
    ["4,000 remarks in a row", "/* x */ // y\n".repeat(2_000), "program"],
    ["10,000 nested brackets", "let a = " + "(".repeat(10_000) + "1" + ")".repeat(10_000), "nested-too-deep"],
    ["10,000 nested lists", "let a = " + "[".repeat(10_000) + "]".repeat(10_000), "nested-too-deep"],
    ["10,000 nested blocks", "{".repeat(10_000) + "}".repeat(10_000), "nested-too-deep"],
    ["10,000 opened brackets", "(".repeat(10_000), "nested-too-deep"],
    ["10,000 closed brackets", ")".repeat(10_000), "bracket-not-opened"],
    ["10,000 signs", "let a = " + "-".repeat(9_999) + "1", "nested-too-deep"],
    ["10,000 nots", "let a = " + "!".repeat(10_000) + "1", "nested-too-deep"],
    ["10,000 arrows", "let a = " + "x => ".repeat(10_000) + "1", "nested-too-deep"],
    [
      "10,000 templates in templates",
      "let a = " + "`${".repeat(10_000) + "1" + "}`".repeat(10_000),
      "nested-too-deep",
    ],
    ["a lone surrogate in a text", 'let a = "\uD800"', "broken-character"],
    ["a lone surrogate by itself", "\uDC00", "broken-character"],
    ["whole pairs", 'let a = "\uD83D\uDE00"', "program"],
    ["a byte-order mark", "\uFEFFlet a = 1", "program"],
    ["a byte-order mark in the middle", "let a =\uFEFF 1", "program"],
    ["zero bytes", "let a = 1\u0000", "cannot-understand"],
    ["line separators", "let a = 1\u2028let b = a\u2029", "program"],
    ["carriage returns alone", "let a = 1\rlet b = a", "program"],
    ["nothing", "", "program"],
    ["white space", " \n\t\n", "program"],
    ["await called as a function", "const a = { b: await (1 + 2) / 3 }", "not-allowed-here"],
    ["a type behind the name of a part", "const a = { d<T>: 3 }", "not-allowed-here"],
    ["a comma with nothing behind it in a type", "let F: Vec3<'N',> = vec3(0, 0, 0)", "not-allowed-here"],
    ["the same within another type", "const m: Map<string, Vec3<'N',>> = new Map()", "not-allowed-here"],
    ["a comma behind a parameter of a type, which the language has", "const f = <T,>(a: T) => a", "program"],
    ["a default in brackets within a pattern", "const f = ({ p = (1, 2), q }) => p + q", "program"],
  ]
  it.each(cases)("%s", async (_, text, code) => expect(await outcome(text)).toBe(code))

  it("a sum of 10,000 terms is a sum or told to be too long, and no crash", async () => {
    expect(["program", "nested-too-deep"]).toContain(
      await outcome(`let a = 1\nlet b = ${"a + ".repeat(10_000)}a`),
    )
  })
  it("line ends of any kind give the same program and the same places", async () => {
    const texts = ["\n", "\r\n", "\r"].map(end => ["let a = 1", "let b = a.c.d", "b"].join(end))
    const all = texts.map(text => lower(program(text), { trace: false }))
    expect(new Set(all.map(r => JSON.stringify(r))).size).toBe(1)
  })
})
