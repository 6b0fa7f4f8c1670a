import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { placeInFile } from "../../src/command/place-in-file.ts"
import { parseWorksheet } from "../../src/worksheet/index.ts"

const head = "---\ntitle: A sinker\nid: sinker\nversion: 1\n---\nProse.\n\n"

/** Every line of every cell, as shown, must be found in the file at the line that it is told to be. */
function expectPlaced(text: string): number {
  const result = parseWorksheet(text, "sinker.md")
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const { worksheet } = result
  const file = text.split("\n")
  let checked = 0
  for (const cell of worksheet.sheet.cells) {
    const shown = cell.segments
      .map(segment => (segment.kind === "given" ? segment.text : (worksheet.answers[segment.name] ?? "")))
      .join("")
      .split("\n")
    shown.forEach((row, i) => {
      const problem = { code: "x", text: "", todo: "", where: { cell: cell.name, line: i + 1, column: 1 } }
      const line = placeInFile(worksheet, problem).where!.line
      const found = file[line - 1]!.replaceAll(/\/\* (end )?blank[^*]*\*\/ ?/g, "").trimEnd()
      // an answer without a line is told at what follows its opening marker
      if (row.trim() !== "") expect(found, `line ${i + 1} of ${cell.name}`).toBe(row.trimEnd())
      checked++
    })
  }
  return checked
}

describe("a place in a cell is told as its line in the author's file", () => {
  it.each([
    ["without a blank", "a = 1\nb = 2"],
    [
      "behind a blank with a starter",
      "a = 1\n// blank one: x\nb = 2\nc = 3\n// starter\n// b = ...\n// end blank\nd = 4\ne = 5",
    ],
    ["behind a blank of no line", "a = 1\n// blank one: x\n// end blank\nd = 4\ne = 5"],
    [
      "behind a blank of no line with a starter",
      "a = 1\n// blank one: x\n// starter\n// s\n// end blank\nd = 4",
    ],
    ["with a blank first", "// blank one: x\nb = 2\n// end blank\nd = 4"],
    [
      "between two blanks",
      "// blank one: x\nb = 2\n// end blank\n// blank two: y\nc = 3\n// end blank\nd = 4",
    ],
    ["with a blank in a line", "a = 1\nb = /* blank one: x */ 2 /* end blank */\nc = 3"],
  ])("%s", (_, body) => {
    expect(expectPlaced(`${head}\`\`\`ts cell drop\n${body}\n\`\`\`\n`)).toBeGreaterThan(1)
  })
  it.each(["lamp-key", "fender", "tumble"])("in %s, every line of every cell", id => {
    expect(expectPlaced(readFileSync(`worksheets/${id}.md`, "utf8"))).toBeGreaterThan(20)
  })
})
