import { describe, expect, it } from "vitest"
import { readAsked } from "../../src/command/asked.ts"
import { gradeSpec } from "../../src/command/grade.ts"
import { runSpec } from "../../src/command/run.ts"

describe("what is asked on the command line", () => {
  it("takes several paths behind one option", () => {
    const asked = readAsked(gradeSpec, ["w.md", "--answers", "a.json", "b", "--out", "r", "--json"])
    expect(asked).toMatchObject({
      files: ["w.md"],
      json: true,
      values: { answers: ["a.json", "b"], out: ["r"] },
    })
  })
  it("takes NAME=VALUE as it stands", () => {
    expect(readAsked(runSpec, ["w.md", "--set", "height=-2", "mass=1"])).toMatchObject({
      values: { set: ["height=-2", "mass=1"] },
    })
  })
  it.each([
    ["a misspelt option", ["w.md", "--anwsers", "a"], /answers/],
    ["an option without its value", ["w.md", "--out"], /--out DIR/],
    ["an option twice", ["w.md", "--out", "a", "--out", "b"], /one of them/],
    ["no file", ["--answers", "a"], /deltasheet grade WORKSHEET/],
    ["too many files", ["a.md", "b.md"], /deltasheet grade WORKSHEET/],
    ["a merge of nothing", ["merge"], /^Write it as: deltasheet grade merge DIR/],
    ["what more there is to say, in a line of its own", ["w.md", "--out"], /\n +“deltasheet grade --help”/],
    ["a value for a switch", ["w.md", "--json=yes"], /alone/],
  ])("refuses %s and says what to write", (_, args, todo) => {
    expect(readAsked(gradeSpec, args)).toMatchObject({
      code: "asked-wrongly",
      todo: expect.stringMatching(todo),
    })
  })
})
