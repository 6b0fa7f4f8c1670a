import { existsSync, mkdtempSync, rmSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { fileProblem, makeFolder } from "../../src/command/files.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-files-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe("a folder for results", () => {
  it("is made with those above it, and may be there already", () => {
    const deep = join(folder, "a", "b", "c")
    makeFolder(deep)
    makeFolder(deep)
    expect(existsSync(deep)).toBe(true)
  })
  it("is given up where the system makes none", () => {
    if (existsSync("/proc/self")) expect(() => makeFolder("/proc/none/deeper")).toThrow(/ENOENT/)
  })
  it("that is barred is not called unreadable", () => {
    expect(fileProblem("out", { code: "EACCES" }, "write").text).toBe("“out” may not be written to.")
    expect(fileProblem("out", { code: "EACCES" }).text).toBe("“out” may not be read.")
  })
})
