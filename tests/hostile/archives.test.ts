import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { strToU8 } from "fflate"
import { afterAll, describe, expect, it } from "vitest"
import { collect } from "../../src/command/collect.ts"
import { archives } from "./corpus/archives.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-archives-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const honest = (n: number): Uint8Array => strToU8(JSON.stringify({ honest: n }))
mkdirSync(join(folder, "class"))
for (const [i, { bytes }] of archives.entries())
  writeFileSync(join(folder, "class", `z${i}.zip`), bytes(honest(i)))
for (let n = 100; n < 150; n++) writeFileSync(join(folder, "class", `${n}.json`), honest(n))

/** Of each file its content, or what is said of it. */
const gather = (): [file: string, read: string][] =>
  collect([join(folder, "class")]).map(item => {
    const read = item.read()
    if (!(read instanceof Uint8Array)) return [item.file, `! ${read.text}`]
    const text = new TextDecoder().decode(read)
    return [item.file, text.startsWith('{"honest"') ? text : "! not JSON"]
  })

describe("archives that mean harm", () => {
  const found = gather()
  it.each(archives.map((archive, i) => [archive.name, archive, i] as const))(
    "%s",
    (_, { honestMarked, said }, i) => {
      const own = found.filter(([file]) => file === `z${i}.zip` || file.startsWith(`z${i}.zip/`))
      expect(own.some(([, read]) => read === `{"honest":${i}}`)).toBe(honestMarked)
      const others = own.filter(([, read]) => read.startsWith("! "))
      if (said !== null) expect(others.map(([, read]) => read).join("\n")).toMatch(said)
      for (const [file, read] of own) {
        expect(file.length).toBeLessThan(250)
        expect(file).not.toMatch(/\.\.\/|\/\/|\\|\p{Cc}|\p{Cf}|:/u)
        expect(read.length).toBeLessThan(600)
      }
    },
  )
  it("leave the fifty honest files among them as they are, twice in a row, and write nothing", () => {
    const plain = found.filter(([file]) => /^\d+\.json$/.test(file))
    expect(plain.map(([, read]) => read)).toEqual(
      Array.from({ length: 50 }, (_, i) => `{"honest":${100 + i}}`),
    )
    expect(gather()).toEqual(found)
    expect(readdirSync(folder)).toEqual(["class"])
    expect(readdirSync(join(folder, "class"))).toHaveLength(50 + archives.length)
  })
})
