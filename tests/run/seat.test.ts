import { describe, expect, it } from "vitest"
import { createSeat, type Place, type PlaceEvents } from "../../src/run/seat.ts"
import { raw, request } from "./support/program.ts"

interface FakePlace extends Place {
  readonly events: PlaceEvents
  readonly sent: unknown[]
  killed: boolean
}

function fakes() {
  const opened: FakePlace[] = []
  const open = (events: PlaceEvents): Place => {
    const place: FakePlace = {
      events,
      sent: [],
      killed: false,
      send: message => place.sent.push(message),
      kill: () => {
        place.killed = true
      },
    }
    opened.push(place)
    return place
  }
  return { opened, open }
}

const plain = { recordings: [], problem: null, output: [], turns: 1, timeStepFound: false, milliseconds: 1 }
const answer = (number: number, more: object = {}) => ({
  kind: "outcome",
  number,
  outcome: plain,
  tracing: false,
  worn: false,
  ...more,
})
const ask = request(raw(""), { limits: { milliseconds: 60_000 } })

describe("a seat for runs", () => {
  it("keeps a place whose answer is right and whose realm is unchanged", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const first = seat.run(ask)
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.heard(answer(1))
    expect(await first).toEqual(plain)
    const second = seat.run(ask)
    opened[0]!.events.heard(answer(2))
    expect(await second).toEqual(plain)
    expect(opened).toHaveLength(1)
    seat.close()
    expect(opened[0]!.killed).toBe(true)
  })

  it.each([
    ["says that the canary of its realm changed", answer(1, { worn: true }), null],
    ["does not say whether it changed", answer(1, { worn: undefined }), null],
    ["answers another run", answer(7), "run-lost"],
    ["answers something that is no outcome", answer(1, { outcome: { points: 100 } }), "run-lost"],
    ["says nothing sensible", "done", "run-lost"],
  ])("replaces a place that %s", async (_, message, code) => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const pending = seat.run(ask)
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.heard(message)
    expect((await pending).problem?.code ?? null).toBe(code)
    expect(opened[0]!.killed).toBe(true)
    expect(opened).toHaveLength(2)
    seat.close()
  })

  it.each([
    ["sends the trace of a program that failed and came without one", { sites: 3 }, 2],
    ["lets the outcome of a failure stand where there is no trace to be had", null, 1],
  ])("%s", async (_, made, messages) => {
    const { opened, open } = fakes()
    const late = { ...raw(""), traceJs: null }
    const problem = { code: "type-error", text: "It failed.", todo: "Mend it." }
    const traced = made && { ...raw(""), traceJs: "traced" }
    const seat = createSeat({ open, fresh: false, spares: 0, trace: async () => traced })
    const pending = seat.run(request(late))
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.heard(answer(1, { outcome: { ...plain, problem }, tracing: true }))
    await Promise.resolve()
    await Promise.resolve()
    expect(opened[0]!.sent).toHaveLength(messages)
    if (made === null) return expect((await pending).problem).toEqual(problem)
    expect(opened[0]!.sent[1]).toEqual({ kind: "trace", number: 1, compiled: traced })
    const placed = { ...problem, where: { cell: "drop", line: 2, column: 1 } }
    opened[0]!.events.heard({ kind: "traced", number: 1, problem: placed, worn: false })
    expect((await pending).problem).toEqual(placed)
    seat.close()
  })

  it("sends runs of one program together, and each again that was not answered because one before it failed", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const program = raw("")
    const outcomes = seat.runAll([1, 2, 3, 4].map(seed => request(program, { seed })))
    opened[0]!.events.heard({ kind: "ready" })
    const seeds = (at: number, n: number): unknown[] =>
      (opened[at]!.sent[n] as { requests: { seed: number }[] }).requests.map(({ seed }) => seed)
    expect(seeds(0, 0)).toEqual([1, 2, 3, 4])
    opened[0]!.events.heard(answer(1))
    expect(await outcomes[0]).toEqual(plain)
    // the second fails and is traced: then the place takes no more of what was sent with it
    const problem = { code: "type-error", text: "It failed.", todo: "Mend it." }
    opened[0]!.events.heard(answer(2, { outcome: { ...plain, problem }, tracing: true }))
    opened[0]!.events.heard({ kind: "traced", number: 2, problem, worn: false })
    expect((await outcomes[1])!.problem).toEqual(problem)
    expect(seeds(0, 1)).toEqual([3, 4])
    expect(opened[0]!.sent[1]).not.toHaveProperty("compiled")
    // the third leaves its place worn: the fourth gets a new one, and the program with it
    opened[0]!.events.heard(answer(3, { worn: true }))
    expect(await outcomes[2]).toEqual(plain)
    expect(opened[0]!.killed).toBe(true)
    opened[1]!.events.heard({ kind: "ready" })
    expect(seeds(1, 0)).toEqual([4])
    expect(opened[1]!.sent[0]).toHaveProperty("compiled")
    opened[1]!.events.heard(answer(4))
    expect(await outcomes[3]).toEqual(plain)
    seat.close()
  })

  it("drops the runs that wait when it is stopped", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const program = raw("")
    const outcomes = seat.runAll([request(program), request(program)])
    opened[0]!.events.heard({ kind: "ready" })
    seat.stop()
    const codes = (await Promise.all(outcomes)).map(({ problem }) => problem?.code)
    expect(codes).toEqual(["stopped", "stopped"])
    expect(opened[0]!.sent).toHaveLength(1)
    seat.close()
  })

  it("replaces a place that speaks without being asked, before the next run gets it", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    seat.warm()
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.heard(answer(1))
    expect(opened[0]!.killed).toBe(true)
    const pending = seat.run(ask)
    opened[1]!.events.heard({ kind: "ready" })
    opened[1]!.events.heard(answer(1))
    expect((await pending).problem).toBeNull()
    seat.close()
  })

  it("uses a new place for every run when asked to", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: true, spares: 0 })
    for (const n of [1, 2]) {
      const pending = seat.run(ask)
      opened[n - 1]!.events.heard({ kind: "ready" })
      opened[n - 1]!.events.heard(answer(n))
      await pending
    }
    expect(opened.map(place => place.killed)).toEqual([true, true, false])
    seat.close()
  })

  it("has a spare ready, so that the run after a stop does not wait", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 1 })
    const pending = seat.run(ask)
    opened[0]!.events.heard({ kind: "ready" })
    opened[1]!.events.heard({ kind: "ready" })
    seat.stop()
    expect((await pending).problem?.code).toBe("stopped")
    const next = seat.run(ask)
    expect(opened[1]!.sent).toHaveLength(1)
    opened[1]!.events.heard(answer(2))
    expect((await next).problem).toBeNull()
    seat.close()
  })

  it("gives the outcome without a place when the search for the place is cut short", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const pending = seat.run(ask)
    const problem = { code: "program-error", text: "It failed.", todo: "Look." }
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.heard(answer(1, { outcome: { ...plain, problem }, tracing: true }))
    opened[0]!.events.gone()
    expect((await pending).problem).toEqual(problem)
    seat.close()
  })

  it("takes the place of the failure from the trace, and nothing else", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const pending = seat.run(ask)
    const problem = { code: "program-error", text: "It failed.", todo: "Look." }
    const placed = { ...problem, where: { line: 3, column: 4 } }
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.heard(answer(1, { outcome: { ...plain, problem }, tracing: true }))
    opened[0]!.events.heard({
      kind: "traced",
      number: 1,
      problem: placed,
      worn: false,
      outcome: { turns: 9 },
    })
    expect(await pending).toEqual({ ...plain, problem: placed })
    seat.close()
  })

  it("kills a place that ends while it has no run, and opens another only for the next run", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    seat.warm()
    opened[0]!.events.heard({ kind: "ready" })
    opened[0]!.events.gone()
    expect(opened[0]!.killed).toBe(true)
    expect(opened).toHaveLength(1)
    void seat.run(ask)
    expect(opened).toHaveLength(2)
    seat.close()
  })

  it("says that there is no place when none starts", async () => {
    const { opened, open } = fakes()
    const seat = createSeat({ open, fresh: false, spares: 0 })
    const pending = seat.run(ask)
    opened[0]!.events.gone()
    expect((await pending).problem?.code).toBe("run-unavailable")
    seat.close()
  })
})
