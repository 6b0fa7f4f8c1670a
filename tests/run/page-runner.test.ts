import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { openRunnerPage } from "./page/open.ts"
import { compiled, fallingKey, raw, request } from "./support/program.ts"

let opened: Awaited<ReturnType<typeof openRunnerPage>>
beforeAll(async () => {
  opened = await openRunnerPage()
})
afterAll(() => opened.close())

const run = (r: ReturnType<typeof request>) => opened.page.evaluate(asked => window.runPlain(asked), r)

describe("a run in a page", () => {
  it("takes place in a worker of a sandboxed frame without an origin", async () => {
    await run(request(await compiled(fallingKey)))
    const frames = await opened.page.$$eval("iframe", all => all.map(f => f.getAttribute("sandbox")))
    expect(frames.length).toBeGreaterThan(0)
    expect(new Set(frames)).toEqual(new Set(["allow-scripts"]))
    expect(opened.page.workers().every(worker => worker.url().startsWith("blob:null/"))).toBe(true)
  })

  it("leaves the page alive during an endless loop, can be stopped, and the next run works", async () => {
    const result = await opened.page.evaluate(
      async ([endless, honest]) => {
        const pending = window.runPlain(endless!)
        let beats = 0
        const pulse = setInterval(() => beats++, 10)
        await new Promise(resolve => setTimeout(resolve, 300))
        clearInterval(pulse)
        window.pageRunner.stop()
        const stopped = await pending
        const next = await window.runPlain(honest!)
        return { beats, stopped: stopped.problem?.code, next: next.problem }
      },
      [request(raw("for (;;) {}")), request(await compiled(fallingKey))],
    )
    expect(result.beats).toBeGreaterThan(3)
    expect(result).toMatchObject({ stopped: "stopped", next: null })
  })

  it.each([
    ["a pattern that searches for ever", `/^(a+)+$/.test("a".repeat(40) + "b")`],
    ["promise jobs without end", "(async () => { for (;;) await null })()"],
  ])("is ended by the clock in %s", async (_, js) => {
    const outcome = await run(request(raw(js), { limits: { milliseconds: 400 } }))
    expect(outcome.problem?.code).toBe("time-limit")
    expect((await run(request(await compiled("record(0, { a: 1 })")))).problem).toBeNull()
  })

  it.each([
    ["lists", "const all = []; for (;;) all.push([1, 2, 3, all.length])"],
    ["a text", `let text = "ab"; for (;;) text = JSON.stringify([text, text])`],
  ])("survives a flood of memory by %s", async (_, js) => {
    const outcome = await run(request(raw(js), { limits: { milliseconds: 6000 } }))
    expect(outcome.problem?.code).toMatch(/^(run-lost|time-limit|too-large|memory-limit|program-error)$/)
    expect((await run(request(await compiled("record(0, { a: 1 })")))).problem).toBeNull()
  })
})
