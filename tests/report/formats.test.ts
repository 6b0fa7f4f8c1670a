import { describe, expect, it } from "vitest"
import { nameUuid, uuidOf } from "../../src/report/uuid.ts"
import { readCsv } from "../support/csv.ts"
import { filesOf, lampKey, marked, refusedFile } from "../support/marked.ts"
import { rosterFaults } from "../support/oneroster.ts"
import { statementFaults } from "../support/xapi.ts"

const hostile = marked(4, {
  id: '</script>\u202e,"a"\r\nb',
  name: "=1+1",
  file: "../../x\u0000.json",
  savedAt: "yesterday",
  questions: { heavier: "__proto__", speed: "about ten", "own-words": '"a",\r\nb\u0000' },
})
const klass = [
  marked(1),
  marked(2, {
    verdicts: { follows: "not met", speed: "not met" },
    questions: { heavier: "same", speed: "98 m/s" },
  }),
  marked(3, { verdicts: { impulse: "could not run" }, savedAt: "2026-11-26T23:30:00-02:00" }),
  hostile,
  refusedFile("005.json", "hs5"),
  refusedFile("006.json"),
]

const roster = async (list = klass, options?: Parameters<typeof filesOf>[1]) =>
  new Map(
    [...(await filesOf(list, options))]
      .filter(([name]) => name.startsWith("oneroster/"))
      .map(([name, text]) => [name.slice("oneroster/".length), text]),
  )
const statements = async (list = klass): Promise<Record<string, unknown>[]> =>
  JSON.parse((await filesOf(list)).get("statements.json")!) as Record<string, unknown>[]

describe("a UUID of a name", () => {
  it("is that of RFC 9562, appendix A.4: www.example.com in the namespace of domain names", () => {
    expect(nameUuid("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com")).toBe(
      "2ed6657d-e927-568b-95e1-2665a8aea6a2",
    )
  })
  it("keeps names apart that run together", () => {
    expect(uuidOf("ab", "c")).not.toBe(uuidOf("a", "bc"))
  })
})

