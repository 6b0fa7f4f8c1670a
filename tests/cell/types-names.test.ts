import { describe, expect, it } from "vitest"
import { assembleProgram } from "../../src/cell/assemble.ts"
import type { CellSource, Program } from "../../src/cell/contract.ts"
import { aboutAt } from "../../src/cell/types/about.ts"
import { renameAt } from "../../src/cell/types/rename.ts"
import { suggestAt } from "../../src/cell/types/suggest.ts"
import { lay, program } from "./types-tools.ts"

/** A text with | at the caret. */
function atCaret(text: string): { program: Program; offset: number } {
  const offset = text.indexOf("|")
  return { program: program(text.slice(0, offset) + text.slice(offset + 1)), offset }
}

const start =
  "/** how it moves */\nlet r: Vec3<'m'> = vec3(0, height, 0)\nlet p = vec3(0, 0, 0)\nconst dt = 0.01\n"

function suggested(text: string) {
  const { program: of, offset } = atCaret(start + text)
  const found = suggestAt(lay(of), offset)
  return { from: offset - (found?.from ?? offset), list: found?.list ?? [] }
}
const named = (text: string, name: string) => suggested(text).list.find(one => one.name === name)

describe("names are suggested", () => {
  it("of the program, with what they hold", () => {
    expect(named("p = p + d|", "dt")).toEqual({ name: "dt", sort: "own", kind: "a number", says: "" })
    expect(named("p = p + r|", "r")).toMatchObject({ sort: "own", kind: "a vector, m" })
  })
  it("of parameters, with label and unit", () =>
    expect(named("p = h|", "height")).toEqual({
      name: "height",
      sort: "parameter",
      kind: "a number",
      says: "drop height, m",
    }))
  it("of the library, with how they are called and one sentence", () => {
    const spring = named("const F = spr|", "springForce")
    expect(spring).toMatchObject({ sort: "library", kind: "(position, anchor, options)" })
    expect(spring!.says).toMatch(/^[A-Z].*\.$/)
  })
  it("behind a dot, in a line that is not finished: the parts of a vector", () => {
    const names = suggested("p = p + r.|\nconst next = 2").list.map(one => one.name)
    expect(names).toEqual(expect.arrayContaining(["x", "y", "z", "magnitude", "unit", "dot"]))
    expect(names).not.toContain("toJSON")
    expect(suggested("p = p + (r + p * dt).ma|").list.map(one => one.name)).toContain("magnitude")
  })
  it("between braces: the quantities that a function takes by name", () => {
    const stiffness = named("const F = springForce(r, p, { st|", "stiffness")
    expect(stiffness).toMatchObject({ sort: "part", kind: "a number" })
    expect(stiffness!.says).toContain("N/m")
  })
  it("no name that no cell has, and none of the checker's own", () => {
    const names = suggested("p = |").list.map(one => one.name)
    for (const name of ["Date", "Promise", "eval", "ds$add", "globalThis", "Function", "Intl"])
      expect(names).not.toContain(name)
    expect(names).toEqual(expect.arrayContaining(["r", "height", "dot", "Math", "record"]))
  })
  it("from the beginning of the word", () =>
    expect(suggested("p = p + springF|").from).toBe("springF".length))
  it("nothing inside a number or a text", () => {
    expect(suggested("p = p * 0.5e|").list).toEqual([])
    expect(suggested('const s = "he|').list).toEqual([])
  })
})

const about = (text: string) => {
  const { program: of, offset } = atCaret(start + text)
  return aboutAt(lay(of), offset)
}

describe("a name is explained", () => {
  it("of the program: what it holds, its unit, and where it was made", () =>
    expect(about("p = p + |r * dt")).toMatchObject({ head: "r: a vector, m" }))
  it("the result of vector operators", () =>
    expect(about("const v = (r + p) / 2\nconst w = v| * 2")).toMatchObject({
      head: "v: a vector",
      says: "Made in cell1, line 5.",
    }))
  it("of a parameter", () =>
    expect(about("const h = heig|ht")).toMatchObject({ head: "height: a number", says: "drop height, m" }))
  it("of a quantity by name", () =>
    expect(about("const F = springForce(r, p, { stiff|ness: 3 })")).toMatchObject({
      head: "stiffness: a number",
      says: expect.stringContaining("N/m"),
    }))
  it("nothing where no name stands", () => expect(about("const a = 2 | + 3")).toBeNull())
})

/** Given and blank segments in turn; a blank's text stands in ⟨ ⟩. */
function sheet(...texts: string[]): Program {
  const answers: Record<string, string> = {}
  const cells = texts.map(
    (text, n): CellSource => ({
      name: `cell${n + 1}`,
      line: 1,
      segments: text.split(/(⟨[^⟩]*⟩)/).map((part, i) => {
        if (i % 2 === 0) return { kind: "given", text: part } as const
        const name = `b${n}-${i}`
        answers[name] = part.slice(1, -1)
        return { kind: "blank", name, prompt: "", inline: true, starter: "" } as const
      }),
    }),
  )
  return assembleProgram(cells, answers, ["height"], "dt")
}

function renamed(of: Program, at: string, name: string): string {
  const result = renameAt(
    lay(of, [{ name: "height", label: "drop height", unit: "m" }]),
    of.text.indexOf(at) + 1,
    name,
  )
  if (!result.ok) return result.why
  return [...result.places]
    .reverse()
    .reduce((text, { from, to, insert }) => text.slice(0, from) + insert + text.slice(to), of.text)
}

describe("a name is renamed", () => {
  it("everywhere in what may be written, over cells, and nowhere else", () => {
    const of = sheet(
      "⟨let speed = 2\nlet q = speed + speed\nspeed += q\nconst o = { speed }⟩\n// speed",
      "⟨console.log(speed, o.speed)⟩",
    )
    expect(renamed(of, "speed = 2", "v")).toBe(
      "let v = 2\nlet q = v + v\nv += q\nconst o = { speed: v }\n// speed\n;\nconsole.log(v, o.speed)",
    )
  })
  it("and another name of the same letters stays", () => {
    const of = sheet("⟨let a = 1\nfunction f(a) { return a * 2 }\nconsole.log(f(a))⟩")
    expect(renamed(of, "a = 1", "mass")).toBe(
      "let mass = 1\nfunction f(a) { return a * 2 }\nconsole.log(f(mass))",
    )
  })
  it("not where a given line uses it", () => {
    const of = sheet("⟨let F = vec3(0, 0, 0)⟩\nconst p = F * 2")
    expect(renamed(of, "F =", "force")).toBe(
      "F stands in a given line too (cell1, line 2), and given lines stay as they are.",
    )
  })
  it("not a parameter, not a name of the library", () => {
    const of = sheet("⟨const a = height + dot(vec3(1, 0, 0), vec3(1, 0, 0))⟩")
    expect(renamed(of, "height", "h")).toMatch(/parameter/)
    expect(renamed(of, "dot(", "h")).toMatch(/library/)
  })
  it("not into a name that means something already, nor into what is no name", () => {
    const of = sheet("⟨let a = 1\nlet b = a⟩")
    expect(renamed(of, "a = 1", "b")).toMatch(/used already/)
    expect(renamed(of, "a = 1", "dot")).toMatch(/library/)
    expect(renamed(of, "a = 1", "height")).toMatch(/parameter/)
    expect(renamed(of, "a = 1", "let")).toMatch(/word of the language/)
    expect(renamed(of, "a = 1", "2a")).toMatch(/begins with a letter/)
  })
})
