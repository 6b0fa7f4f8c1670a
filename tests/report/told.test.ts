import { describe, expect, it } from "vitest"
import type { Problem } from "../../src/cell/problem.ts"
import { slipNamed } from "../../src/judge/slips/catalogue.ts"
import type { Marked } from "../../src/report/contract.ts"
import { pageName } from "../../src/report/file-name.ts"
import { filesOf, lampKey, marked, refusedFile } from "../support/marked.ts"

const words = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>/, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/\s+/g, " ")
const because = (item: Marked, problem: Problem): Marked => ({
  ...item,
  result: { ...item.result, problems: [problem] },
})
const newest = because(marked(1, { name: "Ailsa Marr", id: "hs001", file: "marr.json" }), {
  code: "answer-newest",
  text: "“hs001” handed in 2 files; this is the newest and counts. Left aside: “group b/marr.json”.",
  todo: "Nothing, unless another one should count: then mark that one without this.",
})
const aside = because(refusedFile("group b/marr.json", "hs001"), {
  code: "answer-superseded",
  text: "“hs001” handed in 2 files; the newest, “marr.json”, counts, and this one was left aside.",
  todo: "If this is the one that should count, mark it without the other.",
})
const otherVersion = because(refusedFile("voe.json", "hs002"), {
  code: "answer-other-version",
  text: "These answers were written on version 99 of the worksheet; this is version 1.",
  todo: "Mark them with the version that was handed out, or let the student copy them into the new one.",
})
const link = because(refusedFile("holm.json"), {
  code: "file",
  text: "“holm.json” is a link to another file, and links are not followed.",
  todo: "Put the file itself there.",
})
const klass = [newest, aside, otherVersion, link]
const ownPage = async (item: Marked): Promise<string> => (await filesOf([item])).get(pageName(item.result))!

describe("a report without names", () => {
  it("tells no id, name or file name of anybody, whatever was wrong with a file", async () => {
    const files = await filesOf(klass, { styles: "", smallStyles: "", anonymous: true })
    const report = files.get("report.html")!
    for (const { result } of klass)
      for (const text of [result.file, result.student?.id ?? "hs001", result.student?.name ?? "Ailsa Marr"])
        expect(report).not.toContain(text)
    expect(words(report)).toContain("The student handed in a newer file, which counts")
    expect(words(report)).toContain("The reason names the file")
  })
  it("says what the numbers of its students are", async () => {
    const files = await filesOf(klass, { styles: "", smallStyles: "", anonymous: true })
    expect(words(files.get("report.html")!)).toContain(
      "The number of a student is the one in the first column of results.csv.",
    )
  })
})

describe("what is said of a file", () => {
  it("speaks to the student on the student's own page", async () => {
    const page = words(await ownPage(otherVersion))
    expect(page).toContain("Copy your lines into the version that you were given last, and hand in again.")
    expect(page).not.toContain("Mark them")
    expect(words(await ownPage(aside))).not.toContain("mark it without")
  })
  it("is no fault when a newer file of the student counts", async () => {
    expect(await ownPage(newest)).not.toContain('class="problems"')
    const report = (await filesOf(klass)).get("report.html")!
    expect(words(report)).toContain("this is the newest and counts")
  })
  it("stands by its reason, with what to do, for files that could not be marked", async () => {
    const list = [refusedFile("a.json", "hs7"), refusedFile("b.json"), otherVersion]
    const report = (await filesOf(list)).get("report.html")!
    const section = report.slice(report.indexOf('<section id="not-marked"'))
    expect(section.match(/The answer file is empty\./g)!.length).toBeGreaterThan(0)
    const table = words(/<table class="not-marked">[\s\S]*?<\/table>/.exec(section)![0])
    expect(table.match(/The answer file is empty\./g)).toHaveLength(1)
    expect(table).toMatch(/The answer file is empty\. Download it again\. Student hs7 a\.json b\.json/)
    expect(table).toContain("Mark them with the version that was handed out")
  })
})