describe("the OneRoster files (1EdTech, CSV binding 1.2)", () => {
  it("are a sound set, whoever is in the class", async () => {
    expect(rosterFaults(await roster())).toEqual([])
    expect(rosterFaults(await roster([]))).toEqual([])
  })
  it("hold one result a student, the last that was marked, and none for who is not known", async () => {
    const again = [
      marked(1, { file: "a.json", savedAt: "2026-11-25T09:00:00.000Z", verdicts: { follows: "not met" } }),
      marked(1, { file: "b.json", savedAt: "2026-11-26T09:00:00.000Z" }),
      marked(1, { file: "c.json", savedAt: "2026-11-24T09:00:00.000Z", verdicts: { impulse: "not met" } }),
      refusedFile("d.json", "hs1"),
      refusedFile("e.json"),
    ]
    const rows = readCsv((await roster(again)).get("results.csv")!).slice(1)
    expect(rows.map(row => [row[4], row[5], row[6], row[7]])).toEqual([
      ["hs1", "fully graded", "10", "2026-11-26"],
    ])
  })
  it("take the day from the answer file, in UTC", async () => {
    const rows = readCsv((await roster()).get("results.csv")!).slice(1)
    expect(rows.find(row => row[4] === "hs3")?.[7]).toBe("2026-11-27")
  })
  it("take no day from a clock that cannot be right, and lend nobody another's", async () => {
    const future = marked(7, { savedAt: "9999-12-31T00:00:00.000Z" })
    const warned = {
      ...future,
      result: {
        ...future.result,
        problems: [{ code: "answer-from-future", text: "Still to come.", todo: "Not relied on." }],
      },
    }
    const list = [
      marked(1),
      warned,
      marked(8, { savedAt: "0001-01-01T00:00:00.000Z" }),
      marked(9, { savedAt: "" }),
    ]
    const files = await roster(list)
    const [head, row] = readCsv(files.get("lineItems.csv")!)
    expect([row![head!.indexOf("assignDate")], row![head!.indexOf("dueDate")]]).toEqual([
      "2026-11-25",
      "2026-11-25",
    ])
    expect(
      readCsv(files.get("results.csv")!)
        .slice(1)
        .map(result => result[7]),
    ).toEqual(["2026-11-25", "1970-01-01", "1970-01-01", "1970-01-01"])
    expect(rosterFaults(files)).toEqual([])
    expect((await statements([warned])).some(statement => "timestamp" in statement)).toBe(false)
  })
  it("know a student by the id without blanks around it, and leave out what a newer file replaced", async () => {
    const old = refusedFile("old.json", "hs3")
    const aside = {
      ...old,
      result: { ...old.result, problems: [{ ...old.result.problems[0]!, code: "answer-superseded" }] },
    }
    const rows = readCsv((await roster([marked(1), marked(2, { id: " hs1" }), aside])).get("results.csv")!)
    expect(rows.slice(1).map(row => row[4])).toEqual(["hs1"])
    expect((await statements([marked(2, { id: " hs1 " })]))[0]!.actor).toMatchObject({
      account: { name: "hs1" },
    })
  })
  it("hold nothing under an id that two names claim, in statements neither", async () => {
    const shared = { code: "answer-id-shared", text: "Another file carries the same id.", todo: "Find out." }
    const claimed = [marked(5), marked(6, { id: "hs5" })].map(one => ({
      ...one,
      result: { ...one.result, problems: [shared] },
    }))
    const rows = readCsv((await roster([marked(1), ...claimed])).get("results.csv")!).slice(1)
    expect(rows).toHaveLength(1)
    expect(JSON.stringify(await statements([marked(1), ...claimed]))).not.toContain("hs5")
    expect(JSON.stringify(await statements([marked(5)]))).toContain("hs5")
  })
  it("give a result without a score for a file that could not be marked", async () => {
    const rows = readCsv((await roster()).get("results.csv")!).slice(1)
    expect(rows.find(row => row[4] === "hs5")?.slice(5, 7)).toEqual(["submitted", ""])
  })
  it("name class, school and session as the school does, when it says how", async () => {
    const files = await roster(klass, {
      styles: "",
      smallStyles: "",
      roster: { class: "7b-physics", school: "skerry", academicSession: "autumn" },
    })
    const [head, row] = readCsv(files.get("lineItems.csv")!)
    expect(row![head!.indexOf("classSourcedId")]).toBe("7b-physics")
    expect(row![head!.indexOf("schoolSourcedId")]).toBe("skerry")
    expect(row![head!.indexOf("academicSessionSourcedId")]).toBe("autumn")
    expect(rosterFaults(files)).toEqual([])
  })
  describe("are refused by the validator when", () => {
    const broken: [what: string, name: string, change: (text: string) => string][] = [
      [
        "the manifest is of another version",
        "manifest.csv",
        text => text.replace("version,1.2", "version,1.1"),
      ],
      [
        "a file is declared that is not there",
        "manifest.csv",
        text => text.replace("users,absent", "users,bulk"),
      ],
      ["a file of the set is not declared", "manifest.csv", text => text.replace(/file\.roles.*\r\n/, "")],
      ["columns are swapped", "results.csv", text => text.replace("score,scoreDate", "scoreDate,score")],
      ["a required column is empty", "lineItems.csv", text => text.replace(/,2026-11-25,/, ",,")],
      ["a date has another form", "lineItems.csv", text => text.replace("2026-11-25", "25.11.2026")],
      ["a day is not in the calendar", "lineItems.csv", text => text.replace("2026-11-25", "2026-11-31")],
      ["a status is no word of the binding", "results.csv", text => text.replace("fully graded", "graded")],
      ["an id has a forbidden sign", "results.csv", text => text.replace(",hs1,", ",hs 1,")],
      [
        "a score is above the highest",
        "results.csv",
        text => text.replace(",fully graded,10,", ",fully graded,11,"),
      ],
      [
        "a bulk row has a date of change",
        "categories.csv",
        text => text.replace(",,,", ",,2026-11-25T00:00:00.000Z,"),
      ],
      [
        "a result names no line item of the set",
        "lineItems.csv",
        text => text.replace(/\r\n[^,]+,/, "\r\nother,"),
      ],
      ["line ends are those of another system", "results.csv", text => text.replaceAll("\r\n", "\n")],
      ["a mark stands in front", "results.csv", text => `\ufeff${text}`],
      ["a result stands there twice", "results.csv", text => text + text.split("\r\n")[1] + "\r\n"],
    ]
    it.each(broken)("%s", async (_, name, change) => {
      const files = await roster()
      const text = files.get(name)!
      files.set(name, change(text))
      expect(files.get(name)).not.toBe(text)
      expect(rosterFaults(files)).not.toEqual([])
    })
  })
})

