import { describe, expect, it } from "vitest"
import { type Dated, standings } from "../../../src/command/marking/newest.ts"

const now = Date.parse("2026-11-25T12:00:00Z")
const dated = (file: string, over: Partial<Dated> = {}): Dated => ({
  file,
  student: { id: "s1", name: "Student 1" },
  savedAt: "2026-11-25T09:00:00.000Z",
  fileTime: now - 1000,
  bytes: `bytes of ${file}`,
  ...over,
})
const counting = (files: readonly Dated[]): string[] => {
  const found = standings(files, now)
  return files.filter(({ file }) => !found.get(file)?.superseded).map(({ file }) => file)
}

describe("of several files of one student the newest counts", () => {
  it("by the time inside the file, whatever the time of the file itself", () => {
    const files = [
      dated("a", { savedAt: "2026-11-25T09:00:00Z", fileTime: now }),
      dated("b", { savedAt: "2026-11-25T09:30:00+01:00", fileTime: now }),
      dated("c", { savedAt: "2026-11-25T09:40:00Z", fileTime: 0 }),
    ]
    expect(counting(files)).toEqual(["c"])
    const found = standings(files, now)
    expect(found.get("a")!.problems[0]).toMatchObject({
      code: "answer-superseded",
      text: expect.stringMatching(/“c”/),
    })
    expect(found.get("c")!.problems[0]).toMatchObject({
      code: "answer-newest",
      text: expect.stringMatching(/“a”, “b”/),
    })
  })
  it("by the time of the file where it says none", () => {
    expect(
      counting([dated("a", { savedAt: "", fileTime: 2 }), dated("b", { savedAt: "soon", fileTime: 1 })]),
    ).toEqual(["a"])
  })
  it("and a time still to come is said and not relied on", () => {
    const files = [
      dated("a"),
      dated("future", { savedAt: "2031-01-01T00:00:00Z", fileTime: Date.parse("2026-11-25T08:00:00Z") }),
    ]
    expect(counting(files)).toEqual(["a"])
    expect(
      standings(files, now)
        .get("future")!
        .problems.map(problem => problem.code),
    ).toEqual(["answer-from-future", "answer-superseded"])
  })
  it("a clock that is a few minutes ahead is no wonder", () => {
    expect(standings([dated("a", { savedAt: "2026-11-25T12:20:00Z" })], now).size).toBe(0)
  })
  it("the first by name where nothing tells", () => {
    expect(counting([dated("a"), dated("b")])).toEqual(["a"])
  })
  it("by the words that are true of it: newer, of the same time, the same file, or joined by the name alone", () => {
    const said = (...files: Dated[]) => standings(files, now).get("b")!.problems[0]!.text
    expect(said(dated("a"), dated("b", { savedAt: "2026-11-25T08:00:00Z" }))).toMatch(
      /the newest, “a”, counts/,
    )
    expect(said(dated("a"), dated("b"))).toMatch(/“a” and this one are of the same time/)
    expect(said(dated("a", { bytes: "x" }), dated("b", { bytes: "x" }))).toMatch(/the same as “a”/)
    const student = { id: "", name: "Ada" }
    expect(said(dated("a", { student }), dated("b", { student }))).toMatch(
      /only the same name: are they of one student/,
    )
    expect(said(dated("a"), dated("b"))).not.toMatch(/only the same name/)
  })
  it("but never another student's who wrote the same id: names that differ put none aside", () => {
    const victim = dated("q", { student: { id: "s1", name: "Vic Tim" } })
    const late = { savedAt: "2026-11-25T11:00:00Z" }
    for (const name of ["Someone Else", "", "Vic"]) {
      const found = standings([victim, dated("z", { student: { id: "s1", name }, ...late })], now)
      for (const file of ["q", "z"]) {
        const { superseded, problems } = found.get(file)!
        expect(superseded).toBe(false)
        expect(problems).toMatchObject([{ code: "answer-id-shared" }])
        expect(problems[0]!.text).not.toMatch(/Vic|Else/)
      }
    }
    const same = dated("z", { student: { id: "s1 ", name: " vic  TIM" }, ...late })
    expect(counting([victim, same])).toEqual(["z"])
  })
  it("students are told by id, by name where there is none, and not at all without both", () => {
    const student = (id: string, name: string) => ({ student: { id, name } })
    expect(
      counting([
        dated("a", student("s1", "x")),
        dated("b", student("s2", "x")),
        dated("c", student("", "Ada")),
        dated("d", student(" ", "Ada")),
        dated("e", student("", "")),
        dated("f", student("", "")),
      ]),
    ).toEqual(["a", "b", "c", "e", "f"])
  })
})
