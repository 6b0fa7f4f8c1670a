import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { answerFile, shipped } from "../support/class.ts"
import { deltasheet } from "../support/deltasheet.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-run-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const at = (...names: string[]): string => join(folder, ...names)

const run = (...args: string[]) => deltasheet("run", "worksheets/lamp-key.md", ...args)
const update = "  p = p + Fnet * dt\n  r = r + (p / mass) * dt"
const formula = "  yFormula = height - 0.5 * 9.81 * t * t"
/** An answer file to lamp-key. */
function answers(name: string, given: Readonly<Record<string, string>>): string {
  writeFileSync(at(name), answerFile(shipped("lamp-key"), 7, given))
  return at(name)
}

describe("run", () => {
  it("tells what the author's answers record, as text and as JSON", async () => {
    const text = await run()
    expect(text).toMatchObject({ code: 0, err: "" })
    expect(text.out).toMatch(/^cell fall: [\d,]+ instants of key\.position, key\.momentum/)
    const json = await run("--json")
    expect(json).toMatchObject({ code: 0, err: "" })
    expect(JSON.parse(json.out)).toMatchObject({
      worksheet: { id: "lamp-key" },
      parameters: { height: 8 },
      notes: [],
      recordings: [
        { cell: "fall", columns: expect.arrayContaining(["t", "key.position.x", "key.position.y"]) },
      ],
      problem: null,
    })
  })
  it("writes the motion as CSV: the key falls from 5 m in √(2 · 5 m / 9.81 N/kg) = 1.010 s", async () => {
    const file = at("motion.csv")
    expect(await run("--set", "height=5", "--csv", file)).toMatchObject({ code: 0, err: "" })
    const [head, ...rows] = readFileSync(file, "utf8")
      .trimEnd()
      .split("\r\n")
      .map(line => line.split(","))
    const column = (name: string): number[] => rows.map(row => Number(row[head!.indexOf(name)]))
    expect(column("key.position.y")[0]).toBeCloseTo(5, 3)
    expect(column("key.position.y").at(-1)).toBeCloseTo(0, 1)
    expect(Math.abs(column("t").at(-1)! - 1.01)).toBeLessThan(0.003)
  })
  it.each([[[]], [["--json"]]])("into a folder says so and leaves nothing behind %s", async more => {
    mkdirSync(at("taken"), { recursive: true })
    const { code, out, err } = await run("--csv", at("taken"), ...more)
    expect(code).toBe(2)
    expect(more.length > 0 ? out : err).toContain("is a folder")
    expect(out + err).not.toContain("unforeseen")
    expect(readdirSync(folder).filter(name => name.includes("part"))).toEqual([])
  })
  it("says which blanks an answer file leaves out, and runs it all the same", async () => {
    const file = answers("half.json", { update })
    const text = await run("--answers", file)
    expect(text.err).toMatch(/nothing about the blank “formula”.*\n.*\(answer-missing-blank\)/)
    expect(text.out).toMatch(/^cell fall: /)
    const json = JSON.parse((await run("--answers", file, "--json")).out) as unknown
    expect(json).toMatchObject({ notes: [{ code: "answer-missing-blank" }] })
  })
  it("says nothing of an answer file that is whole", async () => {
    const whole = await run("--answers", answers("whole.json", { update, formula }))
    expect(whole).toMatchObject({ code: 0, err: "" })
  })
  it("says that a value lies outside the worksheet's range, and runs it all the same", async () => {
    const { code, out, err } = await run("--set", "height=30", "mass=0.2")
    expect(code).toBe(0)
    expect(err).toMatch(/“height” is 30 m; .* from 5 to 12 m\.\n.*\(outside-range\)/)
    expect(err).not.toContain("mass")
    expect(out).toMatch(/^cell fall: /)
    expect(await run("--set", "height=12")).toMatchObject({ code: 0, err: "" })
  })
  it.each([
    ["a parameter that is none", "heigth=5", /no parameter “heigth”.*\n.*“height”/],
    ["a value that is no number", "height=high", /“high” is not a number for “height”/],
  ])("refuses %s", async (_, setting, words) => {
    const { code, err } = await run("--set", setting)
    expect(code).toBe(2)
    expect(err).toMatch(words)
  })
  it("shows what a program prints, and lets none of it steer the terminal", async () => {
    const loud = `  if (t === 0) console.log("\\u001b[31mred", t)\n${update}`
    const { out } = await run("--answers", answers("loud.json", { update: loud, formula }))
    expect(out).toMatch(/^\\u001b\[31mred 0\n/)
  })
  it("ends with 1 and names the place where a program fails", async () => {
    const file = answers("fails.json", { update: "  p = p * Fnet", formula })
    const { code, err } = await run("--answers", file)
    expect(code).toBe(1)
    expect(err).toMatch(/cell “fall”, blank “update”, line 1.*\n[\s\S]*\(vector-times-vector\)/)
  })
})
