import { describe, expect, it } from "vitest"
import { openDevice, workKey } from "../../src/page/keep/device.ts"
import { createKeeper, keepWithin } from "../../src/page/keep/keeper.ts"
import { handClock } from "./fixtures/clock.ts"
import { smallEdition } from "./fixtures/edition.ts"
import { memoryStorage } from "./fixtures/storage.ts"

const { sheet } = smallEdition()

function desk(storage = memoryStorage(), clock = handClock(), on = sheet) {
  const keeper = createKeeper(
    openDevice(() => storage),
    on,
    clock,
  )
  return { storage, clock, keeper }
}

describe("nothing typed is lost", () => {
  it("a keystroke is on the device within 300 ms, however fast one types", async () => {
    const { storage, clock, keeper } = desk()
    expect(keepWithin).toBeLessThanOrEqual(300)
    let longest = 0
    for (let i = 1; i <= 40; i++) {
      keeper.writeAnswer("update", "x".repeat(i))
      await clock.pass(50)
      const stored = /"text":"(x*)"/.exec([...storage.map.values()].join())?.[1]?.length ?? 0
      longest = Math.max(longest, (i - stored) * 50)
    }
    expect(longest).toBeLessThanOrEqual(300)
    keeper.flush()
    expect(desk(storage).keeper.answers.value.update).toBe("x".repeat(40))
  })
  it("leaving the page writes at once", () => {
    const { storage, keeper } = desk()
    keeper.writeAnswer("net", "mass * g")
    keeper.flush()
    expect(desk(storage).keeper.answers.value).toEqual({ net: "mass * g" })
  })
  it("a full store is said in words that name the way out, and the text stays on the sheet", async () => {
    const { storage, clock, keeper } = desk()
    storage.full = true
    keeper.writeAnswer("net", "mass * g")
    await clock.pass(300)
    const keeping = keeper.keeping.value
    expect(keeping.kind).toBe("failed")
    expect(keeping.kind === "failed" && keeping.problem.todo).toContain("answer file")
    expect(keeper.answers.value.net).toBe("mass * g")
    storage.full = false
    keeper.writeAnswer("net", "mass * g2")
    await clock.pass(300)
    expect(keeper.keeping.value.kind).toBe("kept")
  })
  it("a forbidden store is said in words", async () => {
    const clock = handClock()
    const device = openDevice(() => {
      throw new DOMException("no", "SecurityError")
    })
    const keeper = createKeeper(device, sheet, clock)
    keeper.writeAnswer("net", "1")
    await clock.pass(300)
    const keeping = keeper.keeping.value
    expect(keeping.kind === "failed" && keeping.problem.code).toBe("keeping-forbidden")
  })
  it("two windows that write different blanks keep both", async () => {
    const storage = memoryStorage()
    const clock = handClock()
    const a = desk(storage, clock).keeper
    const b = desk(storage, clock).keeper
    a.writeAnswer("net", "from a")
    await clock.pass(300)
    b.writeAnswer("update", "from b")
    await clock.pass(300)
    expect(desk(storage, clock).keeper.answers.value).toEqual({ net: "from a", update: "from b" })
  })
  it("two windows that write the same blank: the later text stands, the earlier is among the past", async () => {
    const storage = memoryStorage()
    const clock = handClock()
    const a = desk(storage, clock).keeper
    const b = desk(storage, clock).keeper
    a.writeAnswer("net", "from a")
    await clock.pass(300)
    b.writeAnswer("net", "from b")
    await clock.pass(300)
    a.absorb(storage.map.get(workKey(sheet.id, sheet.digest))!)
    expect(a.answers.value.net).toBe("from b")
    expect(a.work.value.past.map(past => past.answers.net)).toEqual(["from a"])
  })
  it("another edition of the worksheet leaves the old text where it can be had", async () => {
    const { storage, clock, keeper } = desk()
    keeper.writeAnswer("update", "old text")
    await clock.pass(300)
    const next = desk(storage, clock, { ...sheet, digest: "d2", version: 3 }).keeper
    expect(next.answers.value).toEqual({})
    expect(next.earlier.map(work => work.answers.update?.text)).toEqual(["old text"])
    next.writeAnswer("update", "new text")
    await clock.pass(300)
    expect(desk(storage, clock).keeper.answers.value.update).toBe("old text")
  })
  it("what cannot be read is moved aside before anything is written in its place", async () => {
    const storage = memoryStorage()
    storage.map.set(workKey(sheet.id, sheet.digest), '{"half')
    const { clock, keeper } = desk(storage)
    keeper.writeAnswer("net", "1")
    await clock.pass(300)
    expect([...storage.map.values()]).toContain('{"half')
  })
  it("looking at a sheet is not beginning it: points alone are not kept", async () => {
    const { storage, clock, keeper } = desk()
    keeper.writePoints(0, 4)
    await clock.pass(1000)
    expect(storage.map.size).toBe(0)
    keeper.writeAnswer("net", "1")
    keeper.writePoints(3, 4)
    await clock.pass(1000)
    expect(desk(storage).keeper.work.value.points).toMatchObject({ points: 3, outOf: 4 })
  })
  it("a replaced text can be brought back, and a text that does not change is not stored twice", () => {
    const { keeper } = desk()
    keeper.writeAnswer("net", "mine")
    keeper.replace({ answers: { net: "file's", update: "new" }, questions: {} }, "before a file")
    expect(keeper.answers.value).toEqual({ net: "file's", update: "new" })
    expect(keeper.work.value.past).toHaveLength(1)
    expect(keeper.work.value.past[0]).toMatchObject({ why: "before a file", answers: { net: "mine" } })
    keeper.replace({ answers: { net: "file's" }, questions: {} }, "again")
    expect(keeper.work.value.past).toHaveLength(1)
  })
})
