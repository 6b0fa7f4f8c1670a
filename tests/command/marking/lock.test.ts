import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it, vi } from "vitest"
import { takeLock } from "../../../src/command/marking/lock.ts"

/** What another process does in the moment between a file's coming and its content. */
const between = vi.hoisted(() => ({ act: (): void => {} }))
vi.mock("node:fs", async original => {
  const fs = await original<typeof import("node:fs")>()
  return {
    ...fs,
    writeFileSync(file: string, text: string, options?: { flag?: string }) {
      fs.writeFileSync(file, "", options)
      const { act } = between
      between.act = () => {}
      act()
      fs.writeFileSync(file, text)
    },
  }
})

const folder = mkdtempSync(join(tmpdir(), "deltasheet-lock-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const file = join(folder, "lock")

describe("a folder that is taken for one process alone", () => {
  it("is not taken by another in the moment in which the first one writes its name", () => {
    let other: ReturnType<typeof takeLock> | null = null
    between.act = () => (other = takeLock(file))
    const first = takeLock(file)
    const held = [first, other!].filter(lock => "release" in lock)
    expect(held).toHaveLength(1)
    expect(JSON.parse(readFileSync(file, "utf8"))).toMatchObject({ pid: process.pid })
    for (const lock of held) if ("release" in lock) lock.release()
    expect(readdirSync(folder)).toEqual([])
  })
  it("is taken over from a process that is no more, and nothing is left beside", () => {
    writeFileSync(file, '{"host":')
    const lock = takeLock(file)
    expect(lock).toHaveProperty("release")
    expect(takeLock(file)).toMatchObject({ code: "folder-in-use" })
    expect(readdirSync(folder)).toEqual(["lock"])
    if ("release" in lock) lock.release()
  })
})
