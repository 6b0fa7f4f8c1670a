import { describe, expect, it } from "vitest"
import type { CompileResult } from "../../src/cell/contract.ts"
import type { Problem } from "../../src/cell/problem.ts"
import { firstOfEachLine } from "../../src/page/findings.ts"
import { openDevice } from "../../src/page/keep/device.ts"
import { createKeeper } from "../../src/page/keep/keeper.ts"
import { complainAfter, openSession, runAfter, type Workshop } from "../../src/page/session.ts"
import type { RunOutcome, RunRequest } from "../../src/run/contract.ts"
import { handClock } from "./fixtures/clock.ts"
import { recordingOf, smallEdition } from "./fixtures/edition.ts"
import { memoryStorage } from "./fixtures/storage.ts"

const edition = smallEdition()
const unread: Problem = {
  code: "syntax",
  text: "This cannot be read.",
  todo: "Look.",
  where: { cell: "fall", line: 2, column: 3 },
}

const unlike: Problem = {
  code: "unlike-sum",
  text: "m plus s",
  todo: "",
  where: { cell: "drop", blank: "update", line: 9, column: 1 },
}

const misfit: Problem = {
  code: "number-and-vector",
  text: "number plus vector",
  todo: "",
  where: { cell: "drop", blank: "update", line: 7, column: 5 },
}

/** A workshop that keeps an account of what it was asked; a text with "?" does not compile, one with "!" stops. */
function bench() {
  const clock = handClock()
  const compiled: string[] = []
  const runs: RunRequest[] = []
  let judged = 0
  const workshop: Workshop = {
    async units(texts) {
      return Object.values(texts).some(text => text.includes("unlike")) ? [unlike] : []
    },
    async compile(texts): Promise<CompileResult> {
      const text = Object.values(texts).join("|")
      compiled.push(text)
      return text.includes("?")
        ? { ok: false, problems: [unread] }
        : { ok: true, compiled: { ...edition.starter, js: text } }
    },
    kinds: {
      async problems(texts) {
        return Object.values(texts).some(text => text.includes("number + vector")) ? [misfit] : []
      },
      async suggest() {
        return null
      },
      async about() {
        return null
      },
      async rename() {
        return { ok: false, why: "" }
      },
      warmUp() {},
      close() {},
    },
    compilerReady: () => true,
    warmUp() {},
    runner: {
      async run(request): Promise<RunOutcome> {
        runs.push(request)
        const stopped = request.compiled.js.includes("!")
        return {
          recordings: [recordingOf("fall", stopped ? 3 : 1000)],
          problem: stopped ? { ...unread, code: "endless-loop" } : null,
          output: [],
          turns: 1000,
          timeStepFound: true,
          milliseconds: 2,
        }
      },
      stop() {},
      async close() {},
    },
    second: () => {
      throw new Error("nobody asked for a second look")
    },
    async lineUnits() {
      return {}
    },
    reference: null,
    async judge() {
      judged++
      return { points: 4, outOf: 4, checks: [], problems: [] }
    },
    close() {},
  }
  const keeper = createKeeper(
    openDevice(() => memoryStorage()),
    edition.sheet,
    clock,
  )
  const session = openSession(edition, workshop, keeper, clock)
  return { clock, compiled, runs, session, keeper, judged: () => judged }
}

