import { sha256 } from "@noble/hashes/sha2.js"
import { describe, expect, it } from "vitest"
import { mostInReport } from "../../src/report/contract.ts"
import { pageName } from "../../src/report/file-name.ts"
import { reportFiles } from "../../src/report/index.ts"
import { reportPage } from "../../src/report/report.ts"
import { createTally } from "../../src/report/tally.ts"
import { stranger } from "../../src/report/text.ts"
import { filesOf, lampKey, marked, refusedFile, subject } from "../support/marked.ts"

const plain = { styles: "", smallStyles: "" }
const pageOf = async (list: Parameters<typeof filesOf>[0], options = plain): Promise<string> =>
  (await filesOf(list, options)).get("report.html")!
/** Text of a page as it is read: without tags, spaces run together. */
const words = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>/, "")
    .replace(/<[^>]*>/g, " ")
    .replaceAll("&amp;", "&")
    .replace(/\s+/g, " ")
/** Lines of the author's answers that are long enough to be an answer. */
const answerLines = Object.values(lampKey.answers)
  .flatMap(text => text.split("\n"))
  .map(line => line.trim())
  .filter(line => line.length > 8)

describe("the teacher's page", () => {
  const klass = [
    marked(1),
    ...[2, 3, 4].map(n => marked(n, { verdicts: { follows: "not met" }, slip: "mass-missing", pull: 4 })),
    ...[5, 6].map(n =>
      marked(n, { verdicts: { follows: "not met", impulse: "not met" }, slip: "time-step-missing" }),
    ),
    marked(7, { verdicts: { heavier: "not met" }, questions: { heavier: "heavy", "own-words": "Because." } }),
    marked(8, { verdicts: { formula: "not met" } }),
    refusedFile("009.json"),
  ]
  it("opens with what the class got wrong, the most frequent first", async () => {
    const html = await pageOf(klass)
    const opening = words(html.slice(html.indexOf('id="class"'), html.indexOf('id="checks"')))
    const at = (text: string): number => {
      expect(opening).toContain(text)
      return opening.indexOf(text)
    }
    expect(opening).toContain("1 of 8 have all 10 points")
    expect(at("3 The mass was left out")).toBeLessThan(at("2 The time step was left out"))
    expect(at("2 The time step was left out")).toBeLessThan(at("1 A wrong answer to “heavier”"))
    at("A wrong answer to “heavier”: “the heavy key”.")
    at("1 file could not be marked")
  })
  it("asks for no file again that was left aside for a newer one", async () => {
    const old = refusedFile("a.json", "hs1")
    const [problem] = old.result.problems
    const aside = {
      ...old,
      result: { ...old.result, problems: [{ ...problem!, code: "answer-superseded" }] },
    }
    const files = await filesOf([marked(1), aside])
    expect(words(files.get("report.html")!)).toContain("2 files, 1 left aside for a newer one")
    expect(files.get("report.html")).not.toContain("could not be marked")
    expect(words(files.get(pageName(aside.result))!)).toContain("A newer file of yours counts.")
  })
  it("repeats the worksheet's own words for a slip, and says whose it is", async () => {
    const opening = words(await pageOf(klass))
    expect(opening).toContain("Your position line uses momentum where a velocity belongs.")
    expect(opening).toMatch(/Student 2 , Student 3 , Student 4/)
  })
  it("counts each check: met, not met, could not run", async () => {
    const html = await pageOf([...klass, marked(10, { verdicts: { follows: "could not run" } })])
    const row = /<b>follows<\/b>[\s\S]*?<\/tr>/.exec(html)![0]
    expect([...row.matchAll(/<td class="n">(\d+)/g)].map(match => match[1])).toEqual(["3", "5", "1"])
  })
  it("counts the choices of each question, marks the right one and says why", async () => {
    const html = await pageOf(klass)
    expect(words(html)).toMatch(/the heavy key 1 both at the same time right 7/)
    for (const key of lampKey.keys) expect(words(html)).toContain(key.why.slice(0, 40))
  })
  it("names the wrong answer given most often, whatever many right ones look like", async () => {
    const speeds = ["9.81 m/s", "9.81 m/s", "9.81 m/s", "981 cm/s", "98", "98", "5", "\u0000others"]
    const answered = speeds.map((speed, n) =>
      marked(n, {
        verdicts: n < 4 ? {} : { speed: "not met" },
        questions: { heavier: "same", halved: "half", speed, "own-words": "" },
      }),
    )
    const html = await pageOf(answered)
    expect(words(html)).toContain("4 A wrong answer to “speed”, most often “98” (2).")
    const table = /<table class="answers"><caption>4 of 8[\s\S]*?<\/table>/.exec(html)![0]
    expect(words(table)).toMatch(/9\.81 m\/s right 3 .*98 2 .*981 cm\/s right 1/)
    expect(table.match(/<tr class="right">/g)).toHaveLength(2)
    const once = answered.filter((_, n) => n === 4 || n === 6)
    expect(words(await pageOf(once))).toContain("2 A wrong answer to “speed”.")
  })
  it("counts answers that are too many to be kept apart by how they were judged", async () => {
    const html = await pageOf(
      Array.from({ length: 250 }, (_, n) =>
        marked(n, {
          verdicts: n < 230 ? { speed: "not met" } : {},
          questions: { heavier: "same", halved: "half", speed: n === 249 ? 9.81 : 100 + n, "own-words": "" },
        }),
      ),
    )
    expect(words(html)).toMatch(/9\.81 right 0 .*others right 20/)
    expect(words(html)).toMatch(/others 222/)
    expect(words(html)).toContain("230 A wrong answer to “speed”.")
  })
  it("lists the same text of several students once, with their names", async () => {
    const html = await pageOf(klass)
    expect(html.match(/<div class="prose"><bdi>It is small\./g)).toHaveLength(1)
    expect(words(html)).toContain("Because.")
  })
  it("shows each student's lines, feedback and motion over the reference", async () => {
    const html = await pageOf(klass)
    const article = /<article class="student" id="s2">[\s\S]*?<\/article>/.exec(html)![0]
    expect(article).toContain("p = p + Fnet * dt")
    expect(article).toContain("It leaves the reference.")
    expect(article.match(/<polyline class="own/g)).toHaveLength(1)
    expect(article.match(/<polyline class="reference/g)).toHaveLength(1)
    expect(article).toContain('class="parting"')
  })
  it("says the same bytes for the same class", async () => {
    expect(await pageOf(klass)).toBe(await pageOf(klass))
  })
  it("leaves names, ids and file names out when asked to", async () => {
    const list = [
      marked(1, { name: "Ailsa Marr", id: "hs001", file: "marr.json" }),
      marked(2, { name: "Bram Voe", id: "hs002", file: "voe.json", verdicts: { follows: "not met" } }),
      refusedFile("holm.json", "hs003"),
    ]
    const html = await pageOf(list, { ...plain, anonymous: true } as typeof plain)
    for (const text of ["Ailsa", "Bram", "hs00", "marr", "voe.json", "holm"]) expect(html).not.toContain(text)
    expect(html).toContain("Student 2")
    expect(await pageOf(list)).toContain("Bram Voe")
  })
  it("is whole for an empty class and for one where nothing could be marked", async () => {
    expect(words(await pageOf([]))).toContain("Nothing was got wrong by anybody")
    expect(words(await pageOf([refusedFile("a.json")]))).toContain("The answer file is empty.")
  })
})

describe("a large class", () => {
  const many = (n: number) =>
    (function* () {
      for (let i = 0; i < n; i++)
        yield marked(i, i % 3 === 0 ? { verdicts: { follows: "not met" }, slip: "mass-missing" } : {})
    })()
  it("has each student's work in the report up to the limit, beyond it on their own pages alone", async () => {
    const within = await pageOf(many(mostInReport))
    const beyond = await pageOf(many(mostInReport + 1))
    expect(within.match(/<article class="student"/g)).toHaveLength(mostInReport)
    expect(beyond).not.toContain('<article class="student"')
    expect(beyond).not.toContain("p = p + Fnet")
    expect(beyond).toContain(`href="${pageName(marked(0).result)}"`)
  })
  it("keeps the report within bounds however large it is", () => {
    const sizeOf = (n: number): number => {
      const tally = createTally(subject.sheet)
      for (const item of many(n)) tally.add(item)
      const naming = { label: (place: number) => `Student ${place}`, href: () => pageName(marked(0).result) }
      return reportPage(
        { subject, tally: tally.finish(), naming, works: [], texts: null, anonymous: false },
        "",
      ).length
    }
    const [five, ten] = [sizeOf(15_000), sizeOf(30_000)]
    expect(five).toBeGreaterThan(500_000)
    expect(ten).toBeLessThan(1.02 * five)
    expect(ten).toBeLessThan(2_000_000)
  })
  it("is read one file at a time: a page is out before the next file is asked for", async () => {
    let read = 0
    const list = (function* () {
      for (; read < 50; read++) yield marked(read)
    })()
    for await (const { name } of reportFiles(subject, list, plain)) {
      if (!name.startsWith("students/")) continue
      expect(name).toBe(pageName(marked(read).result))
    }
  })
})

describe("a student's page", () => {
  const mine = marked(1, {
    name: "Ailsa Marr",
    verdicts: { follows: "not met", heavier: "not met" },
    slip: "mass-missing",
    blanks: { update: "  p = p + 2", formula: "" },
    questions: { heavier: "heavy", halved: "half", speed: 9.81, "own-words": "mine" },
  })
  const other = marked(2, { name: "Bram Voe", questions: { "own-words": "Not for others." } })
  it("gives the feedback in the judge's order, the lines beside it", async () => {
    const html = (await filesOf([mine, other])).get(pageName(mine.result))!
    const places = lampKey.sheet.checks.map(check => html.indexOf(check.says.slice(0, 30)))
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(places[0]).toBeGreaterThan(0)
    expect(html).toContain("p = p + 2")
    expect(html).toContain("Left empty.")
  })
  it("holds nothing of anybody else", async () => {
    const html = (await filesOf([mine, other])).get(pageName(mine.result))!
    for (const text of ["Bram", "hs2", "002", "Not for others."]) expect(html).not.toContain(text)
  })
  it("holds no line of the author's answers, no key, and no name of a slip", async () => {
    const html = words((await filesOf([mine, other])).get(pageName(mine.result))!)
    expect(answerLines.length).toBeGreaterThan(2)
    for (const line of answerLines) expect(html).not.toContain(line)
    for (const key of lampKey.keys) expect(html).not.toContain(key.why.slice(0, 40))
    expect(html).not.toContain("both at the same time")
    expect(html).not.toContain("mass-missing")
    expect(html).not.toContain("The mass was left out")
  })
  it("shows the author's motion only as the worksheet does", async () => {
    const drawn = async (
      reference: "shown" | "tried" | "hidden",
      blanks: Record<string, string>,
    ): Promise<[student: boolean, teacher: boolean]> => {
      const item = marked(1, { verdicts: { follows: "not met" }, blanks, pull: 4 })
      const about = { ...subject, sheet: { ...subject.sheet, reference } }
      const files = await filesOf([item], plain, about)
      const has = (name: string): boolean => files.get(name)!.includes('<polyline class="reference"')
      return [has(pageName(item.result)), has("report.html")]
    }
    const filled = { update: "p = 1", formula: "yFormula = 2" }
    expect(await drawn("shown", {})).toEqual([true, true])
    expect(await drawn("tried", filled)).toEqual([true, true])
    expect(await drawn("tried", { update: "p = 1" })).toEqual([false, true])
    expect(await drawn("tried", { ...filled, formula: "" })).toEqual([false, true])
    expect(await drawn("hidden", filled)).toEqual([false, true])
  })
  it("tells who handed in a file that could not be marked what to do", async () => {
    const html = (await filesOf([refusedFile("a.json", "hs1")])).get(
      pageName(refusedFile("a.json", "hs1").result),
    )!
    expect(words(html)).toContain("Download it again.")
  })
})

describe("names of students' pages", () => {
  const odd = [
    "../../etc/x.json",
    "CON.json",
    "a/b\\c:d.json",
    "ö\u202e.json",
    "",
    ".",
    "A.json",
    "a.json",
    "x".repeat(1e6),
  ]
  it("are safe on any system and never the same", () => {
    const names = odd.flatMap(text => [
      pageName({ file: text, student: null }),
      pageName({ file: `${text}1`, student: { id: "", name: text } }),
      pageName({ file: `${text}2`, student: { id: text, name: "" } }),
    ])
    for (const name of names) expect(name).toMatch(/^students\/[a-z0-9][a-z0-9-]{0,60}\.html$/)
    expect(new Set(names).size).toBe(names.length)
  })
  it("keep files apart whose names differ in signs alone, with 64 bits of a digest", () => {
    const names = ["work!,_#!!!.json", "work^,%@_!!.json", "A.json", "a.json"].map(file =>
      pageName({ file, student: null }),
    )
    expect(new Set(names).size).toBe(4)
    for (const name of names) expect(name).toMatch(/-[0-9a-f]{16}\.html$/)
  })
  it("are the student's, letters without their accents", () => {
    const name = (own: string): string => pageName({ file: "x.json", student: { id: "s1", name: own } })
    expect(name("Müller, Jörg")).toMatch(/^students\/muller-jorg-[0-9a-f]{16}\.html$/)
    expect(name("Łuk Ærø")).toMatch(/^students\/luk-aero-/)
    expect(name(" ")).toMatch(/^students\/s1-/)
  })
})

describe("what strangers wrote", () => {
  const nasty = [
    "</script><script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "</style><style>*{display:none}",
    "<!--",
    "]]>",
    "\u202egnp.exe\u2066",
    "\u0000\u0007\u001b[31m",
    "\ud800 half",
    "javascript:alert(1)",
    "&lt;b&gt;",
    "Ω".repeat(1_000_000),
  ]
  const list = nasty.map((text, i) =>
    marked(i, {
      file: `${text.slice(0, 2000)}${i}.json`,
      id: text,
      name: text,
      message: text.slice(0, 5000),
      verdicts: { follows: "not met" },
      blanks: { update: text.slice(0, 8000), formula: text.slice(0, 8000) },
      questions: {
        heavier: text.slice(0, 8000),
        speed: text.slice(0, 8000),
        "own-words": text.slice(0, 8000),
      },
    }),
  )
  it("stays text on every page", async () => {
    for (const [name, html] of await filesOf(list)) {
      if (!name.endsWith(".html")) continue
      expect(html).not.toMatch(/<script|<img|<!--|onerror=alert\(1\)>/i)
      expect(html.match(/<style>/g)).toHaveLength(1)
      expect(html.match(/<\/style>/g)).toHaveLength(1)
      expect(html).not.toMatch(/(?:href|src)="(?!#|students\/)/)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be there
      expect(html).not.toMatch(/[\u0000-\u0008\u000e-\u001f\u202a-\u202e\u2066-\u2069]/)
      expect(html).not.toMatch(/\p{Surrogate}/u)
    }
  })
  it("does not fill the page: a name of a million characters is cut", async () => {
    const html = await pageOf(list)
    expect(html.length).toBeLessThan(1_000_000)
    expect(html).toMatch(/Ω{40,60}…/)
  })
  it("shows what cannot be seen by its code point", () => {
    expect(stranger("a\u202eb\u0000")).toBe("<bdi>a⟨U+202E⟩b⟨U+0000⟩</bdi>")
    expect(stranger("مرحبا")).toBe("<bdi>مرحبا</bdi>")
  })
  it("leaves no name that cannot be seen", async () => {
    const blanks = [0x2800, 0x3164, 0x200b, 0xad, 0x115f, 0x1160, 0xffa0, 0xe0041, 0x200d, 0x200c, 0xfe0f]
    const html = await pageOf(blanks.map((code, n) => marked(n, { name: String.fromCodePoint(code) })))
    for (const code of blanks)
      expect(html).toContain(`⟨U+${code.toString(16).toUpperCase().padStart(4, "0")}⟩`)
    expect(stranger("می\u200cخواهم ❤️\u200d🔥")).toBe("<bdi>می\u200cخواهم ❤️\u200d🔥</bdi>")
  })
  it("keeps names apart that JavaScript knows", async () => {
    const html = await pageOf([
      marked(1, { name: "__proto__", slip: "constructor", verdicts: { follows: "not met" } }),
      marked(2, { questions: JSON.parse('{"heavier":"__proto__","speed":"constructor"}') }),
    ])
    expect(html).toContain("something that is no choice")
    expect(words(html)).toContain("__proto__")
  })
})

describe("the policy of a page", () => {
  it("forbids everything but its own style sheet, which it names by its digest", async () => {
    for (const [name, html] of await filesOf([marked(1)], { styles: "a { color: red }", smallStyles: "" })) {
      if (!name.endsWith(".html")) continue
      const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!
      const style = /<style>([\s\S]*?)<\/style>/.exec(html)![1]!
      const digest = Buffer.from(sha256(new TextEncoder().encode(style))).toString("base64")
      expect(policy).toBe(
        `default-src 'none'; style-src 'sha256-${digest}'; font-src data:; base-uri 'none'; form-action 'none'`,
      )
      expect(html.indexOf("Content-Security-Policy")).toBeLessThan(html.indexOf("<style>"))
      expect(html).not.toMatch(/ style="/)
    }
  })
})