describe("the statements (Experience API 1.0.3)", () => {
  it("are sound, whoever is in the class", async () => {
    const list = await statements()
    expect(list.flatMap(statementFaults)).toEqual([])
    expect(list.length).toBeGreaterThan(20)
    expect(await statements([])).toEqual([])
    expect(await statements([refusedFile("a.json", "hs1")])).toEqual([])
  })
  it("have ids of their own, the same each time", async () => {
    const ids = (await statements()).map(statement => statement.id)
    expect(new Set(ids).size).toBe(ids.length)
    expect((await statements()).map(statement => statement.id)).toEqual(ids)
  })
  it("say that the worksheet was scored, checks passed or failed, questions answered", async () => {
    const found = (await statements([klass[1]!])).map(({ verb, object, result }) => [
      String((verb as { id: string }).id)
        .split("/")
        .at(-1),
      String((object as { id: string }).id).replace("https://deltasheet.example/worksheets/lamp-key/1", ""),
      (result as { success?: boolean }).success,
    ])
    expect(found).toEqual([
      ["scored", "", undefined],
      ["passed", "/checks/impulse", true],
      ["failed", "/checks/follows", false],
      ["passed", "/checks/formula", true],
      ["answered", "/questions/heavier", true],
      ["answered", "/questions/speed", false],
    ])
  })
  it("give numbers as numbers, and no answer that has not the form of its kind", async () => {
    const responses = (list: Record<string, unknown>[]) =>
      Object.fromEntries(
        list
          .filter(({ verb }) => (verb as { id: string }).id.endsWith("answered"))
          .map(({ object, result }) => [
            (object as { id: string }).id.split("/").at(-1),
            (result as { response?: string }).response,
          ]),
      )
    expect(responses(await statements([klass[1]!]))).toEqual({ heavier: "same", speed: "98" })
    expect(responses(await statements([hostile])).speed).toBeUndefined()
  })
  it("take their time from the answer file, and have none when it has none", async () => {
    expect((await statements([marked(1)]))[0]!.timestamp).toBe("2026-11-25T09:00:00.000Z")
    expect((await statements([hostile])).some(statement => "timestamp" in statement)).toBe(false)
  })
  it("hold no name and no right answer", async () => {
    const text = JSON.stringify(await statements([marked(1, { name: "Ailsa Marr", questions: {} })]))
    expect(text).not.toContain("Ailsa")
    expect(text).not.toContain("correctResponsesPattern")
    for (const key of lampKey.keys) if (key.why !== "") expect(text).not.toContain(key.why)
  })
  describe("are refused by the validator when", () => {
    interface Loose {
      verb: object
      actor: object
      result: object
      context: object
      object: { definition: object }
    }
    type Change = (statement: Loose) => void
    const sound = async () => (await statements([marked(1)]))[4]! as unknown as Loose
    const broken: [what: string, change: Change][] = [
      ["there is no actor", s => Reflect.deleteProperty(s, "actor")],
      ["an id is no UUID", s => Object.assign(s, { id: "1" })],
      [
        "a verb is no word of the vocabulary",
        s => Object.assign(s.verb, { id: "http://adlnet.gov/expapi/verbs/won" }),
      ],
      ["a verb has no scheme", s => Object.assign(s.verb, { id: "scored" })],
      ["a language is none", s => Object.assign(s.verb, { display: { "not a language": "scored" } })],
      ["an actor has two identities", s => Object.assign(s.actor, { mbox: "mailto:a@deltasheet.example" })],
      ["an account has no home page", s => Object.assign(s.actor, { account: { name: "hs1" } })],
      ["the share is above one", s => Object.assign(s.result, { score: { scaled: 1.2 } })],
      ["the score is above the highest", s => Object.assign(s.result, { score: { raw: 3, min: 0, max: 2 } })],
      ["the lowest is the highest", s => Object.assign(s.result, { score: { raw: 0, min: 0, max: 0 } })],
      ["a number is written as text", s => Object.assign(s.result, { score: { raw: "1" } })],
      ["success is a word", s => Object.assign(s.result, { success: "yes" })],
      ["a null stands in it", s => Object.assign(s.result, { response: null })],
      ["a key is unknown", s => Object.assign(s, { grade: 1 })],
      ["an activity's id has no scheme", s => Object.assign(s.object, { id: "lamp-key" })],
      ["a time has no fraction", s => Object.assign(s, { timestamp: "2026-11-25T09:00:00Z" })],
      [
        "a choice stands there twice",
        s =>
          Object.assign(s.object.definition, {
            choices: [{ id: "a" }, { id: "a" }],
          }),
      ],
      ["a context is unknown", s => Object.assign(s.context, { contextActivities: { child: [] } })],
    ]
    it.each(broken)("%s", async (_, change) => {
      const statement = await sound()
      expect(statementFaults(statement)).toEqual([])
      change(statement)
      expect(statementFaults(statement)).not.toEqual([])
    })
  })
})
