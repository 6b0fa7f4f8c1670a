import { spawnSync } from "node:child_process"
import { createHash } from "node:crypto"
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { deltasheet } from "../../support/deltasheet.ts"
import { begin, until, writeAnswers } from "./class.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-interrupted-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const at = (...names: string[]): string => join(folder, ...names)
const gradeInto = (out: string, ...more: string[]): string[] => [
  "grade",
  "worksheets/lamp-key.md",
  "--answers",
  at("class"),
  "--out",
  at(out),
  ...more,
]
const results = (out: string): string => readFileSync(at(out, "results.json"), "utf8")
const verdicts = (out: string): string => at(out, "marking", "verdicts.jsonl")
const marked = (out: string): number =>
  existsSync(verdicts(out)) ? readFileSync(verdicts(out), "latin1").split("\n").length - 1 : 0
const filesBelow = (out: string): string[] =>
  readdirSync(at(out), { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && entry.name !== "verdicts.jsonl")
    .map(entry => join(entry.parentPath, entry.name).slice(at(out).length))
    .sort()

/** What stands in a folder of results, as a digest for each file. */
const contents = (out: string): Map<string, string> =>
  new Map(
    filesBelow(out).map(name => [
      name,
      createHash("sha256")
        .update(readFileSync(at(out, name)))
        .digest("hex"),
    ]),
  )
/** Marks where no file may grow past some bytes: the system's own refusal, as a full disk gives it. */
const gradeWithin = (bytes: number, out: string, from = "class") =>
  spawnSync(
    "sh",
    [
      "-c",
      `ulimit -f ${Math.ceil(bytes / 512)}; exec "$0" "$@"`,
      process.execPath,
      "src/command/deltasheet.mjs",
      ...gradeInto(out).map(word => (word === at("class") ? at(from) : word)),
    ],
    { encoding: "utf8" },
  )

/** Enough that a marking is still under way when it has been seen to have come as far as half. */
const size = 120
beforeAll(async () => {
  writeAnswers(at("class"), size)
  await deltasheet(...gradeInto("whole"))
}, 120_000)

describe("a marking that was killed", () => {
  it("loses at most what was in flight, leaves no half file, and goes on to the same bytes", async () => {
    // after the first verdict, and later on; the moment within a verdict is chance
    for (const [i, after] of [1, 25, 60].entries()) {
      const run = begin(gradeInto(`killed${i}`))
      await until(() => marked(`killed${i}`) >= after)
      run.child.kill("SIGKILL")
      await run.ended
      const kept = marked(`killed${i}`)
      expect(kept).toBeGreaterThanOrEqual(after)
      expect(filesBelow(`killed${i}`).filter(name => !name.startsWith("/marking/"))).toEqual([])
      const again = await deltasheet(...gradeInto(`killed${i}`))
      expect(again.out).toMatch(new RegExp(`${kept} files? known from before`))
      expect(results(`killed${i}`)).toBe(results("whole"))
      expect(filesBelow(`killed${i}`)).toEqual(filesBelow("whole"))
    }
  }, 120_000)
})

describe("a marking that is stopped by hand", () => {
  it("says how far it came and how to go on, ends with 130, and can be gone on with", async () => {
    const run = begin(gradeInto("stopped"))
    await until(() => marked("stopped") >= 2)
    run.child.kill("SIGINT")
    const { code, err } = await run.ended
    expect(code).toBe(130)
    expect(err).toMatch(new RegExp(`Stopped: \\d+ of ${size} files marked.*kept in`))
    expect(err).toMatch(/Run the same command again/)
    expect(existsSync(at("stopped", "results.json"))).toBe(false)
    expect(existsSync(at("stopped", "marking", "lock"))).toBe(false)
    expect((await deltasheet(...gradeInto("stopped"))).code).toBe(0)
    expect(results("stopped")).toBe(results("whole"))
  }, 60_000)
  it("says the same as JSON where that is asked for", async () => {
    const run = begin(gradeInto("stopped-json", "--json"))
    await until(() => marked("stopped-json") >= 2)
    run.child.kill("SIGINT")
    const { code, out } = await run.ended
    expect(code).toBe(130)
    expect(JSON.parse(out)).toMatchObject({ problems: [{ code: "marking-stopped" }] })
  }, 60_000)
})

describe("two markings into one folder", () => {
  it("the second is refused in words and changes nothing; what a killed one left is no hindrance", async () => {
    const first = begin(gradeInto("twice"))
    await until(() => existsSync(at("twice", "marking", "lock")))
    // held fast, so that it is at work for as long as the second one looks
    first.child.kill("SIGSTOP")
    const second = await deltasheet(...gradeInto("twice"))
    first.child.kill("SIGCONT")
    expect(second.code).toBe(2)
    expect(second.err).toMatch(/Another marking is at work.*\n.*folder-in-use/)
    expect((await first.ended).code).toBe(0)
    expect(results("twice")).toBe(results("whole"))
    writeFileSync(at("twice", "marking", "lock"), '{"host":')
    expect((await deltasheet(...gradeInto("twice"))).code).toBe(0)
  }, 60_000)
})

describe("marking again", () => {
  it("after one new file judges that one alone; damaged memories are noticed and judged anew", async () => {
    const lines = readFileSync(verdicts("whole"), "utf8").split("\n")
    const changed = lines.map((line, i) => (i === 3 ? line.replace('"points":', '"points":1') : line))
    mkdirSync(at("again", "marking"), { recursive: true })
    writeFileSync(verdicts("again"), changed.join("\n"))
    appendFileSync(verdicts("again"), "something else\n")
    const again = await deltasheet(...gradeInto("again"))
    expect(again.out).toMatch(new RegExp(`${size - 1} files known from before.*; 1 judged now`))
    expect(again.out).toMatch(/2 remembered verdicts damaged/)
    expect(results("again")).toBe(results("whole"))
    writeAnswers(at("more"), 1, 500)
    const more = await deltasheet(...gradeInto("again", "--answers", at("more")))
    expect(more.out).toMatch(new RegExp(`${size} files known from before.*; 1 judged now`))
  }, 60_000)
  it("to a full disk says so and loses nothing that was marked", async () => {
    const run = gradeWithin(100 * 512, "full")
    expect(run.status).toBe(2)
    expect(run.stderr).toMatch(/could not be used|disk is full/)
    expect(run.stderr).toMatch(/What was marked is kept/)
    expect(run.stderr).not.toMatch(/\n\s+at /)
    expect(statSync(verdicts("full")).size).toBeGreaterThan(1000)
    const kept = marked("full")
    const again = await deltasheet(...gradeInto("full"))
    expect(again.out).toMatch(new RegExp(`${kept} files known from before`))
    expect(results("full")).toBe(results("whole"))
  }, 60_000)
  it("that fills up while results are written leaves every file of the earlier marking", () => {
    cpSync(at("whole"), at("filled"), { recursive: true })
    const before = contents("filled")
    // every student changed a comment: each page and each list of results becomes another
    mkdirSync(at("changed"))
    for (const name of readdirSync(at("class")))
      writeFileSync(
        at("changed", name),
        readFileSync(at("class", name), "utf8").replace("// try", "// tried"),
      )
    rmSync(verdicts("filled"))
    // the last file to be written is the largest: the others and the students' pages have been made by then
    const room = Math.round(0.9 * statSync(at("whole", "report.html")).size)
    const run = gradeWithin(room, "filled", "changed")
    expect(run.status).toBe(2)
    expect(run.stderr).toMatch(/could not be used|disk is full/)
    expect(contents("filled")).toEqual(before)
    // with more room the same command writes what would have been there
    expect(gradeWithin(2 * room, "filled", "changed").status).toBe(0)
    const after = contents("filled")
    expect([...after.keys()]).toEqual([...before.keys()])
    expect(after.get("/report.html")).not.toBe(before.get("/report.html"))
    const pages = [...before.keys()].filter(name => name.startsWith("/students/"))
    expect(pages).toHaveLength(size)
    for (const name of pages) expect(after.get(name), name).not.toBe(before.get(name))
  }, 60_000)
})

describe("shares of a class", () => {
  it("joined give the bytes of the undivided marking, reports included", async () => {
    const shares = [1, 2, 3].map(k => `share${k}`)
    for (const [i, out] of shares.entries()) await deltasheet(...gradeInto(out, "--share", `${i + 1}/3`))
    const merged = await deltasheet("grade", "merge", ...shares.map(out => at(out)), "--out", at("merged"))
    expect(merged.code).toBe(0)
    expect(filesBelow("merged")).toEqual(filesBelow("whole"))
    for (const name of filesBelow("whole"))
      expect(readFileSync(at("merged", name)).equals(readFileSync(at("whole", name))), name).toBe(true)
    const refused = async (...outs: string[]): Promise<string> => {
      const run = await deltasheet("grade", "merge", ...outs.map(out => at(out)), "--out", at("none"))
      expect(run.code).toBe(2)
      return run.err
    }
    expect(await refused("share1", "share3")).toMatch(/Share 2 of 3 is missing.*\n.*merge-incomplete/)
    expect(await refused("share1", "share2", "share2", "share3")).toMatch(
      /was named twice.*\n.*merge-doubled/,
    )
    expect(await refused("share1", "share2", "whole")).toMatch(/no finished share.*\n.*merge-incomplete/)
    const file = at("share3", "marking", "files.jsonl")
    const lines = readFileSync(file, "utf8").split("\n")
    writeFileSync(file, lines.slice(1).join("\n"))
    expect(await refused(...shares)).toMatch(/where there should be.*\n.*merge-incomplete/)
    writeFileSync(file, lines.join("\n").replace('"points":', '"points":9'))
    expect(await refused(...shares)).toMatch(
      /share3” has 1 result that was damaged or changed.*\n.*merge-incomplete/,
    )
    writeFileSync(file, [...lines.slice(0, -1), lines[0], ""].join("\n"))
    expect(await refused(...shares)).toMatch(/have one already.*\n.*merge-doubled/)
    await deltasheet(...gradeInto("share3", "--share", "3/3", "--answers", at("more")))
    expect(await refused(...shares)).toMatch(/other answer files.*\n.*merge-unlike/)
    expect(existsSync(at("none"))).toBe(false)
  }, 120_000)
})
