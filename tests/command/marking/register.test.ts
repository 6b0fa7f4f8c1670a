import { appendFileSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { openLines } from "../../../src/command/marking/lines.ts"
import { openRegister } from "../../../src/command/marking/register.ts"
import { readVerdict, type Verdict } from "../../../src/command/marking/verdict.ts"
import { shipped } from "../../support/class.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-register-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
let files = 0
const newFile = (): string => join(folder, `register-${++files}`)

const { sheet } = shipped("lamp-key")
const key = (n: number): string => n.toString(16).padStart(64, "0")
const verdict = (met: boolean): Verdict => {
  const checks = sheet.checks.map(({ name, points }) => ({
    name,
    verdict: met ? ("met" as const) : ("not met" as const),
    points: met ? points : 0,
    outOf: points,
    departsAt: met ? null : 0.25,
    slip: null,
    message: "Words with “quotes” and an é.",
  }))
  const points = checks.reduce((sum, check) => sum + check.points, 0)
  return {
    judgement: { points, outOf: 7, checks, problems: [] },
    motions: [
      { cell: "fall", ofTime: true, times: [0, 1], curves: [{ path: "key.position.y", values: [8, 3] }] },
    ],
  }
}
const open = (file: string) => openRegister(file, written => readVerdict(sheet, written))

describe("verdicts on disk", () => {
  it("are found again by another process, and only under their own key", () => {
    const file = newFile()
    const first = open(file)
    first.add(key(1), verdict(true))
    first.add(key(2), verdict(false))
    first.close()
    const second = open(file)
    expect(second.find(key(1))).toEqual(verdict(true))
    expect(second.find(key(2))).toEqual(verdict(false))
    expect(second.find(key(3))).toBeNull()
    expect(second.damaged()).toBe(0)
    second.close()
  })

  it("are whole or not there, wherever a killed process broke off", () => {
    const file = newFile()
    const first = open(file)
    first.add(key(1), verdict(true))
    const whole = readFileSync(file).length
    first.add(key(2), verdict(false))
    first.close()
    const all = readFileSync(file)
    for (let length = all.length - 1; length > whole; length -= 97) {
      writeFileSync(file, all)
      truncateSync(file, length)
      const again = open(file)
      expect(again.find(key(1))).toEqual(verdict(true))
      expect(again.find(key(2))).toBeNull()
      again.add(key(2), verdict(false))
      again.close()
      expect(readFileSync(file).equals(all)).toBe(true)
    }
  })

  const line = (file: string): string => readFileSync(file, "utf8")
  it.each([
    ["a point more, by hand", (text: string) => text.replace('"points":2', '"points":3')],
    ["one letter changed", (text: string) => text.replace("Words", "Wards")],
    ["moved to another key", (text: string) => text.replace(key(1), key(9))],
    ["not a line of ours", () => `dear program, ${key(1)} has full points\n`],
    ["a line cut in the middle and mended with an end", (text: string) => `${text.slice(0, 300)}\n`],
    ["bytes that are no text", () => "\u0000\ufffd\n"],
  ])("are noticed and left aside when they are not what was written: %s", (_, damage) => {
    const file = newFile()
    const first = open(file)
    first.add(key(1), verdict(true))
    first.close()
    writeFileSync(file, damage(line(file)))
    const again = open(file)
    expect(again.find(key(1))).toBeNull()
    expect(again.find(key(9))).toBeNull()
    expect(again.damaged()).toBeGreaterThan(0)
    // what is judged again takes its place
    again.add(key(1), verdict(false))
    expect(again.find(key(1))).toEqual(verdict(false))
    again.close()
  })

  it("of another worksheet, with a checksum that is right, are not taken", () => {
    const foreign = { ...verdict(true), judgement: { ...verdict(true).judgement, points: 6 } }
    const generous = structuredClone(verdict(true))
    Object.assign(generous.judgement.checks[0]!, { points: 100 })
    Object.assign(generous.judgement, { points: 105 })
    const other = structuredClone(verdict(true))
    Object.assign(other.judgement.checks[0]!, { name: "another" })
    for (const written of [foreign, generous, other, {}, null, { judgement: {} }])
      expect(readVerdict(sheet, written)).toBeNull()
    expect(readVerdict(sheet, verdict(true))).not.toBeNull()
  })
})

describe("a file of lines", () => {
  it("keeps what it has when the disk is full, and takes lines again when there is room", () => {
    // /dev/full answers every write with the system's own “no space left on device”
    const full = openLines("/dev/full")
    expect(() => full.append("a line")).toThrow(/ENOSPC/)
    full.close()
    const file = newFile()
    appendFileSync(file, "one\ntwo\nthr")
    const seen: string[] = []
    const lines = openLines(file, text => seen.push(text))
    expect(seen).toEqual(["one", "two"])
    expect(lines.read(lines.append("three, with é"))).toBe("three, with é")
    lines.close()
    expect(readFileSync(file, "utf8")).toBe("one\ntwo\nthree, with é\n")
  })
  it("takes a line longer than any of its own for none, and goes on behind it", () => {
    const file = newFile()
    writeFileSync(file, "one\n")
    for (let i = 0; i < 36; i++) appendFileSync(file, Buffer.alloc(1_000_000, 97))
    appendFileSync(file, "\ntwo\n")
    const seen: [string, number][] = []
    const lines = openLines(file, (text, { at }) => seen.push([text, at]))
    expect(seen).toEqual([
      ["one", 0],
      ["", 4],
      ["two", 36_000_005],
    ])
    lines.close()
    truncateSync(file, 36_000_000)
    openLines(file).close()
    expect(readFileSync(file, "utf8")).toBe("one\n")
  })
})
