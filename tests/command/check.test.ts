import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { plainRatio } from "../../src/command/check.ts"
import { deltasheet } from "../support/deltasheet.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-check-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The lamp-key sheet without its picture, with one line changed. */
const spoilt = (name: string, from: string, to: string): string => {
  const text = readFileSync("worksheets/lamp-key.md", "utf8").replace(/!\[[^\]]*\]\([^)]*\)/, "")
  const changed = text.replace(from, to)
  expect(changed).not.toBe(text)
  const file = join(folder, `${name}.md`)
  writeFileSync(file, changed)
  return file
}
const check = async (file: string) => {
  const run = await deltasheet("check", file, "--json")
  return {
    ...run,
    reports: JSON.parse(run.out) as {
      sound: boolean
      findings: { code: string; where?: { line: number } }[]
    }[],
  }
}

describe("check", () => {
  it("writes how far a motion is from its bound as people do", () => {
    expect([0.123, 3.04, 301.2, 12_345, 1e6, 3e9, Number.POSITIVE_INFINITY].map(plainRatio)).toEqual([
      "0.12",
      "3",
      "300",
      "12,000",
      "a million",
      "more than a million",
      "endlessly many",
    ])
  })
  it("says in a line that every slip was refused and named", async () => {
    const { out } = await deltasheet("check", "worksheets/lamp-key.md")
    expect(out).toMatch(/\d+ slips tried: all refused and named rightly\./)
    expect(out).not.toMatch(/\de\d/)
  }, 120_000)
  it("finds a shipped worksheet sound, and prints what it holds", async () => {
    const { code, reports } = await check("worksheets/lamp-key.md")
    expect(code).toBe(0)
    expect(reports).toMatchObject([
      {
        id: "lamp-key",
        version: 1,
        digest: expect.stringMatching(/^sha256:[0-9a-f]{64}$/),
        cells: ["fall"],
        blanks: [{ name: "update" }, { name: "formula" }],
        checks: [{ name: "impulse", points: 2 }, { name: "follows" }, { name: "formula" }],
        findings: [],
        sound: true,
      },
    ])
  }, 120_000)
  it("ends with 1 and the line for a misspelt key", async () => {
    const file = spoilt("key", "compare: key.position", "comapre: key.position")
    const { code, reports } = await check(file)
    const line = readFileSync(file, "utf8").split("comapre")[0]!.split("\n").length
    expect(code).toBe(1)
    expect(reports[0]?.sound).toBe(false)
    expect(reports[0]?.findings).toContainEqual(
      expect.objectContaining({ code: "unknown-key", where: expect.objectContaining({ line }) }),
    )
  }, 120_000)
  it("ends with 1 for a check of a series that nobody records", async () => {
    const { code, reports } = await check(spoilt("series", "compare: key.position", "compare: key.postion"))
    expect(code).toBe(1)
    expect(reports[0]?.findings).toMatchObject([
      { code: "unknown-series", todo: "Did you mean “key.position”?" },
    ])
  }, 120_000)
  it("ends with 1 when the author's own answer has units that do not fit", async () => {
    const { code, reports } = await check(spoilt("units", "p = p + Fnet * dt", "p = p + Fnet"))
    expect(code).toBe(1)
    expect(reports[0]?.findings.map(finding => finding.code)).toContain("unlike-sum")
  }, 120_000)
  it("ends with 2 for a file that is not there", async () => {
    const { code, reports } = await check(join(folder, "nowhere.md"))
    expect(code).toBe(2)
    expect(reports[0]?.findings).toMatchObject([{ code: "file" }])
  }, 120_000)
})
