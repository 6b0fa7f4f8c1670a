import { describe, expect, it } from "vitest"
import { assembleProgram, compile, explainFailure } from "../../src/cell/index.ts"
import { cell, compiled, program, run, strip } from "./run.ts"

async function fault(text: string) {
  const result = await compile(program(text), strip)
  if (result.ok) throw new Error(`This is a program: ${text}`)
  return result.problems[0]!
}

describe("what is no program is told in words, at its place", () => {
  const cases: [string, string, string, number, number][] = [
    ["an opened round bracket", "let a = 1\nwhile (a > 0 {\n a--\n}", "bracket-not-closed", 2, 7],
    ["an opened brace", "let a = 1\nwhile (a > 0) {\n a--\n", "bracket-not-closed", 2, 15],
    ["an opened square bracket", "let a = [1, 2\nlet b = 3", "bracket-not-closed", 1, 9],
    ["a closing bracket too many", "let a = (1 + 2))\n", "bracket-not-opened", 1, 16],
    ["a brace too many", "let a = 1\n}\n", "bracket-not-opened", 2, 1],
    ["an unfinished text", 'let a = "abc\nlet b = 2', "text-not-closed", 1, 9],
    ["an unfinished template", "let a = `abc\nlet b = 2", "text-not-closed", 1, 9],
    ["an unfinished remark", "let a = 1\n/* abc\nlet b = 2", "text-not-closed", 2, 1],
    ["two numbers side by side", "let a = 3 4", "cannot-understand", 1, 11],
    ["a missing operand at the end of a line", "let a = 3 *\n\nlet b = 2", "something-missing", 1, 11],
    ["a missing operand before a bracket", "let a = (3 + )", "something-missing", 1, 12],
    ["a missing value", "let a = \n", "something-missing", 1, 7],
    ["a const without value", "const a\n", "something-missing", 1, 8],
    ["an operand that swallows the next line", "let p = 1, r\np = p *\nr = r", "something-missing", 2, 7],
    ["a name made twice", "let a = 1\nlet a = 2", "declared-twice", 2, 5],
    ["return at the top", "return 3", "not-allowed-here", 1, 1],
    ["import", 'import x from "y"', "not-allowed-here", 1, 1],
    ["export", "export const a = 1", "not-allowed-here", 1, 1],
    ["import of a file at run time", 'import("y")', "not-allowed-here", 1, 1],
    ["await", "await 3", "not-allowed-here", 1, 1],
    ["eval", "eval('1')", "not-allowed-here", 1, 1],
    ["eval under another spelling", "ev\\u0061l('1')", "not-allowed-here", 1, 1],
    ["all arguments at the top", "arguments[2].done(0)", "not-allowed-here", 1, 1],
    ["all arguments through an arrow", "const f = () => arguments", "not-allowed-here", 1, 17],
    ["a type on a name in use", "let e = 1\nconst a = (e: number = 2 * e) / 180", "not-allowed-here", 2, 12],
    ["a namespace", "namespace N { const a = 1 }", "not-allowed-here", 1, 1],
    ["a pattern that is none", "const a = /(/", "not-allowed-here", 1, 11],
    ["a value on the left", "let a = 1\na + 1 = 2", "cannot-understand", 2, 1],
    ["a sign before a power", "let a = 2\nlet b = -a ** 2", "cannot-understand", 2, 10],
    ["with", "with (Math) {}", "cannot-understand", 1, 1],
    ["half a character", 'let a = "\uD83D"', "broken-character", 1, 10],
    [
      "a type that is not there",
      "let a = 1\nlet b = [1, 2] as const satisfies\n",
      "something-missing",
      2,
      34,
    ],
  ]
  it.each(cases)("%s", async (_, text, code, line, column) => {
    const problem = await fault(text)
    expect(problem).toMatchObject({ code, where: { cell: "cell", line, column } })
    expect(problem.text).toMatch(/[.`]$|after \S+$/)
    expect(problem.todo).toMatch(/\.$|…$|\?$/)
  })
  it("what only the stripper finds is told in its words, at its place in the text as typed", async () => {
    const refuse = async (text: string): Promise<string> => {
      const line = text.split("\n").findIndex(l => l.includes("zig"))
      throw {
        errors: [{ text: "Zigzags are wrong", location: { line: line + 1, column: 5, lineText: "é = zig" } }],
      }
    }
    const result = await compile(program("let a = 1\né = zig\nenum E { A }"), refuse)
    expect(result).toMatchObject({
      problems: [
        {
          code: "cannot-understand",
          text: expect.stringContaining("Zigzags"),
          where: { line: 2, column: 5 },
        },
      ],
    })
  })
  it("names that hide in escapes cannot be ours", async () => {
    expect(await fault("let d\\u0073$turns = 0")).toMatchObject({ code: "not-allowed-here" })
  })
})

/** Runs the program, then again with the trace, and has the failure explained, as a host does. */
async function failure(text: string) {
  const c = await compiled(text)
  const fast = run(c)
  if (fast.error === undefined) throw new Error("The program did not fail")
  const traced = run(c, { trace: true })
  const problem = explainFailure(fast.error, c, traced.site)
  const { line = 0, column = 0 } = problem.where ?? {}
  return {
    problem,
    source: text.split("\n")[line - 1]?.slice(column - 1, (problem.where?.endColumn ?? 0) - 1),
  }
}

describe("what fails at run time is told in words, at its place", () => {
  const cases: [string, string, string, string][] = [
    [
      "number + vector",
      "const v = vec3(1, 2, 3)\nlet s = 2 * 3\nconst w = v * 2 + (s + 1)",
      "number-and-vector",
      "v * 2 + (s + 1)",
    ],
    [
      "vector * vector in a function",
      "const v = vec3(1, 2, 3)\nconst f = a => a * v\nf(2)\nf(v)",
      "vector-times-vector",
      "a * v",
    ],
    [
      "a vector under a number's name",
      "const g = vec3(0, -9.81, 0)\nconst N: Scalar<'N'> = 2 * g\nconst F = N * vec3(0, 1, 0)",
      "vector-times-vector",
      "N * vec3(0, 1, 0)",
    ],
    [
      "+= with a number",
      "let p = vec3(1, 2, 3)\nfor (let i = 0; i < 3; i++) {\n  p += i === 2 ? 1 : p\n}",
      "number-and-vector",
      "p += i === 2 ? 1 : p",
    ],
    [
      "a vector compared",
      "const v = vec3(1, 2, 3)\nif (1 + 1 > 1 && v > 2) { }",
      "vector-as-number",
      "v > 2",
    ],
    ["a vector's component set", "const v = vec3(1, 2, 3)\nv.x = 2", "vector-component-set", "v.x = 2"],
    [
      "the library's own error",
      "const v = vec3(0, 0, 0)\nconst n = 1 + magnitude(unit(v))",
      "zero-length",
      "unit(v)",
    ],
    ["an unknown name", "const Fnet = 3\nconst a = 2 + Fnt * 2", "unknown-name", "Fnt"],
    ["a name before it is made", "const a = 2 + b\nconst b = 1", "used-before-made", "b"],
    [
      "a name before it is made, in a function",
      "const f = () => b + 1\nf()\nconst b = 1",
      "used-before-made",
      "b",
    ],
    [
      "a name before it is made, itself a vector",
      "let r = vec3(0, 0, 0)\nwhile (r.x < 2) {\n  r = r + q * 2\n  let q = vec3(1, 0, 0)\n}",
      "used-before-made",
      "q",
    ],
    ["a part of nothing", "const o = { a: 1 }\nconst k = o.a + o.b.c", "no-such-property", "o.b.c"],
    ["a part of nothing, written", "const o = {}\no.p.q = 1 + 1", "no-such-property", "o.p.q = 1 + 1"],
    ["a call of nothing", "const o = {}\no.f(1 + 1, 3)", "not-a-function", "o.f(1 + 1, 3)"],
    ["a call of a number", "const m = 2\nconst a = m (3 + 1)", "not-a-function", "m (3 + 1)"],
    ["a call without arguments", "const o = {}\no.f()", "not-a-function", "o.f()"],
    ["a const changed", "const a = 1\na = 2", "constant-changed", "a = 2"],
    ["a huge list", "const a = new Array(-1)", "too-large", "new Array(-1)"],
    ["a thrown text", 'if (1) {\n  throw "no"\n}', "thrown-value", 'throw "no"'],
    ["a thrown number", "throw 1 + 1", "thrown-value", "1 + 1"],
    [
      "a thrown error",
      'throw new Error("the rope is too short")',
      "program-error",
      'new Error("the rope is too short")',
    ],
  ]
  it.each(cases)("%s", async (_, text, code, where) => {
    const { problem, source } = await failure(text)
    expect(problem.code).toBe(code)
    expect(source).toBe(where)
    expect(problem.todo.length).toBeGreaterThan(5)
  })
  it("endless recursion, told at the start of its region, since where the stack ends is chance", async () => {
    const { problem } = await failure("const f = n => f(n + 1) + 1\nf(0)")
    expect(problem.code).toBe("too-deep")
    expect(problem.where).toMatchObject({ line: 1, column: 1 })
    expect(problem.excerpt).toBe("const f = n => f(n + 1) + 1")
  })
  it("offers the nearest name", async () => {
    expect((await failure("const Fnet = 3\nconst a = Fnt")).problem.todo).toBe("Did you mean Fnet?")
    expect((await failure("const a = sqrt(2)")).problem.todo).toBe("Did you mean Math.sqrt?")
    expect((await failure("const a = 2 * pi + Math.PI")).problem.todo).toBe("Did you mean Math.PI?")
    expect((await failure("magnitud(vec3(1, 2, 3))")).problem.todo).toBe("Did you mean magnitude?")
  })
  it("keeps the words that an error or a stop brings, and never throws itself", async () => {
    const c = await compiled("1")
    const problem = { code: "endless-loop", text: "a", todo: "b" }
    expect(explainFailure({ problem, site: 0 }, c, undefined)).toEqual(problem)
    for (const odd of [
      null,
      undefined,
      3n,
      Symbol("x"),
      { code: "Not a code" },
      [],
      () => 1,
      Object.create(null),
    ]) {
      expect(explainFailure(odd, c, 99999).code).toBe("thrown-value")
    }
  })
  it("places count within the cell", async () => {
    const p = assembleProgram(
      [cell("const a = 1\n", "one"), cell("\nconst b = a.c.d\n", "two")],
      {},
      [],
      "dt",
    )
    const c = await compiled(p)
    const { error } = run(c)
    expect(explainFailure(error, c, run(c, { trace: true }).site)).toMatchObject({
      where: { cell: "two", line: 2, column: 11 },
      excerpt: "const b = a.c.d",
    })
    expect(run(c).cells).toEqual([0, 1])
  })
})
