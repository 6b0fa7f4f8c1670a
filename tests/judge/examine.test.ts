import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { examineWorksheet, type JudgeTools } from "../../src/judge/index.ts"
import { createJudgeTools } from "../judging/tools.ts"
import { readSheet, winch } from "./winch.ts"

let tools: JudgeTools & { close(): Promise<void> }
beforeAll(async () => {
  tools = await createJudgeTools(2)
})
afterAll(() => tools.close())
const examine = (text: string) => examineWorksheet(readSheet(text), tools)

describe("a check must tell right answers from slips", () => {
  /** Long steps, and a force so weak that leaving it out moves the crate by little; the tolerance is set between. */
  const faint = (force: number, tolerance: string) =>
    winch
      .replace("= 0.005", "= 0.05")
      .replace("- 15 * p / mass", `- 150 * p / mass + vec3(${force}, 0, 0)`)
      .replace("compare: crate.position", `compare: crate.position\ntolerance: ${tolerance}`)
  it("refuses one whose nearest slip lies hardly further off than a right answer, and says how far both are", async () => {
    const found = await examine(faint(0.32, "0.0035"))
    const check = found.checks.find(one => one.name === "hauls")!
    console.log(
      check,
      found.findings.map(f => f.code + f.text),
    )
    expect(check.nearestAccepted!.ratio).toBeLessThan(1)
    expect(check.nearestSlip!.ratio).toBeGreaterThan(1)
    expect(found.sound).toBe(false)
    const finding = found.findings.find(problem => problem.code === "check-cannot-tell")!
    expect(finding.text).toContain(check.nearestAccepted!.name)
    expect(finding.text).toContain(check.nearestSlip!.name)
  })
  it("leaves one alone whose slips are far off", async () => {
    const found = await examine(winch)
    expect(found.findings).toEqual([])
  })
})

describe("a check must be failed by some slip", () => {
  const sideways = `
\`\`\`yaml check sideways
cell: haul
stays: crate.position.y
above: -1
points: 1
\`\`\`
`
  it("points out one that none of them fails, beside others that refuse them all", async () => {
    const found = await examine(winch + sideways)
    expect(found.sound).toBe(false)
    const never = found.findings.filter(problem => problem.code === "check-never-fails")
    expect(never.map(problem => problem.text)).toEqual([expect.stringContaining("“sideways”")])
    expect(never[0]!.text).toMatch(/None of the \d+ slips/)
  })
  it("says nothing of one without points, nor of one that looks at the lines", async () => {
    const lines = `
\`\`\`yaml check own-step
cell: haul
avoids: [rungeKutta4, velocityVerlet]
points: 1
\`\`\`
`
    const found = await examine(winch + sideways.replace("points: 1", "points: 0") + lines)
    expect(found.findings).toEqual([])
    // what a rule without a tolerance allows
    for (const name of ["sideways", "own-step"])
      expect(found.checks.find(check => check.name === name)!.tolerance).toBe("exact")
  })
})
