import type { Compiled } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { RunOutcome, RunRequest } from "./contract.ts"
import { limitsFrom } from "./limits.ts"
import { lostOutcome, readOutcome, readProblem } from "./outcome.ts"
import type { FromPlace, ToPlace } from "./protocol.ts"
import { garbledAnswer, lostPlace, noPlace, stoppedByHand, timeUp } from "./words.ts"

/** A child process or a worker, seen from outside. */
export interface Place {
  send(message: ToPlace): void
  /** ends it at once, whatever it does; nothing is heard from it afterwards */
  kill(): void
  /** looks after its memory while a run is under way; the answer ends the look */
  watch?(exceeded: (problem: Problem) => void): () => void
}

export interface PlaceEvents {
  heard(message: unknown): void
  /** it ended by itself; with what is known of the reason */
  gone(reason?: Problem): void
}

/** One run at a time in a place that is replaced whenever there is any doubt about it. */
export interface Seat {
  /** opens the place ahead of the first run */
  warm(): void
  run(request: RunRequest): Promise<RunOutcome>
  /** whether the place has this very program from the run before, so that it need not be sent */
  holds(compiled: Compiled): boolean
  stop(): void
  close(): void
}

export interface SeatOptions {
  readonly open: (events: PlaceEvents) => Place
  /** a new place for every run */
  readonly fresh: boolean
  /** how many started places wait beside the one in use, so that the next run after a kill need not */
  readonly spares: number
  /** the program with its trace, for one that was compiled without and has failed; null if there is none */
  readonly trace?: (compiled: Compiled) => Promise<Compiled | null>
}

/** How long a place may take to start before the runner says that there is none, ms. */
const startMilliseconds = 30_000

interface Berth {
  readonly place: Place
  ready: boolean
  /** the program of its last run */
  last?: Compiled
}

interface Under {
  readonly number: number
  readonly request: RunRequest
  readonly started: number
  finish(outcome: RunOutcome, keep: boolean): void
  /** an outcome that waits for the place of its failure */
  partial?: RunOutcome
  begun: boolean
}

export function createSeat({ open, fresh, spares, trace }: SeatOptions): Seat {
  const berths: Berth[] = []
  let closed = false
  let count = 0
  let under: Under | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  let endWatch: (() => void) | undefined

  const inUse = (berth: Berth): boolean => berths[0] === berth

  const openOne = (): void => {
    const berth: Berth = {
      ready: false,
      place: open({
        heard: message => {
          if (berths.includes(berth)) hear(berth, message as FromPlace)
        },
        gone: reason => {
          if (!berths.includes(berth)) return
          if (inUse(berth) && under !== undefined) giveUp(berth.ready ? (reason ?? lostPlace) : noPlace)
          else berths.splice(berths.indexOf(berth), 1)
        },
      }),
    }
    berths.push(berth)
  }

  /** One place after the other: a spare must not slow down the start of the one that is waited for. */
  const fill = (): void => {
    if (!closed && berths.length < 1 + spares && berths.every(berth => berth.ready)) openOne()
  }

  const begin = (): void => {
    const berth = berths[0]
    if (under === undefined || under.begun || berth === undefined || !berth.ready) return
    under.begun = true
    const { milliseconds } = limitsFrom(under.request.limits)
    clearTimeout(timer)
    timer = setTimeout(() => giveUp(timeUp(milliseconds)), milliseconds)
    endWatch = berth.place.watch?.(giveUp)
    const { number, request } = under
    const { compiled, ...rest } = request
    const again = berth.last === compiled
    berth.last = compiled
    berth.place.send(again ? { kind: "again", number, request: rest } : { kind: "run", number, request })
  }

  /** Ends the run under way with what is known about it, and its place with it. */
  const giveUp = (problem: Problem): void => {
    if (under === undefined) return
    under.finish(under.partial ?? lostOutcome(problem, performance.now() - under.started), false)
  }

  const hear = (berth: Berth, message: FromPlace): void => {
    if (typeof message === "object" && message !== null && message.kind === "ready" && !berth.ready) {
      berth.ready = true
      if (inUse(berth)) begin()
      fill()
      return
    }
    if (!inUse(berth) || under === undefined) {
      // Words of a place that has no run under way come from what a program left behind.
      dropBerth(berth)
      return
    }
    const read = readAnswer(message, under)
    if (read === null) giveUp(garbledAnswer)
    else if (read.tracing) {
      under.partial = read.outcome
      if (under.request.compiled.traceJs === null) void sendTrace(berth, under)
    } else under.finish(read.outcome, read.worn === false && !fresh)
  }

  /** Without a trace the outcome stands as it is. */
  const sendTrace = async (berth: Berth, failed: Under): Promise<void> => {
    const compiled = await trace?.(failed.request.compiled).catch(() => null)
    if (under !== failed || !inUse(berth)) return
    if (compiled) berth.place.send({ kind: "trace", number: failed.number, compiled })
    else failed.finish(failed.partial!, false)
  }

  const dropBerth = (berth: Berth): void => {
    berths.splice(berths.indexOf(berth), 1)
    berth.place.kill()
    fill()
  }

  return {
    warm: fill,
    run(request) {
      return new Promise(resolve => {
        if (closed || under !== undefined) return resolve(lostOutcome(stoppedByHand, 0))
        const own: Under = {
          number: ++count,
          request,
          started: performance.now(),
          begun: false,
          finish(outcome, keep) {
            clearTimeout(timer)
            endWatch?.()
            endWatch = undefined
            under = undefined
            if (!keep) berths.shift()?.place.kill()
            fill()
            resolve(outcome)
          },
        }
        under = own
        timer = setTimeout(() => giveUp(noPlace), startMilliseconds)
        fill()
        begin()
      })
    },
    holds: compiled => berths[0]?.last === compiled,
    stop: () => giveUp(stoppedByHand),
    close() {
      closed = true
      giveUp(stoppedByHand)
      for (const berth of berths.splice(0)) berth.place.kill()
    },
  }
}

/** What a place said about the run under way; null where it is no answer to it. */
function readAnswer(
  message: FromPlace,
  under: Under,
): { readonly outcome: RunOutcome; readonly tracing: boolean; readonly worn: boolean } | null {
  if (typeof message !== "object" || message === null || !("number" in message)) return null
  if (message.number !== under.number) return null
  const { request, partial } = under
  if (message.kind === "outcome" && partial === undefined) {
    const cells = request.compiled.program.cells.map(cell => cell.name)
    const lines = request.lines && { wish: request.lines, sites: request.compiled.sites.length }
    const outcome = readOutcome(message.outcome, cells, limitsFrom(request.limits), lines)
    return outcome && { outcome, tracing: message.tracing === true, worn: message.worn !== false }
  }
  if (message.kind === "traced" && partial !== undefined) {
    const problem = readProblem(message.problem) ?? partial.problem
    return { outcome: { ...partial, problem }, tracing: false, worn: message.worn !== false }
  }
  return null
}