describe("a program that did not run", () => {
  const problem: Problem = {
    code: "bracket-not-opened",
    text: "A bracket ) is closed here that was not opened.",
    todo: "Take it away.",
    where: { cell: "fall", blank: "update", line: 16, column: 18 },
    excerpt: "p = p + Fnet * dt)",
  }
  const made = marked(1, {
    verdicts: { impulse: "could not run", follows: "could not run", formula: "could not run" },
    message: `${problem.text} ${problem.todo}`,
    blanks: { update: "\n  const a = 1\n  p = p + Fnet * dt)", formula: "" },
  })
  const halted = because({ ...made, work: { ...made.work!, motions: [] } }, problem)
  it("has its reason once, with the line, and no picture of the reference alone", async () => {
    const page = await ownPage(halted)
    expect(words(page).match(/A bracket \) is closed here/g)).toHaveLength(1)
    expect(words(page)).toContain("line 2 of your lines in update: p = p + Fnet * dt)")
    expect(words(page).match(/could not run/g)).toHaveLength(3)
    expect(page).not.toContain('<figure class="overlay"')
    const report = (await filesOf([halted])).get("report.html")!
    const article = /<article class="student"[\s\S]*?<\/article>/.exec(report)![0]
    expect(words(article)).toContain("line 2 of the lines in update")
  })
  it("is counted by what stopped it, not by what else was wrong with the file", async () => {
    const late: Problem = { code: "answer-from-future", text: "Still to come.", todo: "Not relied on." }
    const both = { ...halted, result: { ...halted.result, problems: [late, problem] } }
    const report = words((await filesOf([both])).get("report.html")!)
    expect(report).toContain("1 bracket not opened")
    expect(report).not.toContain("answer from future")
  })
  it("keeps at its checks what they say beyond that, and the motion up to the stop", async () => {
    const also = marked(1, {
      verdicts: { follows: "could not run" },
      message: `The blank “formula” is not filled yet. ${problem.text} ${problem.todo} Look at one step.`,
    })
    const page = await ownPage(because(also, problem))
    expect(page).toContain(
      '<p class="message"><bdi>The blank “formula” is not filled yet. Look at one step.</bdi></p>',
    )
    expect(page).toContain('<figure class="overlay"')
  })
})

describe("what students are told of a slip", () => {
  const { slips } = lampKey.sheet.checks.find(check => check.name === "follows")!
  const slip = "time-step-missing"
  const own = slips[slip]!
  it("is the hint of the check at which it was found", async () => {
    const at = (name: string, message: string) =>
      marked(1, { verdicts: { [name]: "not met" }, slip, message })
    const section = async (...list: Marked[]): Promise<string> => {
      const report = (await filesOf(list)).get("report.html")!
      return words(
        report.slice(report.indexOf('<section id="slips"'), report.indexOf('<section id="questions"')),
      )
    }
    const ours = slipNamed(slip)!.hint
    expect(own).not.toBe(ours)
    const first = await section(at("impulse", `It leaves. ${ours}`))
    expect(first).toContain(`The student is told: ${ours}`)
    expect(first).not.toContain(own)
    const both = await section(at("impulse", `It leaves. ${ours}`), at("follows", `It leaves. ${own}`))
    expect(both).toContain(`The student is told at “impulse”: ${ours}`)
    expect(both).toContain(`The student is told at “follows”: ${own}`)
  })
})

describe("a text that no rule marks", () => {
  const answered = (text: string): Marked => marked(1, { questions: { "own-words": text } })
  it("is read by the teacher, who is told so in other words than the student; an empty one by nobody", async () => {
    expect(await ownPage(answered("It is small."))).toContain("read by your teacher")
    const report = (await filesOf([answered("It is small.")])).get("report.html")!
    expect(report).toContain("for you to read")
    expect(report).not.toContain("read by your teacher")
    expect(await ownPage(answered(" "))).not.toContain("read by your teacher")
  })
  it("leads to everybody who wrote it", async () => {
    const report = (await filesOf(Array.from({ length: 20 }, (_, n) => marked(n)))).get("report.html")!
    const texts = /<ul class="texts">[\s\S]*?<\/ul>/.exec(report)![0]
    expect(texts.match(/<a href/g)).toHaveLength(20)
  })
})

describe("a listing", () => {
  it("has the name of its blank beside it, by which feedback calls it", async () => {
    expect(await ownPage(marked(1))).toMatch(/<figcaption>[^\n]*? <code>update<\/code><\/figcaption>/)
  })
})

describe("the register", () => {
  it("does not take several files of one student for two students", async () => {
    const report = (await filesOf([newest, aside])).get("report.html")!
    expect(report).not.toContain("Ailsa Marr (hs001)")
  })
  it("is in the order of the names, tells equal names apart, and sums up", async () => {
    const list = [
      marked(1, { name: "Student 10", file: "a.json" }),
      marked(2, {
        name: "Student 2",
        file: "b.json",
        verdicts: { follows: "not met" },
        slip: "mass-missing",
      }),
      marked(3, { name: "Äsa", file: "c.json" }),
      marked(4, { name: "Student 2", file: "d.json" }),
    ]
    const report = (await filesOf(list)).get("report.html")!
    const table = /<table class="register">[\s\S]*?<\/table>/.exec(report)![0]
    const names = [...table.matchAll(/<th scope="row"><a[^>]*><bdi>([^<]*)/g)].map(match => match[1])
    expect(names).toEqual(["Äsa", "Student 2 (hs2)", "Student 2 (hs4)", "Student 10"])
    expect(words(table)).toContain("points of 10")
    expect(words(table)).toMatch(/met by 4 3 4 4 4 4 of 4 that were marked/)
    expect(words(table)).toContain("The mass was left out")
    expect(table).not.toContain("mass-missing")
  })
})
