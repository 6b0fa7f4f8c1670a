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

/** One run at a time, of a few that may have been sent together, in a place that is replaced whenever there is any doubt about it. */
export interface Seat {
  /** opens the place ahead of the first run */
  warm(): void
  run(request: RunRequest): Promise<RunOutcome>
  /** runs of one program that are sent together and made one after the other; each has its own limits and outcome */
  runAll(requests: readonly RunRequest[]): Promise<RunOutcome>[]
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
  readonly resolve: (outcome: RunOutcome) => void
  /** an outcome that waits for the place of its failure */
  partial?: RunOutcome
  begun: boolean
}

export function createSeat({ open, fresh, spares, trace }: SeatOptions): Seat {
  const berths: Berth[] = []
  let closed = false
  let count = 0
  /** the run under way, and those of its program that come after it */
  const line: Under[] = []
  const head = (): Under | undefined => line[0]
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
          if (inUse(berth) && line.length > 0) giveUp(berth.ready ? (reason ?? lostPlace) : noPlace)
          else {
            // no other is opened in its stead: one that cannot start would be opened again and again
            berths.splice(berths.indexOf(berth), 1)
            berth.place.kill()
          }
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
    const under = head()
    if (under === undefined || berth === undefined || !berth.ready) return
    const { milliseconds } = limitsFrom(under.request.limits)
    clearTimeout(timer)
    timer = setTimeout(() => giveUp(timeUp(milliseconds)), milliseconds)
    endWatch = berth.place.watch?.(giveUp)
    if (under.begun) return
    const together = fresh ? [under] : line
    for (const one of together) one.begun = true
    const { compiled } = under.request
    const again = berth.last === compiled
    berth.last = compiled
    berth.place.send({
      kind: "run",
      number: under.number,
      ...(again ? {} : { compiled }),
      requests: together.map(({ request: { compiled: _, ...rest } }) => rest),
    })
  }

  /** Takes the run under way off the line. What was sent along with it and will not be answered is sent anew. */
  const finish = (outcome: RunOutcome, keep: boolean, goesOn = keep): void => {
    const under = line.shift()
    if (under === undefined) return
    clearTimeout(timer)
    endWatch?.()
    endWatch = undefined
    if (!goesOn) for (const one of line) one.begun = false
    if (!keep) berths.shift()?.place.kill()
    fill()
    under.resolve(outcome)
    if (line.length === 0) return
    waitForPlace()
    begin()
  }

  const waitForPlace = (): void => {
    clearTimeout(timer)
    timer = setTimeout(() => giveUp(noPlace), startMilliseconds)
  }

  /** Ends the run under way with what is known about it, and its place with it. */
  const giveUp = (problem: Problem): void => {
    const under = head()
    if (under !== undefined)
      finish(under.partial ?? lostOutcome(problem, performance.now() - under.started), false)
  }

  const hear = (berth: Berth, message: FromPlace): void => {
    if (typeof message === "object" && message !== null && message.kind === "ready" && !berth.ready) {
      berth.ready = true
      if (inUse(berth)) begin()
      fill()
      return
    }
    const under = head()
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
    } else {
      // a traced failure is the last of what was sent with it
      const keep = read.worn === false && !fresh
      finish(read.outcome, keep, keep && under.partial === undefined)
    }
  }

  /** Without a trace the outcome stands as it is. */
  const sendTrace = async (berth: Berth, failed: Under): Promise<void> => {
    const compiled = await trace?.(failed.request.compiled).catch(() => null)
    if (head() !== failed || !inUse(berth)) return
    if (compiled) berth.place.send({ kind: "trace", number: failed.number, compiled })
    else finish(failed.partial!, false)
  }

  const dropBerth = (berth: Berth): void => {
    berths.splice(berths.indexOf(berth), 1)
    berth.place.kill()
    fill()
  }

  const runAll = (requests: readonly RunRequest[]): Promise<RunOutcome>[] => {
    if (closed || line.length > 0) return requests.map(async () => lostOutcome(stoppedByHand, 0))
    const outcomes = requests.map(
      request =>
        new Promise<RunOutcome>(resolve => {
          line.push({ number: ++count, request, started: performance.now(), begun: false, resolve })
        }),
    )
    waitForPlace()
    fill()
    begin()
    return outcomes
  }

  const stop = (): void => {
    // none of those that wait begins any more
    for (const { resolve } of line.splice(1)) resolve(lostOutcome(stoppedByHand, 0))
    giveUp(stoppedByHand)
  }

  return {
    warm: fill,
    run: request => runAll([request])[0]!,
    runAll,
    holds: compiled => berths[0]?.last === compiled,
    stop,
    close() {
      closed = true
      stop()
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
