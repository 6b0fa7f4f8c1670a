import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { compile } from "../../src/cell/index.ts"
import { createNodeStripper } from "../../src/cell/strip.node.ts"
import { collect } from "../../src/command/collect.ts"
import { openClassFile } from "../../src/command/marking/class-file.ts"
import { markAll, openVerdicts, type Way } from "../../src/command/marking/mark-all.ts"
import type { Tools } from "../../src/command/tools.ts"
import { createReferences } from "../../src/judge/index.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { answerFile, shipped } from "../support/class.ts"
import { forging } from "./corpus/forging.ts"
import { loops } from "./corpus/loops.ts"
import { floods } from "./corpus/memory.ts"
import { names } from "./corpus/names.ts"
import { poisoning } from "./corpus/poisoning.ts"
import { reaching } from "./corpus/reaching.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-hostile-"))
const worksheet = shipped("lamp-key")
const stripper = await createNodeStripper()
const runner = createNodeRunner({ workers: 2 })
afterAll(async () => {
  await runner.close()
  rmSync(folder, { recursive: true, force: true })
})

/** The marker's own tools, with limits small enough for a test to wait for. The longest honest run takes 41 000 turns. */
const tools: Tools = {
  workers: 2,
  compile: program => compile(program, stripper),
  run: request =>
    runner.run({
      ...request,
      limits: { turns: 100_000, recorded: 2_000_000, output: 5_000, milliseconds: 1_500 },
    }),
  close: async () => {},
}

const right = "p = p + Fnet * dt\nr = r + (p / mass) * dt"
const formula = "yFormula = height - 0.5 * 9.81 * t * t"
const hostile = [loops, floods, reaching, poisoning, forging, names]
  .flat()
  .filter(({ cell }) => cell !== undefined)
mkdirSync(join(folder, "class"))
for (let n = 0; n < 50; n++)
  writeFileSync(
    join(folder, "class", `${String(3 * n).padStart(3, "0")}-honest.json`),
    answerFile(worksheet, n, { update: `// honest ${n}\n${right}`, formula }),
  )
for (const [n, { cell }] of hostile.entries())
  writeFileSync(
    join(folder, "class", `${String(n).padStart(3, "0")}-hostile.json`),
    answerFile(worksheet, 1000 + n, { update: cell!, formula }, {}),
  )

async function mark(out: string) {
  const handed = collect([join(folder, "class")])
  mkdirSync(join(folder, out))
  const register = openVerdicts(join(folder, out, "verdicts.jsonl"), [worksheet])
  const classFile = openClassFile(join(folder, out, "files.jsonl"), { fresh: true })
  const ways: Way[] = []
  await markAll({
    worksheets: [worksheet],
    handed,
    places: [...handed.keys()],
    standing: new Map(),
    tools,
    references: createReferences(),
    program: "as it is",
    register,
    classFile,
    stopped: () => false,
    marked: way => ways.push(way),
  })
  const all = [...classFile.all()].map(({ result }) => result)
  register.close()
  classFile.close()
  return { all, ways }
}

describe(`${hostile.length} hostile answers with 50 honest ones among them, marked twice`, () => {
  it("each honest one has full points, no hostile one has any for its motion, and the second time is as the first", async () => {
    const first = await mark("first")
    expect(first.ways).toHaveLength(hostile.length + 50)
    const honest = first.all.filter(({ file }) => file.endsWith("honest.json"))
    expect(honest.map(({ points }) => points)).toEqual(honest.map(({ outOf }) => outOf))
    const moved = first.all
      .filter(({ file }) => file.endsWith("hostile.json"))
      .filter(({ checks }) => checks.some(({ name, points }) => name === "follows" && points > 0))
    expect(moved.map(({ file }) => hostile[Number(file.slice(0, 3))]!.name)).toEqual([])
    for (const { file, problems, checks } of first.all)
      for (const words of [...problems.map(({ text }) => text), ...checks.map(({ message }) => message)])
        expect(words, file).not.toMatch(/\n\s+at |node:|\/src\/|SES_|\[object|undefined,/)
    const second = await mark("second")
    const verdicts = ({ all }: typeof first) =>
      all.map(({ file, points, checks }) => [file, points, checks.map(({ verdict }) => verdict)])
    expect(verdicts(second)).toEqual(verdicts(first))
    expect(second.all.filter(({ file }) => file.endsWith("honest.json"))).toEqual(honest)
  }, 300_000)
})
