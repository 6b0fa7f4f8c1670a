import { spawnSync } from "node:child_process"
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { strToU8, zipSync } from "fflate"
import { afterAll, describe, expect, it } from "vitest"
import { collect } from "../../src/command/collect.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-collect-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const text = (item: ReturnType<typeof collect>[number]): string => {
  const read = item.read()
  return read instanceof Uint8Array ? new TextDecoder().decode(read) : `! ${read.code}`
}

/** The administrator may read everything; what others may not is seen as one of them. */
function asOrdinaryUser<T>(act: () => T): T {
  if (process.getuid?.() !== 0) return act()
  process.seteuid!(65534)
  try {
    return act()
  } finally {
    process.seteuid!(0)
  }
}

describe("answer files are gathered", () => {
  mkdirSync(join(folder, "class", "group b"), { recursive: true })
  writeFileSync(join(folder, "class", "b.json"), "B")
  writeFileSync(join(folder, "class", "notes.txt"), "not an answer")
  writeFileSync(join(folder, "class", "group b", "a.json"), "A")
  writeFileSync(
    join(folder, "late.zip"),
    zipSync({ "x/c.json": strToU8("C"), "readme.txt": strToU8("no"), "__MACOSX/._c.json": strToU8("no") }),
  )
  it("from folders with all below them, zips and files, in the order of their names", () => {
    const found = collect([join(folder, "late.zip"), join(folder, "class")])
    expect(found.map(item => [item.file, text(item)])).toEqual([
      ["b.json", "B"],
      ["group b/a.json", "A"],
      ["late.zip/x/c.json", "C"],
    ])
  })
  it("and what is missing is said, while the rest goes on", () => {
    const found = collect([join(folder, "nowhere"), join(folder, "class", "b.json")])
    expect(found.map(text).sort()).toEqual(["! file", "B"])
  })
  it("and a folder that may not be read is said, while the rest goes on", () => {
    const top = join(folder, "school")
    mkdirSync(join(top, "closed"), { recursive: true })
    writeFileSync(join(top, "open.json"), "O")
    writeFileSync(join(top, "closed", "secret.json"), "S")
    for (const path of [folder, top]) chmodSync(path, 0o755)
    chmodSync(join(top, "closed"), 0o000)
    const found = asOrdinaryUser(() => collect([top]).map(item => [item.file, item.read()]))
    chmodSync(join(top, "closed"), 0o755)
    expect(found).toEqual([
      ["closed", expect.objectContaining({ code: "file", text: "“closed” may not be read." })],
      ["open.json", Buffer.from("O")],
    ])
  })
  it("with .json.txt among them; what is no answer file is told, hidden files are not", () => {
    const top = join(folder, "mixed")
    mkdirSync(top)
    for (const name of ["u6.json.txt", "essay.docx", ".hidden", "._u6.json", "Thumbs.db"])
      writeFileSync(join(top, name), name)
    writeFileSync(
      join(top, "z.zip"),
      zipSync({ "a.json": strToU8("A"), "b.pdf": strToU8("no"), ".x": strToU8("") }),
    )
    const passed: string[] = []
    const found = collect([top], { passed: file => void passed.push(file) })
    expect(found.map(({ file }) => file)).toEqual(["u6.json.txt", "z.zip/a.json"])
    expect(passed.sort()).toEqual(["essay.docx", "z.zip/b.pdf"])
  })
  it("and what a marking wrote is not handed in", () => {
    const top = join(folder, "with results")
    for (const out of ["old", "new"]) {
      mkdirSync(join(top, out, "marking"), { recursive: true })
      for (const name of ["results.json", "statements.json"]) writeFileSync(join(top, out, name), "")
    }
    writeFileSync(join(top, "old", "marking", "verdicts.jsonl"), "")
    writeFileSync(join(top, "new", "marking", "share.json"), "")
    writeFileSync(join(top, "a.json"), "A")
    const names = (path: string, out: string) => collect([path], { out }).map(({ file }) => file)
    expect(names(top, join(top, "new"))).toEqual(["a.json"])
    // answers and results in one folder
    writeFileSync(join(top, "results.json"), "")
    expect(names(top, top)).toEqual(
      ["a.json", "new/results.json", "new/statements.json", "new/marking/share.json"].sort(),
    )
  })
  it("and a way into another program is never waited at", () => {
    const pipe = join(folder, "pipe.json")
    expect(spawnSync("mkfifo", [pipe]).status).toBe(0)
    expect(collect([pipe]).map(text)).toEqual(["! file"])
    rmSync(pipe)
  })
  it("and a name that is not UTF-8 is said in words", () => {
    const top = join(folder, "latin")
    mkdirSync(top)
    writeFileSync(Buffer.from(`${top}/M\xfcller.json`, "latin1"), "{}")
    const [item] = collect([top])
    expect(item!.read()).toMatchObject({ text: expect.stringMatching(/not written in UTF-8/) })
  })
  it("two of one name are told apart", () => {
    const found = collect([join(folder, "class", "b.json"), join(folder, "class", "b.json")])
    expect(found.map(item => item.file)).toEqual(["b.json", "b.json (2)"])
  })
})

describe("what would do harm is refused in words", () => {
  it("a file of 100 MB is not read", () => {
    writeFileSync(join(folder, "huge.json"), Buffer.alloc(100_000_000, 32))
    const [item] = collect([join(folder, "huge.json")])
    expect(item && text(item)).toBe("! answer-file-too-large")
  })
  it("a zip entry that unpacks past an answer file's size is dropped, the others stay", () => {
    writeFileSync(
      join(folder, "bomb.zip"),
      zipSync({ "a.json": strToU8("A"), "b.json": new Uint8Array(50_000_000) }),
    )
    const found = collect([join(folder, "bomb.zip")])
    expect(found.map(item => [item.file, text(item)])).toEqual([
      ["bomb.zip/a.json", "A"],
      ["bomb.zip/b.json", "! answer-file-too-large"],
    ])
  })
  it("a file that only calls itself a zip", () => {
    writeFileSync(join(folder, "fake.zip"), "PK no")
    writeFileSync(join(folder, "cut.zip"), zipSync({ "a.json": strToU8("A".repeat(9000)) }).subarray(0, 60))
    expect(collect([join(folder, "fake.zip")]).map(text)).toEqual(["! zip"])
    expect(collect([join(folder, "cut.zip")]).map(text)).toEqual(["! zip"])
  })
  it("but not a zip whose comment holds what an archive ends with", () => {
    const plain = zipSync({ "a.json": strToU8("A") })
    const end = plain.subarray(plain.length - 22)
    const comment = new Uint8Array([...strToU8("PK\u0005\u0006"), ...new Uint8Array(18), 33])
    const bytes = Uint8Array.from([...plain, ...comment])
    new DataView(bytes.buffer).setUint16(plain.length - end.length + 20, comment.length, true)
    writeFileSync(join(folder, "comment.zip"), bytes)
    expect(collect([join(folder, "comment.zip")]).map(text)).toEqual(["A"])
  })
})
