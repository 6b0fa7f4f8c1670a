import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it, vi } from "vitest"
import { writePieces } from "../../src/command/pieces.ts"
import type { ReportPiece } from "../../src/report/index.ts"

/** The most bytes that the system takes at once; it may stop short, and says so in what it returns. */
const taken = vi.hoisted(() => ({ atMost: Number.POSITIVE_INFINITY }))
vi.mock("node:fs", async original => {
  const fs = await original<typeof import("node:fs")>()
  const writeSync = (file: number, content: string | Uint8Array, offset = 0): number => {
    const bytes = Buffer.from(content as Uint8Array).subarray(offset)
    return fs.writeSync(file, bytes.subarray(0, taken.atMost))
  }
  return { ...fs, writeSync }
})

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
    const broken = pieces(
      [
        { name: "a.json", text: "[9" },
        { name: "students/anna-0123abcd.html", text: "Anna, marked again" },
        { name: "students/bram-4567cdef.html", text: "Bram" },
      ],
      new Error("the lights went out"),
    )
    await expect(writePieces(folder, broken)).rejects.toThrow("the lights went out")
    expect(read("a.json")).toBe("[1,2]")
    expect(read("students/anna-0123abcd.html")).toBe("Anna")
    expect(everything()).toEqual(["a.json", "deep/b.csv", "students/anna-0123abcd.html"])
    expect(readdirSync(folder).sort()).toEqual(["a.json", "deep", "students"])
  })
  it("leave what was there when a folder stands where one of them belongs", async () => {
    mkdirSync(join(folder, "report.html"))
    const both = pieces([
      { name: "a.json", text: "[9]" },
      { name: "report.html", text: "a report" },
    ])
    await expect(writePieces(folder, both)).rejects.toMatchObject({ code: "EISDIR" })
    expect(read("a.json")).toBe("[1,2]")
    expect(readdirSync(folder).sort()).toEqual(["a.json", "deep", "report.html", "students"])
    rmSync(join(folder, "report.html"), { recursive: true })
  })
  it("are whole where the system takes less at once than it was given", async () => {
    taken.atMost = 2
    const text = "a height of 8 m, 3 µs, “done”"
    await writePieces(folder, pieces([{ name: "a.json", text }]), { keepPages: true })
    taken.atMost = Number.POSITIVE_INFINITY
    expect(read("a.json")).toBe(text)
  })
  it("that a killed marking left unfinished are taken away by the next", async () => {
    mkdirSync(join(folder, ".deltasheet-unfinished", "students"), { recursive: true })
    writeFileSync(join(folder, ".deltasheet-unfinished", "students", "cleo.html"), "Cl")
    await writePieces(folder, pieces([{ name: "a.json", text: "[1,2]" }]), { keepPages: true })
    expect(readdirSync(folder).sort()).toEqual(["a.json", "deep", "students"])
  })
  it("take the place of an earlier class's pages, and leave files of others alone", async () => {
    writeFileSync(join(folder, "students", "notes.html"), "mine")
    writeFileSync(join(folder, "students", "anna-0123abcd.html.89abcdef.part"), "half")
    await writePieces(folder, pieces([{ name: "students/bram-4567cdef.html", text: "Bram" }]))
    expect(existsSync(join(folder, "students", "anna-0123abcd.html"))).toBe(false)
    expect(readdirSync(join(folder, "students")).sort()).toEqual(["bram-4567cdef.html", "notes.html"])
  })
})
