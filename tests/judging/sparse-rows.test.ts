import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { createReferences, markAnswer } from "../../src/judge/index.ts"
import { parseWorksheet } from "../../src/worksheet/index.ts"
import { fileOf } from "./measure.ts"
import { createJudgeTools } from "./tools.ts"

describe("a motion that is straight for long, so that its reference keeps few rows", () => {
  it("is refused when it ends a tenth of the way off, though it runs steeply", async () => {
    const text = readFileSync("worksheets/fender.md", "utf8")
    const asPosition = text.replace("compare: boat.momentum", "compare: boat.position")
    const result = parseWorksheet(asPosition, "fender.md")
    if (!result.ok) throw new Error(JSON.stringify(result.problems))
    const { worksheet } = result
    const changed = worksheet.sheet.checks.filter(
      check => check.rule.kind === "compare" && check.rule.series === "boat.position",
    )
    expect(changed.map(check => check.name)).toContain("leaves")
    const tools = await createJudgeTools()
    const references = createReferences()
    try {
      const mark = (answers: Record<string, string>) =>
        markAnswer(worksheet, fileOf(worksheet, answers, 1), tools, references)
      const wrong = await mark({ one_way: "" })
      expect(wrong.checks.find(check => check.name === "leaves")?.verdict).toBe("not met")
      const right = await mark({})
      expect(right.checks.find(check => check.name === "leaves")?.verdict).toBe("met")
    } finally {
      await tools.close()
    }
  }, 300_000)
})
