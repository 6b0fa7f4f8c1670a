import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { basename, join } from "node:path"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import type { Edition, Shelf } from "../../src/judge/edition.ts"
import { shipped } from "../support/class.ts"
import { deltasheet } from "../support/deltasheet.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-publish-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const ids = readdirSync("worksheets")
  .filter(name => name.endsWith(".md") && name !== "README.md")
  .map(name => name.slice(0, -3))

/** Text as it would be found however it is spaced or escaped. */
const squeezed = (text: string): string => text.replace(/\\[nrt]/g, " ").replace(/\s+/g, "")

/** The lines of an answer that are long enough to be told from chance. */
const telling = (answer: string): string[] =>
  answer
    .split("\n")
    .map(squeezed)
    .filter(line => line.length >= 8 && !line.startsWith("//"))

const filesOf = (root: string): string[] =>
  readdirSync(root, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath ?? entry.path, entry.name))

const wanted = ids.flatMap(id => Object.values(shipped(id).answers).flatMap(telling))

/** Lines of answers to the shipped worksheets that stand in files below a folder. */
function linesIn(root: string): string[] {
  const found: string[] = []
  for (const file of filesOf(root)) {
    if (!/\.(html|js|json|css|svg|txt|md|map)$/.test(file)) continue
    const text = squeezed(readFileSync(file, "utf8"))
    for (const line of wanted) if (text.includes(line)) found.push(`${file.slice(root.length)}: ${line}`)
  }
  return found
}

/** An edition whose sheet holds an answer, as a careless change would leave it there. */
function withAnswer(text: string, answer: string): string {
  const edition = JSON.parse(text) as Edition
  return JSON.stringify({ ...edition, sheet: { ...edition.sheet, answers: { update: answer } } })
}

describe("the published folder", () => {
  beforeAll(async () => {
    const run = await deltasheet("publish", ...ids.map(id => `worksheets/${id}.md`), "--out", folder)
    expect(run.err).toBe("")
    expect(run.code).toBe(0)
  }, 240_000)
  it("has a page, a shelf and an edition for each worksheet", () => {
    const shelf = JSON.parse(readFileSync(join(folder, "data", "shelf.json"), "utf8")) as Shelf
    expect(shelf.cards.map(card => card.id).sort()).toEqual([...ids].sort())
    for (const id of ids) {
      const edition = JSON.parse(readFileSync(join(folder, "data", `${id}.json`), "utf8")) as Edition
      expect(edition.sheet.digest).toBe(shipped(id).sheet.digest)
    }
    expect(readdirSync(folder)).toContain("index.html")
  })
  it("holds no line of any answer, in no file", () => {
    expect(wanted.length).toBeGreaterThan(10)
    expect(linesIn(folder)).toEqual([])
  })
  it.each([
    ["an edition", "data/lamp-key.json", (text: string, answer: string) => withAnswer(text, answer)],
    ["a script", "assets/left.js", (_: string, answer: string) => `const left = \`${answer}\``],
  ])("would be caught if it did: the search finds an answer that was put into %s", (_, name, put) => {
    const copy = join(folder, "..", `${basename(folder)}-copy`)
    cpSync(folder, copy, { recursive: true })
    try {
      const file = join(copy, name)
      const { update } = shipped("lamp-key").answers
      writeFileSync(file, put(existsSync(file) ? readFileSync(file, "utf8") : "", update!))
      expect(new Set(linesIn(copy))).toEqual(new Set(telling(update!).map(line => `/${name}: ${line}`)))
    } finally {
      rmSync(copy, { recursive: true })
    }
  })
  it("holds no key of a question", () => {
    for (const id of ids) {
      const text = readFileSync(join(folder, "data", `${id}.json`), "utf8")
      expect(text).not.toMatch(/"answer"\s*:/)
      for (const key of shipped(id).keys)
        if (key.why.length > 20) expect(text).not.toContain(key.why.slice(0, 40))
    }
  })
  it("names its own files by relative addresses, so that any folder of any server will do", () => {
    expect(readFileSync(join(folder, "index.html"), "utf8")).not.toMatch(/(src|href)="\//)
  })
})
