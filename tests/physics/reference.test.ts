import ts from "typescript"
import { describe, expect, it } from "vitest"
import { extractReference } from "../../src/page/reference/extract.ts"
import { buildReference } from "../../src/page/reference/html.ts"
import * as physics from "../../src/physics/index.ts"

const entries = extractReference()
const functions = entries.filter(entry => entry.kind === "function")

/** A docstring's example with each `expression // value` turned into a pair of what came out and what stands there. */
function outcomes(
  example: string,
): { readonly got: unknown; readonly want: unknown; readonly line: string }[] {
  const file = ts.createSourceFile("example.ts", example, ts.ScriptTarget.ES2022, true)
  const parts = file.statements.map(statement => {
    const text = statement.getText()
    const comment = /^[^\S\n]*\/\/ (.*)$/m.exec(example.slice(statement.end).split("\n")[0]!)
    return ts.isExpressionStatement(statement) && comment
      ? `outcomes.push({ got: (${text}), want: (${comment[1]}), line: ${JSON.stringify(text)} })`
      : text
  })
  const library: Record<string, unknown> = { ...physics }
  const names = Object.keys(library)
  const list: { got: unknown; want: unknown; line: string }[] = []
  const run = new Function(...names, "Math", "outcomes", parts.join("\n"))
  run(...Object.values(library), physics.math, list)
  return list
}

describe("the reference generated from docstrings", () => {
  it("names each public value of the library once", () => {
    const values = entries.filter(entry => entry.kind !== "type").map(entry => entry.name)
    expect(values.sort()).toEqual(Object.keys(physics).sort())
  })

  it.each(functions.map(entry => [entry.name, entry] as const))(
    "%s says what it does, what it takes, gives and refuses, and its example comes out as written",
    (_, entry) => {
      expect(entry.summary).not.toBe("")
      expect(entry.returns ?? "").not.toBe("")
      for (const p of entry.params) expect(p.text, p.name).not.toBe("")
      for (const p of entry.params) for (const o of p.options ?? []) expect(o.text, o.name).not.toBe("")
      for (const code of entry.errors) expect(physics.physicsProblemCodes).toContain(code)
      const lines = outcomes(entry.example ?? "")
      expect(lines.length).toBeGreaterThan(0)
      for (const { got, want, line } of lines) expect(got, line).toEqual(want)
    },
  )

  it("an example with a wrong value would be seen", () => {
    const [outcome] = outcomes("dot(vec3(1, 2, 3), vec3(4, 5, 6)) // 33")
    expect(outcome?.got).toBe(32)
    expect(outcome?.want).toBe(33)
  })

  it("every force, update and stepper gives its law and unit", () => {
    const spring = entries.find(entry => entry.name === "springForce")
    expect(spring?.law).toBe(
      "F = −k (L − L₀) n − c (v · n) n, with L the distance from the anchor, n the unit vector from the anchor to the body and v the velocity of the body relative to the anchor",
    )
    expect(spring?.unit).toBe("N")
    expect(spring?.params[2]?.options?.map(o => [o.name, o.unit])).toEqual([
      ["stiffness", "N/m"],
      ["restLength", "m"],
      ["dampingCoefficient", "N s/m"],
      ["velocity", "m/s"],
      ["anchorVelocity", "m/s"],
    ])
  })

  it("the page links each name and each problem", () => {
    const { html, json } = buildReference()
    for (const entry of functions) expect(html).toContain(`id="${entry.name}"`)
    expect(html).toContain('href="../problems/zero-length.html"')
    expect(JSON.parse(json)).toHaveLength(entries.length)
  })
})
