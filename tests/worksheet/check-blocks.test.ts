import { describe, expect, it } from "vitest"
import type { CheckRule } from "../../src/worksheet/index.ts"
import { checkSeries, parseWorksheet } from "../../src/worksheet/index.ts"

const sheet = (lines: string): string => `---
title: A sinker
id: sinker
version: 1
---

\`\`\`ts cell drop
const dt = 0.001
let r = vec3(0, 2, 0)
let p = vec3(0, 0, 0)
// blank update: Update.
p = p + vec3(0, -1, 0) * dt
// end blank
record(0, { a: { position: r, momentum: p, forces: { pull: p } }, energy: 1 })
\`\`\`

\`\`\`yaml check one
cell: drop
points: 1
${lines}
\`\`\`
`
const read = (lines: string) => {
  const result = parseWorksheet(sheet(lines), "sinker.md")
  return {
    rule: result.ok ? result.worksheet.sheet.checks[0]!.rule : null,
    says: result.ok ? result.worksheet.sheet.checks[0]!.says : "",
    problems: result.problems,
    result,
  }
}

describe("rules of a check as they are written", () => {
  const rules: [string, CheckRule][] = [
    [
      "law: momentum\nbody: a",
      { kind: "law", law: "momentum", bodies: ["a"], external: null, tolerance: 1e-6 },
    ],
    [
      "law: momentum\nbody: [a, b]\nexternal: []",
      { kind: "law", law: "momentum", bodies: ["a", "b"], external: [], tolerance: 1e-6 },
    ],
    [
      "law: angular momentum\nbody: a\nabout: [1, 2]\nexternal: a.forces.pull",
      {
        kind: "law",
        law: "angular momentum",
        bodies: ["a"],
        external: ["a.forces.pull"],
        about: [1, 2, 0],
        tolerance: 1e-6,
      },
    ],
    [
      "law: energy\nbody: a",
      { kind: "law", law: "energy", bodies: ["a"], energy: null, work: null, tolerance: 0.01 },
    ],
    [
      "law: energy\nbody: a\nenergy: energy\nwork: [a.forces.pull]\ntolerance: 0.02",
      {
        kind: "law",
        law: "energy",
        bodies: ["a"],
        energy: "energy",
        work: ["a.forces.pull"],
        tolerance: 0.02,
      },
    ],
    [
      "law: energy\nbody: a\nenergy: energy",
      { kind: "law", law: "energy", bodies: ["a"], energy: "energy", work: [], tolerance: 0.01 },
    ],
    [
      "happens: contact begins\nof: a.forces.pull\nat: 0.5\nwithin: 0.01\ncount: 2",
      { kind: "happens", event: "contact begins", of: "a.forces.pull", count: 2, at: 0.5, within: 0.01 },
    ],
    ["happens: rest\nof: a", { kind: "happens", event: "rest", of: "a", count: 1, at: null, within: null }],
    ["converges: a.position\norder: 2", { kind: "converges", series: "a.position", order: 2 }],
    ["units: agree", { kind: "units" }],
    ["uses: cross", { kind: "uses", names: ["cross"] }],
    ["avoids: [rungeKutta4, Math.atan2]", { kind: "avoids", names: ["rungeKutta4", "Math.atan2"] }],
    ["stepper: momentum first\nbody: a", { kind: "stepper", order: "momentum first", body: "a" }],
  ]
  for (const [lines, rule] of rules)
    it(lines.replaceAll("\n", ", "), () => {
      const { rule: got, says, problems } = read(lines)
      expect(problems).toEqual([])
      expect(got).toEqual(rule)
      expect(says).not.toBe("")
    })

  const faults: [string, string, RegExp][] = [
    ["law: momentum", "missing-key", /“body: NAME”/],
    ["law: energy\nbody: a\nabout: [0, 0]", "key-without-effect", /law: energy/],
    ["law: momentum\nbody: a\nwork: a.forces.pull", "key-without-effect", /law: momentum/],
    ["law: angular\nbody: a", "wrong-value", /angular momentum/],
    ["law: momentum\nbody: a\nexternal: pull", "wrong-value", /a force is named|key\.forces\.weight/i],
    ["happens: turning", "missing-key", /key\.position\.y/],
    ["happens: turning\nof: a.position.y\nat: end", "wrong-value", /seconds/],
    ["happens: rest\nof: a\ncount: 2", "wrong-value", /comes to rest once/],
    ["converges: a.position", "missing-key", /order: 1/],
    ["stepper: momentum first\nbody: [a, b]", "wrong-value", /one body/],
    ["avoids: []", "wrong-value", /empty/],
    ["units: agree\ncompare: a.position", "check-rule", /exactly one/],
  ]
  for (const [lines, code, words] of faults)
    it(`“${lines.replaceAll("\n", ", ")}” is answered: ${code}`, () => {
      const { problems } = read(lines)
      expect(problems.map(problem => problem.code)).toContain(code)
      const problem = problems.find(one => one.code === code)!
      expect(`${problem.text} ${problem.todo}`).toMatch(words)
      expect(problem.where?.line).toBeGreaterThan(14)
    })

  it("every series that a rule reads must be recorded, forces and energies too", () => {
    const recorded = new Map([
      [
        "drop",
        [
          { name: "a.position", kind: "vector" as const },
          { name: "a.momentum", kind: "vector" as const },
          { name: "a.forces.pull", kind: "vector" as const },
          { name: "energy", kind: "scalar" as const },
        ],
      ],
    ])
    const faults = (lines: string): string[] => {
      const { result } = read(lines)
      return result.ok ? checkSeries(result.worksheet, recorded).map(problem => problem.todo) : ["unreadable"]
    }
    expect(faults("law: angular momentum\nbody: a\nexternal: [a.forces.pull]")).toEqual([])
    expect(faults("law: energy\nbody: a\nenergy: energy")).toEqual([])
    expect(faults("happens: contact begins\nof: a.forces.pull")).toEqual([])
    expect(faults("happens: contact begins\nof: a.forces.pull.x")).toEqual([])
    expect(faults("happens: turning\nof: a.position")).toEqual([
      "Take one component: a.position.x, a.position.y or a.position.z.",
    ])
    expect(faults("law: momentum\nbody: a\nexternal: a.forces.pul")[0]).toContain("a.forces.pull")
    expect(faults("stepper: momentum first\nbody: b")[0]).toContain("a.momentum")
  })
})

describe("figures of a question", () => {
  const question = (lines: string) =>
    parseWorksheet(
      sheet("units: agree").replace(
        "```yaml check",
        `\`\`\`yaml question speed\nask: How fast?\n${lines}\n\`\`\`\n\n\`\`\`yaml check`,
      ),
      "sinker.md",
    )
  it("belong to a number", () => {
    const number = question("kind: number\nanswer: 9.8\nunit: m/s\nfigures: 2")
    expect(number.ok && number.worksheet.keys[0]!.figures).toBe(2)
    expect(question("kind: number\nanswer: 9.8\nunit: m/s").ok).toBe(true)
    const choice = question("kind: choice\nchoices: { a: x, b: y }\nanswer: a\nfigures: 2")
    expect(choice.problems.map(problem => problem.code)).toEqual(["question-answer"])
    expect(question("kind: number\nanswer: 9.8\nfigures: 0").problems.map(p => p.code)).toEqual([
      "wrong-value",
    ])
  })
})
