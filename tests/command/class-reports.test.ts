import { describe, expect, it } from "vitest"
import { readAsked } from "../../src/command/asked.ts"
import { readReportsAsked } from "../../src/command/class-reports.ts"
import { gradeSpec } from "../../src/command/grade.ts"

function asked(...args: string[]) {
  const read = readAsked(gradeSpec, ["w.md", "--answers", "a.json", "--out", "r", ...args])
  if ("code" in read) throw new Error(read.text)
  return readReportsAsked(read)
}

describe("what is asked of the reports of a class", () => {
  it("is all of them, with names, unless said otherwise", () => {
    expect(asked()).toEqual({ reports: true, anonymous: false, roster: null })
    expect(asked("--anonymous")).toMatchObject({ reports: true, anonymous: true })
    expect(asked("--results-only")).toMatchObject({ reports: false })
  })
  it("takes the school's own ids for the OneRoster files", () => {
    expect(asked("--roster", "class=7b", "school=skerry", "session=2026/autumn")).toMatchObject({
      roster: { class: "7b", school: "skerry", academicSession: "2026/autumn" },
    })
  })
  it.each([
    ["one of the ids is missing", ["class=7b", "school=skerry"], /lacks session=ID/],
    ["a name is unknown", ["group=7b"], /class=ID/],
    ["a name stands there twice", ["class=7b", "class=7c"], /each once/],
    ["an id has signs that OneRoster forbids", ["class=7 b"], /letters, digits/],
    ["there is no name", ["7b"], /class=ID/],
  ])("refuses ids where %s, and says what to write", (_, pairs, text) => {
    expect(asked("--roster", ...pairs)).toMatchObject({
      code: "asked-wrongly",
      text: expect.stringMatching(text),
      todo: expect.stringMatching(/--roster class=ID/),
    })
  })
})