describe("the run loop", () => {
  it("shows the first motion without the compiler", async () => {
    const { clock, compiled, runs, session } = bench()
    await clock.pass(1)
    expect(compiled).toEqual([])
    expect(runs[0]?.compiled.js).toBe("starter")
    expect(session.recordings.value[0]?.rows).toBe(1000)
  })
  it("runs once, a moment after typing stops, and then judges", async () => {
    const { clock, compiled, runs, session, judged } = bench()
    await clock.pass(1000)
    const before = judged()
    for (const text of ["p", "p ", "p =", "p = 1"]) {
      session.write({ update: text })
      await clock.pass(runAfter - 10)
    }
    await clock.pass(runAfter)
    expect(compiled).toEqual(["|p = 1"])
    expect(runs).toHaveLength(2)
    expect(judged()).toBe(before)
    await clock.pass(1000)
    expect(judged()).toBe(before + 1)
    expect(session.standing.value).toMatchObject({ current: true, judgement: { points: 4 } })
  })
  it("keeps the last motion and holds its words while somebody is in mid-word", async () => {
    const { clock, session } = bench()
    await clock.pass(1000)
    session.write({ update: "p = ?" })
    await clock.pass(runAfter + 1)
    expect(session.problems.value).toEqual([])
    expect(session.recordings.value[0]?.rows).toBe(1000)
    await clock.pass(complainAfter)
    expect(session.problems.value).toEqual([unread])
    expect(session.state.value.kind).toBe("not-compiled")
    expect(session.recordings.value[0]?.rows).toBe(1000)
  })
  it("a fault that is mended in time is never mentioned", async () => {
    const { clock, session } = bench()
    await clock.pass(1000)
    const seen: number[] = []
    session.problems.subscribe(problems => seen.push(problems.length))
    session.write({ update: "?" })
    await clock.pass(300)
    session.write({ update: "p = 1" })
    await clock.pass(2000)
    expect(Math.max(...seen)).toBe(0)
  })
  it("the run key says at once what is wrong", async () => {
    const { clock, session } = bench()
    session.write({ update: "?" })
    session.run()
    await clock.pass(1)
    expect(session.problems.value).toEqual([unread])
  })
  it("a program that was stopped shows what it recorded, and why", async () => {
    const { clock, session } = bench()
    session.write({ update: "!" })
    session.run()
    await clock.pass(1)
    expect(session.state.value.kind).toBe("stopped")
    expect(session.recordings.value[0]?.rows).toBe(3)
  })
  it("a verdict is marked as old as soon as the text has changed", async () => {
    const { clock, session } = bench()
    await clock.pass(1000)
    session.write({ update: "p = 2" })
    await clock.pass(runAfter + 5)
    expect(session.standing.value?.current).toBe(false)
  })
  it("parameters run the program again without compiling, and are told apart from the sheet's", async () => {
    const { clock, compiled, runs, session } = bench()
    await clock.pass(1000)
    session.setParameter("height", 3)
    await clock.pass(1)
    expect(compiled).toEqual([])
    expect(runs.at(-1)?.parameters).toEqual({ height: 3 })
    expect(session.varied.value).toBe(true)
    session.resetParameters()
    await clock.pass(1)
    expect(session.varied.value).toBe(false)
  })
  it("text that comes from elsewhere runs like text that was typed", async () => {
    const { clock, runs, keeper } = bench()
    await clock.pass(1000)
    keeper.replace({ answers: { update: "p = 3" }, questions: {} }, "before a file")
    await clock.pass(1000)
    expect(runs.at(-1)?.compiled.js).toBe("|p = 3")
  })
  it("units that do not fit are told beside the verdict, and taken back as soon as the text changes", async () => {
    const { clock, session } = bench()
    await clock.pass(1000)
    session.write({ update: "unlike" })
    await clock.pass(1000)
    expect(session.findings.value).toEqual([unlike])
    expect(session.problems.value).toEqual([])
    session.write({ update: "alike" })
    expect(session.findings.value).toEqual([])
    await clock.pass(1000)
    expect(session.findings.value).toEqual([])
  })
  it("kinds that do not fit are said once the typing rests, and taken back with the next stroke", async () => {
    const { clock, session } = bench()
    await clock.pass(1000)
    session.write({ update: "number + vector" })
    await clock.pass(200)
    expect(session.findings.value).toEqual([])
    await clock.pass(800)
    expect(session.findings.value).toEqual([misfit])
    session.write({ update: "vector + vector" })
    expect(session.findings.value).toEqual([])
    await clock.pass(1000)
    expect(session.findings.value).toEqual([])
  })
  it("one line, one message: of what stopped the run before kinds, of kinds before units", () => {
    const at = (code: string, line: number): Problem => ({
      ...misfit,
      code,
      where: { cell: "drop", line, column: 1 },
    })
    const told = firstOfEachLine(
      [at("run", 7)],
      [at("kind", 7), at("kind", 8)],
      [at("unit", 8), at("unit", 9)],
    )
    expect(told.map(one => `${one.code} ${one.where?.line}`)).toEqual(["run 7", "kind 8", "unit 9"])
  })
  it("a stop in a given line gives way to what kinds find in a blank, and only to that", () => {
    const at = (code: string, line: number, blank?: string): Problem => ({
      ...misfit,
      code,
      where: { cell: "drop", line, column: 1, ...(blank ? { blank } : {}) },
    })
    const codes = (...lists: Parameters<typeof firstOfEachLine>): string[] =>
      firstOfEachLine(...lists).map(one => one.code)
    const lost: Problem = { code: "lost", text: "", todo: "" }
    expect(codes([at("run", 20)], [at("kind", 17, "friction")], [])).toEqual(["kind"])
    expect(codes([at("run", 20)], [at("kind", 21)], [])).toEqual(["run", "kind"])
    expect(codes([at("run", 16, "friction")], [at("kind", 17, "friction")], [])).toEqual(["run", "kind"])
    expect(codes([at("run", 20)], [], [at("unit", 17, "friction")])).toEqual(["run", "unit"])
    expect(codes([at("both", 16, "friction")], [at("both", 16, "friction")], [])).toEqual(["both"])
    expect(codes([at("run", 20)], [at("no-effect", 17, "friction")], [])).toEqual(["run", "no-effect"])
    expect(codes([lost], [at("kind", 17, "friction")], [])).toEqual(["lost", "kind"])
  })
  it("a text that is not run is not checked for kinds: one fault, one message", async () => {
    const { clock, session } = bench()
    await clock.pass(1000)
    session.write({ update: "number + vector ?" })
    await clock.pass(2000)
    expect(session.findings.value.map(one => one.code)).toEqual([unread.code])
  })
})
