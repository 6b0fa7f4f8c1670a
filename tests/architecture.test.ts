import { readdirSync, readFileSync } from "node:fs"
import { dirname, join, relative, resolve } from "node:path"
import { describe, expect, it } from "vitest"

/** The rooms, lowest first: imports point to the same or a lower one. */
const rooms = ["physics", "cell", "worksheet", "run", "judge", "report", "page", "command"]

interface Import {
  file: string
  from: string
  to: string
  target: string
}

/** Relative imports in a text, as room to room. */
function importsIn(file: string, text: string): Import[] {
  const found = [...text.matchAll(/(?:from\s+|import\s*\(?\s*|new URL\(\s*)"(\.{1,2}\/[^"]+)"/g)]
  return found.map(([, target]) => {
    const path = relative("src", resolve(dirname(file), target!)).replaceAll("\\", "/")
    return { file, from: relative("src", file).split(/[\\/]/)[0]!, to: path.split("/")[0]!, target: target! }
  })
}

const wrong = (list: Import[]): string[] =>
  list
    .filter(({ from, to }) => rooms.includes(to) && rooms.indexOf(to) > rooms.indexOf(from))
    .map(({ file, from, target }) => `${file} imports ${target}: move the shared part down to ${from}/`)

const sources = readdirSync("src", { recursive: true, encoding: "utf8" })
  .filter(name => /\.(ts|tsx|mjs)$/.test(name))
  .map(name => join("src", name))

describe("the rooms", () => {
  it("are the ones that are named here, no other", () => {
    const folders = readdirSync("src", { withFileTypes: true })
    expect(
      folders
        .filter(entry => entry.isDirectory())
        .map(entry => entry.name)
        .sort(),
    ).toEqual([...rooms].sort())
    expect(folders.filter(entry => !entry.isDirectory()).map(entry => entry.name)).toEqual([])
  })
  it("import only from the same or a lower room", () => {
    expect(wrong(sources.flatMap(file => importsIn(file, readFileSync(file, "utf8"))))).toEqual([])
  })
  it("would be told apart: an upward import is found", () => {
    const upward = importsIn(
      "src/physics/vec3.ts",
      'import { run } from "../run/index.ts"\nimport("../page/x.ts")',
    )
    expect(wrong(upward)).toHaveLength(2)
    expect(wrong(importsIn("src/run/realm.ts", 'import { vec3 } from "../physics/index.ts"'))).toEqual([])
  })
  it("keep each file to one idea of at most 400 lines", () => {
    const long = sources.filter(file => readFileSync(file, "utf8").split("\n").length > 401)
    expect(long).toEqual([])
  })
})

describe("the problem pages", () => {
  const whole = sources.map(file => readFileSync(file, "utf8")).join("\n")
  const pages = readdirSync("public/problems")
    .filter(name => name.endsWith(".md"))
    .map(name => name.slice(0, -3))
  it("exist for every code that a message uses", () => {
    const codes = new Set([...whole.matchAll(/\bcode: "([a-z0-9-]+)"/g)].map(match => match[1]!))
    expect([...codes].filter(code => !pages.includes(code)).sort()).toEqual([])
  })
  it("exist for no other", () => {
    expect(pages.filter(page => !whole.includes(`"${page}"`))).toEqual([])
  })
  it("say what it means, show it, tell what to do and what it is not", () => {
    const thin = pages.filter(page => {
      const text = readFileSync(`public/problems/${page}.md`, "utf8")
      return !(/^# \S/.test(text) && (text.match(/^## /gm) ?? []).length >= 3 && text.length > 300)
    })
    expect(thin).toEqual([])
  })
})
