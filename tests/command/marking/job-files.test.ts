import { spawnSync } from "node:child_process"
import { mkdtempSync, readFileSync, rmSync } from "node:fs"
import { tmpdir } from "node:os"
import { join, resolve } from "node:path"
import { afterAll, describe, expect, it } from "vitest"
import { parse } from "yaml"
import { deltasheet } from "../../support/deltasheet.ts"
import { writeAnswers } from "./class.ts"

const folder = mkdtempSync(join(tmpdir(), "deltasheet-jobs-"))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const scripts = resolve("public/marking")
writeAnswers(join(folder, "answers"), 6)

/** Runs a shell command as one job would, in the folder of the class. */
function job(command: string, env: Readonly<Record<string, string>> = {}): void {
  const run = spawnSync("sh", ["-c", command], {
    cwd: folder,
    encoding: "utf8",
    env: {
      ...process.env,
      DELTASHEET: `"${process.execPath}" "${resolve("src/command/deltasheet.mjs")}"`.replaceAll('"', ""),
      WORKSHEET: resolve("worksheets/lamp-key.md"),
      HERE: scripts,
      ...env,
    },
  })
  expect(run.stderr).not.toMatch(/[^\s]/)
  expect(run.status).toBe(0)
}

const marks = (name: string): string => readFileSync(join(folder, name, "results.json"), "utf8")

describe("the job files for shares", () => {
  it("a job array and an indexed job give what one marking gives", async () => {
    await deltasheet(
      ...[
        "grade",
        "worksheets/lamp-key.md",
        "--answers",
        join(folder, "answers"),
        "--out",
        join(folder, "whole"),
      ],
    )
    for (const task of ["1", "2"])
      job(`sh ${scripts}/job-array.sh`, { TASK: task, SHARES: "2", OUT: "array" })
    job(`sh ${scripts}/merge.sh 2`, { OUT: "array", MARKS: "array-marks" })
    expect(marks("array-marks")).toBe(marks("whole"))

    const indexed = parse(readFileSync(join(scripts, "indexed-job.yaml"), "utf8"))
    const { completions, template } = indexed.spec
    const [shell, flag, command] = template.spec.containers[0].command as [string, string, string]
    expect([shell, flag]).toEqual(["sh", "-c"])
    expect(command).toContain(` ${completions}`)
    const two = command.replace(` ${completions}`, " 2").replace("share.sh", join(scripts, "share.sh"))
    for (const index of ["0", "1"]) job(two, { JOB_COMPLETION_INDEX: index, OUT: "indexed" })
    job(`sh ${scripts}/merge.sh 2`, { OUT: "indexed", MARKS: "indexed-marks" })
    expect(marks("indexed-marks")).toBe(marks("whole"))
  }, 120_000)
  it("the matrix runs as many shares as it joins", () => {
    const { jobs } = parse(readFileSync(join(scripts, "matrix.yaml"), "utf8"))
    const ks: number[] = jobs.share.strategy.matrix.k
    const commands = [...jobs.share.steps, ...jobs.merge.steps].map(({ run }) => String(run ?? ""))
    expect(ks).toEqual(ks.map((_, i) => i + 1))
    expect(commands).toContain(`sh public/marking/share.sh \${{ matrix.k }} ${ks.length}`)
    expect(commands).toContain(`sh public/marking/merge.sh ${ks.length}`)
    expect(jobs.merge.needs).toBe("share")
  })
})
