import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { writePieces } from "../../src/command/pieces.ts"
import type { ReportPiece } from "../../src/report/index.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-pieces-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

async function* pieces(list: readonly ReportPiece[], fault?: Error): AsyncGenerator<ReportPiece> {
  yield* list
  if (fault) throw fault
}
const read = (name: string): string => readFileSync(join(folder, name), "utf8")
const everything = (): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter(name => /\./.test(name))
    .map(name => name.replaceAll("\\", "/"))
    .sort()

describe("report files that come in pieces", () => {
  it("are joined by their names, in order", async () => {
    await writePieces(
      folder,
      pieces([
        { name: "a.json", text: "[1" },
        { name: "students/anna-0123abcd.html", text: "Anna" },
        { name: "deep/b.csv", text: "b" },
        { name: "a.json", text: ",2]" },
      ]),
    )
    expect(read("a.json")).toBe("[1,2]")
    expect(everything()).toEqual(["a.json", "deep/b.csv", "students/anna-0123abcd.html"])
  })
  it("leave what was there when the work breaks off, and nothing half written", async () => {
    const broken = pieces([{ name: "a.json", text: "[9" }], new Error("the lights went out"))
    await expect(writePieces(folder, broken)).rejects.toThrow("the lights went out")
    expect(read("a.json")).toBe("[1,2]")
    expect(everything().filter(name => name.includes("part"))).toEqual([])
  })
  it("take the place of an earlier class's pages, and leave files of others alone", async () => {
    writeFileSync(join(folder, "students", "notes.html"), "mine")
    writeFileSync(join(folder, "students", "anna-0123abcd.html.89abcdef.part"), "half")
    await writePieces(folder, pieces([{ name: "students/bram-4567cdef.html", text: "Bram" }]))
    expect(existsSync(join(folder, "students", "anna-0123abcd.html"))).toBe(false)
    expect(readdirSync(join(folder, "students")).sort()).toEqual(["bram-4567cdef.html", "notes.html"])
  })
})
